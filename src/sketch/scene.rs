//! A drawing before it is written: primitives with their purpose, in millimetres on paper.

use super::appearance::{Appearance, Tone};
use super::letters::Text;
use super::outline::Outline;
use super::plane::{Affine, EMPTY, Line, Point, Rect, Vec2, around, at, corners, enters, grown, within};

/// A drawing as data, back to front.
#[derive(Debug, Clone, Default)]
pub(crate) struct Scene {
    pub elements: Vec<Element>,
    /// Whether a primitive was left out because a place or size of it is not finite.
    pub unsound: bool,
}

/// A primitive with what it is for and how it looks.
#[derive(Debug, Clone)]
pub(crate) struct Element {
    pub purpose: Purpose,
    pub primitive: Primitive,
    pub appearance: Appearance,
}

/// What a primitive stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Purpose {
    /// A cut surface of the part with this index.
    Cut(usize),
    /// A part that is seen from outside, or is not hatched where it is cut.
    View(usize),
    /// The conductor, or one wire of it.
    Wire,
    /// Empty space in front of what lies behind: a bore, a hole.
    Empty,
    /// Hatching of the part with this index.
    Hatch(usize),
    /// An edge or ornament of what it lies on.
    Edge,
    /// An axis.
    Centre,
    /// Dimension and extension lines with their arrowheads.
    Dimension,
    /// The line of an arrow from a word to what it names.
    Pointer,
    /// The line from a balloon to the part with this index.
    Leader(usize),
    /// The ring of a balloon.
    Balloon(usize),
    /// Letters.
    Letters,
}

/// What drawings are made of.
#[derive(Debug, Clone)]
pub(crate) enum Primitive {
    Area(Outline),
    Circle(Point, f64),
    Lines(Vec<Vec<Point>>),
    Text(Text),
}

impl Primitive {
    pub fn bounds(&self) -> Rect {
        match self {
            Self::Area(outline) => outline.bounds(),
            Self::Circle(centre, radius) => grown(around([*centre]), *radius),
            Self::Lines(lines) => around(lines.iter().flatten().copied()),
            Self::Text(text) => text.bounds(),
        }
    }

    /// Whether all its places and sizes are.
    fn is_finite(&self) -> bool {
        match self {
            Self::Area(outline) => outline.is_finite(),
            Self::Circle(centre, radius) => centre.is_finite() && radius.is_finite(),
            Self::Lines(lines) => lines.iter().flatten().all(|point| point.is_finite()),
            Self::Text(text) => text.place.is_finite() && text.size.is_finite(),
        }
    }

    pub fn contains(&self, point: Point) -> bool {
        match self {
            Self::Area(outline) => outline.contains(point),
            Self::Circle(centre, radius) => centre.distance(point) <= *radius,
            Self::Lines(_) | Self::Text(_) => false,
        }
    }

    /// Whether one of its lines comes into a box.
    pub fn strokes_meet(&self, rect: Rect) -> bool {
        match self {
            Self::Area(outline) => {
                outline.bounds().overlaps(rect) && outline.sides().any(|side| enters(side, rect))
            }
            Self::Circle(centre, radius) => {
                let far = corners(rect).iter().map(|corner| corner.distance(*centre)).fold(0.0, f64::max);
                let near = at(within(centre.x, rect.x0, rect.x1), within(centre.y, rect.y0, rect.y1));
                near.distance(*centre) <= *radius && far >= *radius
            }
            Self::Lines(lines) => {
                lines.iter().any(|line| line.windows(2).any(|pair| enters(Line::new(pair[0], pair[1]), rect)))
            }
            Self::Text(_) => false,
        }
    }
}

impl Scene {
    pub fn add(&mut self, purpose: Purpose, primitive: Primitive, appearance: Appearance) {
        if primitive.is_finite() {
            self.elements.push(Element { purpose, primitive, appearance });
        } else {
            self.unsound = true;
        }
    }

    pub fn area(&mut self, purpose: Purpose, outline: Outline, appearance: Appearance) {
        self.add(purpose, Primitive::Area(outline), appearance);
    }

    pub fn circle(&mut self, purpose: Purpose, centre: Point, radius: f64, appearance: Appearance) {
        self.add(purpose, Primitive::Circle(centre, radius), appearance);
    }

    pub fn line(&mut self, purpose: Purpose, points: &[Point], appearance: Appearance) {
        self.add(purpose, Primitive::Lines(vec![points.to_vec()]), appearance);
    }

    pub fn lines(&mut self, purpose: Purpose, lines: Vec<Vec<Point>>, appearance: Appearance) {
        if !lines.is_empty() {
            self.add(purpose, Primitive::Lines(lines), appearance);
        }
    }

    pub fn text(&mut self, text: Text) {
        self.add(Purpose::Letters, Primitive::Text(text), Appearance { fill: None, pen: None });
    }

    /// A text in another tone than that of lines.
    pub fn toned_text(&mut self, text: Text, tone: Tone) {
        self.add(Purpose::Letters, Primitive::Text(text), Appearance::solid(tone));
    }

    /// The box round everything.
    pub fn bounds(&self) -> Rect {
        self.elements.iter().fold(EMPTY, |sum, element| sum.union(element.primitive.bounds()))
    }

    /// The box round what is drawn of the object itself.
    pub fn object_bounds(&self) -> Rect {
        let object =
            |purpose| matches!(purpose, Purpose::Cut(_) | Purpose::View(_) | Purpose::Wire | Purpose::Empty);
        self.elements
            .iter()
            .filter(|element| object(element.purpose))
            .fold(EMPTY, |sum, element| sum.union(element.primitive.bounds()))
    }

    pub fn texts(&self) -> impl Iterator<Item = &Text> {
        self.elements.iter().filter_map(|element| match &element.primitive {
            Primitive::Text(text) => Some(text),
            _ => None,
        })
    }

    /// Whether a text fits into a box without lying on a line or another text.
    pub fn is_clear(&self, rect: Rect) -> bool {
        self.elements.iter().all(|element| match &element.primitive {
            Primitive::Text(text) => !text.bounds().overlaps(rect),
            Primitive::Area(_) | Primitive::Circle(..) if element.purpose != Purpose::Dimension => {
                !element.primitive.bounds().overlaps(rect)
                    || !(element.primitive.strokes_meet(rect) || element.primitive.contains(rect.center()))
            }
            primitive => !primitive.strokes_meet(rect),
        })
    }

    /// Dimension and extension lines, and those of arrows from words, piece by piece.
    pub fn dimension_lines(&self) -> Vec<Line> {
        self.lines_of(|purpose| matches!(purpose, Purpose::Dimension | Purpose::Pointer))
    }

    /// Leaders, piece by piece.
    pub fn leaders(&self) -> Vec<Line> {
        self.lines_of(|purpose| matches!(purpose, Purpose::Leader(_)))
    }

    fn lines_of(&self, wanted: impl Fn(Purpose) -> bool) -> Vec<Line> {
        let wanted = self.elements.iter().filter(|element| wanted(element.purpose));
        let of = |element: &Element| match &element.primitive {
            Primitive::Lines(lines) => lines
                .iter()
                .flat_map(|line| line.windows(2).map(|pair| Line::new(pair[0], pair[1])).collect::<Vec<_>>())
                .collect(),
            _ => Vec::new(),
        };
        wanted.flat_map(of).collect()
    }

    /// Areas of a part.
    pub fn areas_of(&self, part: usize) -> impl Iterator<Item = &Primitive> {
        self.elements
            .iter()
            .filter(move |element| matches!(element.purpose, Purpose::Cut(p) | Purpose::View(p) if p == part))
            .map(|element| &element.primitive)
    }

    /// Everything moved.
    pub fn moved(&mut self, by: Vec2) {
        for element in &mut self.elements {
            match &mut element.primitive {
                Primitive::Area(outline) => *outline = outline.mapped(Affine::translate(by)),
                Primitive::Circle(centre, _) => *centre += by,
                Primitive::Lines(lines) => lines.iter_mut().flatten().for_each(|point| *point += by),
                Primitive::Text(text) => text.place += by,
            }
        }
    }
}

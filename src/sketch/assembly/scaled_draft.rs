//! A drawing of parts: outlines come in millimetres of the object and go to paper at a scale.

use crate::catalogue::{Part, Role};
use crate::colour::ColourCode;
use crate::section::MaterialGroup;
use crate::sketch::appearance::{Appearance, Pen, Shade, Tone};
use crate::sketch::draft::Draft;
use crate::sketch::hatch::Hatch;
use crate::sketch::options::Options;
use crate::sketch::outline::Outline;
use crate::sketch::plane::{Affine, Point, at, unit};
use crate::sketch::scale::Scale;
use crate::sketch::scene::Purpose;

/// A part as it is drawn: which item it is, and its looks.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Look {
    /// Index of the item.
    pub item: usize,
    pub tone: Tone,
    /// The paint of its mark.
    pub paint: Option<ColourCode>,
    pen: Pen,
    hatch: usize,
}

impl Look {
    /// The gripping part is what is looked at: darkest tone, heaviest outline. Bodies are white; parts that touch are
    /// hatched differently.
    pub fn of(item: usize, part: &Part) -> Self {
        let group = part.material.group;
        let (tone, pen) = match part.role {
            role if role.grips() => (Tone::Grip(group), Pen::Heavy),
            Role::Body | Role::Socket => (Tone::Paper, Pen::Thick),
            _ => (Tone::Metal(group, Shade::Pale), Pen::Thick),
        };
        let hatch = match part.role {
            Role::Body | Role::Sleeve => 0,
            Role::Cone | Role::Wedge | Role::Ferrule | Role::Keeper => 1,
            Role::Screw | Role::Nut | Role::Bolt => 2,
            Role::Socket | Role::Thimble => 3,
            Role::Lock | Role::RopeGrip => 4,
            Role::Pin | Role::Other => 5,
        };
        Self { item, tone, paint: part.mark.as_ref().map(|mark| mark.colour), pen, hatch }
    }
}

/// A drawing of parts in the making.
pub(crate) struct ScaledDraft<'a> {
    pub draft: Draft<'a>,
    scale: f64,
}

impl<'a> ScaledDraft<'a> {
    pub fn new(options: &'a Options<'a>, scale: Scale) -> Self {
        Self { draft: Draft::new(options), scale: scale.0 }
    }

    /// On paper.
    pub fn place(&self, point: Point) -> Point {
        Affine::scale(self.scale) * point
    }

    pub fn scale(&self) -> Scale {
        Scale(self.scale)
    }

    /// A length on paper in millimetres of the object.
    pub fn object(&self, paper: f64) -> f64 {
        paper / self.scale
    }

    fn on_paper(&self, outline: &Outline) -> Outline {
        outline.mapped(Affine::scale(self.scale))
    }

    /// A cut surface, hatched.
    pub fn cut(&mut self, look: Look, outline: &Outline) {
        let outline = self.on_paper(outline);
        let lines = Hatch::of(look.hatch, 0.5 * self.draft.size()).lines(&outline);
        let lines = lines.into_iter().map(|line| vec![line.p0, line.p1]).collect();
        let scene = &mut self.draft.scene;
        scene.area(Purpose::Cut(look.item), outline.clone(), Appearance::solid(look.tone));
        scene.lines(Purpose::Hatch(look.item), lines, Appearance::line(Pen::Thin));
        scene.area(Purpose::Cut(look.item), outline, Appearance::line(look.pen));
    }

    /// A part seen from outside, or a shaft, pin or wire that is not hatched where it is cut.
    pub fn view(&mut self, look: Look, outline: &Outline) {
        let outline = self.on_paper(outline);
        self.draft.scene.area(Purpose::View(look.item), outline, Appearance::area(look.tone, look.pen));
    }

    /// The half of a round part below the axis, seen from outside: corners from the axis round to the
    /// axis again. The axis itself is no edge.
    pub fn outside(&mut self, look: Look, corners: &[(f64, f64)]) {
        self.fill(look, &Outline::of(corners));
        let corners: Vec<Point> = corners.iter().map(|&(x, y)| at(x, y)).collect();
        self.stroke(&corners, look.pen);
    }

    /// The outline of a part once more, over what is drawn on it.
    pub fn outline(&mut self, look: Look, outline: &Outline) {
        let outline = self.on_paper(outline);
        self.draft.scene.area(Purpose::View(look.item), outline, Appearance::line(look.pen));
    }

    /// How far a painted end shows along the part, in millimetres of the object.
    pub fn paint_width(&self) -> f64 {
        self.object(0.45 * self.draft.size())
    }

    /// The paint of a part's mark, as far as it has one, on a face of it.
    pub fn paint(&mut self, look: Look, outline: &Outline) {
        let Some(code) = look.paint else { return };
        let outline = self.on_paper(outline);
        self.draft.scene.area(
            Purpose::View(look.item),
            outline,
            Appearance::area(Tone::Paint(code), Pen::Thin),
        );
    }

    /// A part seen from outside, without its outline.
    pub fn fill(&mut self, look: Look, outline: &Outline) {
        let outline = self.on_paper(outline);
        self.draft.scene.area(Purpose::View(look.item), outline, Appearance::solid(look.tone));
    }

    /// A round part seen along its axis.
    pub fn disc(&mut self, look: Look, centre: Point, radius: f64) {
        let (centre, radius) = (self.place(centre), radius * self.scale);
        self.draft.scene.circle(
            Purpose::View(look.item),
            centre,
            radius,
            Appearance::area(look.tone, look.pen),
        );
    }

    /// Empty space in front of what lies behind.
    pub fn empty(&mut self, outline: &Outline) {
        let outline = self.on_paper(outline);
        self.draft.scene.area(Purpose::Empty, outline, Appearance::solid(Tone::Paper));
    }

    /// A round hole through what has been drawn.
    pub fn hole(&mut self, centre: Point, radius: f64) {
        let (centre, radius) = (self.place(centre), radius * self.scale);
        self.draft.scene.circle(Purpose::Empty, centre, radius, Appearance::area(Tone::Paper, Pen::Thick));
    }

    /// A length of the conductor.
    pub fn wire(&mut self, outline: &Outline, tone: Tone) {
        let outline = self.on_paper(outline);
        self.draft.scene.area(Purpose::Wire, outline, Appearance::area(tone, Pen::Thin));
    }

    /// The half of the conductor above the axis, which is no edge.
    pub fn half_wire(&mut self, corners: &[(f64, f64)], tone: Tone) {
        let outline = self.on_paper(&Outline::of(corners));
        self.draft.scene.area(Purpose::Wire, outline, Appearance::solid(tone));
        self.fine(vec![corners.iter().map(|&(x, y)| at(x, y)).collect()]);
    }

    /// A slip mark painted on the conductor.
    pub fn slip_mark(&mut self, outline: &Outline) {
        let outline = self.on_paper(outline);
        self.draft.scene.area(Purpose::Wire, outline, Appearance::solid(Tone::Signal));
    }

    /// An edge in the wide line.
    pub fn edge(&mut self, points: &[Point]) {
        self.stroke(points, Pen::Thick);
    }

    fn stroke(&mut self, points: &[Point], pen: Pen) {
        let points: Vec<Point> = points.iter().map(|&point| self.place(point)).collect();
        self.draft.scene.line(Purpose::Edge, &points, Appearance::line(pen));
    }

    /// Lines in the narrow line.
    pub fn fine(&mut self, lines: Vec<Vec<Point>>) {
        let place = |line: Vec<Point>| line.into_iter().map(|point| self.place(point)).collect();
        let lines = lines.into_iter().map(place).collect();
        self.draft.scene.lines(Purpose::Edge, lines, Appearance::line(Pen::Thin));
    }

    /// An axis, run past its ends.
    pub fn axis(&mut self, from: Point, to: Point) {
        let past = unit(to - from) * (0.6 * self.draft.size());
        let (from, to) = (self.place(from) - past, self.place(to) + past);
        self.draft.centre_line(from, to);
    }
}

/// A half of an axial part: points above the axis, from the records' side of it (y upward is cut, so
/// negative on paper).
pub(crate) fn upper(points: &[(f64, f64)]) -> Outline {
    Outline::new(points.iter().map(|&(x, radius)| at(x, -radius)).collect())
}

/// A tone of a conductor's metal.
pub(crate) fn wire_tone(group: MaterialGroup, shade: Shade) -> Tone {
    Tone::Metal(group, shade)
}

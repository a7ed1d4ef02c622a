//! Dimension lines with arrowheads and extension lines (ISO 129-1).

use super::appearance::{Appearance, Pen, Tone};
use super::draft::Draft;
use super::letters::Anchor;
use super::outline::Outline;
use super::plane::{Point, Vec2, at, unit};
use super::scene::Purpose;

/// A length between two features, measured along the page or up and down it.
#[derive(Debug, Clone)]
pub(crate) struct Span<'a> {
    /// What is measured.
    pub name: &'a str,
    /// The measure, as facts and lists carry it.
    pub text: String,
    /// Whether the name is lettered before the measure.
    pub lettering: Lettered,
    /// The two features.
    pub ends: (Point, Point),
    /// Where the dimension line runs: y of a level one, x of an upright one.
    pub line: f64,
    /// Which way it measures.
    pub way: Way,
    /// Where the text goes first.
    pub prefer: Prefer,
}

/// What is lettered.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Lettered {
    Measure,
    NameAndMeasure,
}

impl Span<'_> {
    fn drawn(&self) -> String {
        match self.lettering {
            Lettered::Measure => self.text.clone(),
            Lettered::NameAndMeasure => format!("{}\u{a0}{}", self.name.replace(' ', "\u{a0}"), self.text),
        }
    }
}

/// The direction of measuring.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Way {
    Level,
    Upright,
}

/// Where a text is tried first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Prefer {
    Middle,
    Before,
    After,
}

/// Length of arrowheads as a share of the type size.
const ARROW: f64 = 0.85;

impl Draft<'_> {
    /// Draws a dimension; its lines always, its text where it finds a clear place.
    pub fn dimension(&mut self, span: &Span) {
        self.dimensions(std::slice::from_ref(span));
    }

    /// Draws several dimensions of one object: first the lines of all, so that none runs through the text of another.
    pub fn dimensions(&mut self, spans: &[Span]) {
        spans.iter().for_each(|span| self.dimension_line(span));
        for span in spans {
            if self.text_at_first_clear(&self.places(span), &span.drawn()).is_some() {
                self.printed(span.name, &span.text);
            }
        }
    }

    fn dimension_line(&mut self, span: &Span) {
        let ((from, to), turn) = ordered(span);
        self.extension_lines(span, (from, to), turn);
        let tail = self.tail(from, to);
        self.thin(Purpose::Dimension, &[turn(from - tail, span.line), turn(to + tail, span.line)]);
        let inward = if tail > 0.0 { -1.0 } else { 1.0 };
        self.arrowhead(turn(from, span.line), turn(from + inward, span.line) - turn(from, span.line));
        self.arrowhead(turn(to, span.line), turn(to - inward, span.line) - turn(to, span.line));
    }

    /// How far the line goes on beyond arrowheads that have no room between what is measured.
    fn tail(&self, from: f64, to: f64) -> f64 {
        let arrow = ARROW * self.size();
        if to - from < 2.4 * arrow { 1.6 * arrow } else { 0.0 }
    }

    fn extension_lines(&mut self, span: &Span, (from, to): (f64, f64), turn: Turn) {
        let gap = 0.25 * self.size();
        for (along, end) in [(from, edge(span, from)), (to, edge(span, to))] {
            let outward = (span.line - end).signum();
            if (span.line - end).abs() > gap {
                self.thin(
                    Purpose::Dimension,
                    &[turn(along, end + outward * gap), turn(along, span.line + outward * gap)],
                );
            }
        }
    }

    /// A filled arrowhead with its tip at a point, its body lying towards `back`.
    pub fn arrowhead(&mut self, tip: Point, back: Vec2) {
        let length = ARROW * self.size();
        let base = tip + unit(back) * length;
        let half = unit(back).turn_90() * (length * 0.16);
        let outline = Outline::new(vec![tip, base + half, base - half]);
        self.scene.area(Purpose::Dimension, outline, Appearance::solid(Tone::Ink));
    }

    fn places(&self, span: &Span) -> Vec<(Point, Anchor)> {
        let ((from, to), _) = ordered(span);
        let (size, line, tail) = (self.size(), span.line, self.tail(from, to));
        let beside = tail + 0.45 * size;
        let middle = (from + to) / 2.0;
        let width = self.lettering().width(&span.drawn());
        match span.way {
            Way::Level => {
                let above = vec![(at(middle, line - 0.75 * size), Anchor::Middle)];
                let before = vec![(at(from - beside, line), Anchor::End)];
                let after = vec![(at(to + beside, line), Anchor::Start)];
                let holds = tail == 0.0 && width < to - from;
                let middle = if holds { above } else { Vec::new() };
                in_order(span.prefer, middle, before, after)
            }
            Way::Upright => {
                let right = (at(line + 0.5 * size, middle), Anchor::Start);
                let left = (at(line - 0.5 * size, middle), Anchor::End);
                let over = vec![(at(line, from - beside - 0.4 * size), Anchor::Middle)];
                let under = vec![(at(line, to + beside + 0.4 * size), Anchor::Middle)];
                let sides = if span.ends.0.x > line { vec![left, right] } else { vec![right, left] };
                in_order(span.prefer, sides, over, under)
            }
        }
    }
}

fn in_order<T>(prefer: Prefer, middle: Vec<T>, before: Vec<T>, after: Vec<T>) -> Vec<T> {
    let order = match prefer {
        Prefer::Middle => [middle, after, before],
        Prefer::Before => [before, middle, after],
        Prefer::After => [after, middle, before],
    };
    order.into_iter().flatten().collect()
}

/// Turns a position along and one across the measuring direction into a point.
type Turn = fn(f64, f64) -> Point;

/// The two positions measured, the lesser first, and what turns (along, across) into a point.
fn ordered(span: &Span) -> ((f64, f64), Turn) {
    let (first, second) = span.ends;
    match span.way {
        Way::Level => ((first.x.min(second.x), first.x.max(second.x)), |along, across| at(along, across)),
        Way::Upright => ((first.y.min(second.y), first.y.max(second.y)), |along, across| at(across, along)),
    }
}

/// Where the feature at a position lies across the measuring direction.
fn edge(span: &Span, along: f64) -> f64 {
    let (first, second) = span.ends;
    let [near, cross]: [fn(Point) -> f64; 2] = match span.way {
        Way::Level => [|point| point.x, |point| point.y],
        Way::Upright => [|point| point.y, |point| point.x],
    };
    if (near(first) - along).abs() <= (near(second) - along).abs() { cross(first) } else { cross(second) }
}

impl Draft<'_> {
    /// A text with a leader that ends in an arrowhead on an edge (ISO 128-22).
    pub fn pointed_note(&mut self, name: &str, text: &str, tip: Point, elbow: Point, anchor: Anchor) {
        let reach = 0.8 * self.size();
        let outward = if anchor == Anchor::End { -1.0 } else { 1.0 };
        let shelf = at(elbow.x + outward * reach, elbow.y);
        self.scene.line(Purpose::Dimension, &[tip, elbow, shelf], Appearance::line(Pen::Thin));
        self.arrowhead(tip, elbow - tip);
        let place = at(shelf.x + outward * 0.35 * self.size(), elbow.y);
        if self.text_at_first_clear(&[(place, anchor)], text).is_some() {
            self.printed(name, text);
        }
    }
}

//! What dead-ends have in common beside their shapes: body, conductor's end, slip mark, dimensions.

use super::scaled_draft::{Look, ScaledDraft};
use super::setup::Setup;
use crate::catalogue::{Fitting, Part, Role, StandOutFrom};
use crate::grip::Geometry;
use crate::sketch::dimension::{Lettered, Prefer, Span, Way};
use crate::sketch::options::Detail;
use crate::sketch::outline::Outline;
use crate::sketch::plane::{Point, at};
use crate::units::{Length, Numerals, Range};

/// The body; a part with a seat stands in for it where none has that role.
pub(crate) fn body_of<'a>(setup: &Setup<'a>) -> Option<(Look, &'a Part)> {
    setup.first(&[Role::Body]).or_else(|| {
        let seat = |part: &Part| {
            matches!(part.geometry, Some(Geometry::Body(_) | Geometry::Socket(_) | Geometry::WedgeBody(_)))
        };
        let index = setup.parts.iter().position(|part| seat(part))?;
        Some((Look::of(index, setup.parts[index]), setup.parts[index]))
    })
}

/// Where the conductor ends: by its insertion, else by its tail behind `rear`, else a little behind that.
pub(crate) fn conductor_end(setup: &Setup, entry: f64, rear: f64) -> f64 {
    let rear = rear.max(0.0);
    let (insertion, tail) = (setup.fitting.insertion.map(Length::mm), setup.fitting.tail.map(Length::mm));
    match (insertion, tail) {
        (Some(insertion), _) => entry + insertion,
        (None, Some(tail)) => rear + tail,
        (None, None) => rear + 0.6 * setup.diameter(),
    }
}

/// How much of the conductor is drawn outside the body.
pub(crate) fn stub_length(scaled: &ScaledDraft) -> f64 {
    scaled.object(1.8 * scaled.draft.size())
}

/// A slip mark on the conductor, where it goes into the body.
pub(crate) fn slip_mark(scaled: &mut ScaledDraft, entry: f64, radius: f64) {
    slip_mark_at(scaled, entry, (radius, 0.0));
}

/// A slip mark on a conductor whose middle is at height `y`.
pub(crate) fn slip_mark_at(scaled: &mut ScaledDraft, entry: f64, (radius, y): (f64, f64)) {
    let (near, wide) = (scaled.object(0.35), scaled.object(0.45 * scaled.draft.size()));
    let (from, to) = (entry - near - wide, entry - near);
    scaled.slip_mark(&Outline::of(&[
        (from, y - radius),
        (to, y - radius),
        (to, y + radius),
        (from, y + radius),
    ]));
}

/// The lengths that are measured on a finished dead-end, where the record has them.
pub(crate) struct Measures {
    /// The body's face and the gripping part's, above the axis.
    pub faces: Option<(Point, Point)>,
    /// Where the conductor goes in, and its end.
    pub insertion: Option<(f64, f64)>,
    /// The ends of the tail.
    pub tail: Option<(f64, f64)>,
    /// The gap under the closing screw.
    pub gap: Option<(Point, Point)>,
    /// Heights of the drawing's highest and lowest edges.
    pub edges: (f64, f64),
}

impl Measures {
    /// Where the tail of a conductor that ends at `end` is measured.
    pub fn tail_before(setup: &Setup, end: f64) -> Option<(f64, f64)> {
        setup.fitting.tail.map(|tail| (end - tail.mm(), end))
    }
}

/// Dimensions of a dead-end: stand-out above, tail and insertion below.
pub(crate) fn dimension(scaled: &mut ScaledDraft, setup: &Setup, measures: &Measures) {
    let numerals = scaled.draft.options.numerals;
    let top = scaled.place(at(0.0, measures.edges.0)).y - 0.9 * scaled.draft.size();
    if let Some(stand_out) = &setup.fitting.stand_out
        && let Some(window) = stand_out.seated
    {
        let text = stated_window(setup.fitting, window, numerals);
        let out = if is_sunk(window) { "seated, sunk" } else { "seated" };
        let (name, ends) = match stand_out.from {
            StandOutFrom::ConeFace | StandOutFrom::WedgeEnd => (out, measures.faces),
            StandOutFrom::ScrewGap => ("seated gap", measures.gap),
            StandOutFrom::None => ("", None),
        };
        if let Some(ends) = ends {
            stand_out_dimension(scaled, name, text, ends, top);
        }
    }
    if scaled.draft.options.detail == Detail::Items {
        return;
    }
    let mut row = scaled.place(at(0.0, measures.edges.1)).y + 1.1 * scaled.draft.size();
    if measures.tail.is_none() {
        row += 0.5 * scaled.draft.size();
    }
    let foot = measures.edges.1;
    let mut below = Vec::new();
    if let (Some(tail), Some((from, to))) = (setup.fitting.tail, measures.tail) {
        let text = stated(setup.fitting, "tail_mm", tail, numerals) + "\u{a0}mm";
        below.push(level(scaled, "tail", text, (at(from, foot), at(to, foot)), row, Prefer::After));
        row += 1.15 * scaled.draft.size();
    }
    if let (Some(insertion), Some((entry, end))) = (setup.fitting.insertion, measures.insertion) {
        let text = stated(setup.fitting, "insertion_mm", insertion, numerals) + "\u{a0}mm";
        below.push(level(scaled, "insertion", text, (at(entry, foot), at(end, foot)), row, Prefer::Middle));
    }
    scaled.draft.dimensions(&below);
}

/// The dimension that is checked: where little is said, without its name, which the card's checks have.
fn stand_out_dimension(scaled: &mut ScaledDraft, name: &str, text: String, ends: (Point, Point), line: f64) {
    let brief = scaled.draft.options.detail == Detail::Items;
    let text = if brief && name.contains("sunk") { format!("sunk\u{a0}{text}") } else { text };
    let lettering = if brief { Lettered::Measure } else { Lettered::NameAndMeasure };
    let span = lettered_level(scaled, name, (text, lettering), ends, (line, Prefer::Before));
    scaled.draft.dimension(&span);
}

/// A length with the digits of its record, as the card's text has it.
fn stated(fitting: &Fitting, field: &str, length: Length, numerals: Numerals) -> String {
    numerals.stated(length.mm(), fitting.decimals(field))
}

/// Whether a window lies below the face.
fn is_sunk(window: Range<Length>) -> bool {
    window.least().mm() < 0.0 && window.most().mm() <= 0.0
}

fn stated_window(fitting: &Fitting, window: Range<Length>, numerals: Numerals) -> String {
    let end = |key: &str, length: Length| {
        let length = if is_sunk(window) { -length } else { length };
        stated(fitting, &format!("stand_out.seated_mm.{key}"), length, numerals)
    };
    let (least, most) = (end("min", window.least()), end("max", window.most()));
    let (least, most) = if is_sunk(window) { (most, least) } else { (least, most) };
    if least == most { format!("{least}\u{a0}mm") } else { format!("{least}\u{a0}to\u{a0}{most}\u{a0}mm") }
}

/// A level dimension with its name, between two points of the object.
pub(crate) fn level<'a>(
    scaled: &ScaledDraft,
    name: &'a str,
    text: String,
    ends: (Point, Point),
    line: f64,
    prefer: Prefer,
) -> Span<'a> {
    lettered_level(scaled, name, (text, Lettered::NameAndMeasure), ends, (line, prefer))
}

fn lettered_level<'a>(
    scaled: &ScaledDraft,
    name: &'a str,
    (text, lettering): (String, Lettered),
    ends: (Point, Point),
    (line, prefer): (f64, Prefer),
) -> Span<'a> {
    let ends = (scaled.place(ends.0), scaled.place(ends.1));
    Span { name, text, lettering, ends, line, way: Way::Level, prefer }
}

//! `text-contrast-low`, `text-covered`, `text-crossed`: texts in SVG of a layout's own that don't stand out, lie under
//! paint, or have a line through them.
//!
//! Why: a card is read in the rain and in the dusk, and copied in grey; a line through a figure makes another figure of
//! it, and a line through a word strikes it out.
//!
//! To put it right: black or white, whichever reads better on the ground; draw grounds before the texts on them.

use super::check::Check;
use super::letters::{least_contrast, too_pale};
use super::svg_ground::{colours, covers, mixed, of_paint, outline};
use super::svg_ink::{InkedText, Shape, SvgInk};
use crate::colour::{Srgb, contrast};
use crate::diagnostics::Findings;
use kurbo::{Line, ParamCurve, PathEl, Point, Rect};

/// What a weight must be to count as bold (CSS Fonts 4).
const BOLD: u16 = 700;
/// Points of a text whose ground is looked at lie at most this far apart, in millimetres.
const APART: f64 = 2.0;
/// A fill this opaque hides what is under it.
const HIDES: f32 = 0.1;
/// How much of a text's height a line may take from above and from below: underlines and frames.
const RIM: f64 = 0.25;
/// Curves as straight lines are off by this much at most, in millimetres.
const FLAT: f64 = 0.01;

pub(super) fn check(check: Check<'_>, ink: &SvgInk<'_>, findings: &mut Findings) {
    for text in &ink.texts {
        let (under, over) = ink.shapes.split_at(text.above);
        pale(check, ink, text, under, findings);
        let hides = |shape: &&Shape<'_>| {
            let opacity = shape.fill().map_or(0.0, |fill| fill.opacity().get() * shape.opacity);
            opacity > HIDES && points(text.bounds).any(|at| covers(shape, at))
        };
        if over.iter().any(|shape| hides(&shape)) {
            let said = format!("“{}” lies under what is drawn over it", text.words());
            let finding = check.finding("text-covered", ink.at, &said).field(ink.block);
            findings.push(
                finding.expected("nothing drawn over a text").help("draw the background before the text"),
            );
        }
        if ink.shapes.iter().enumerate().any(|(index, line)| crosses(ink, text, index, line)) {
            let said = format!("a line runs through “{}”", text.words());
            let finding = check.finding("text-crossed", ink.at, &said).field(ink.block);
            findings.push(finding.expected("no line through a text").help("draw the line elsewhere"));
        }
    }
}

fn pale(
    check: Check<'_>,
    ink: &SvgInk<'_>,
    text: &InkedText<'_>,
    under: &[Shape<'_>],
    findings: &mut Findings,
) {
    let mut grounds: Vec<Srgb> =
        points(text.bounds).flat_map(|at| colours(under.iter(), at, ink.ground)).collect();
    grounds.sort_unstable();
    grounds.dedup();
    let pairs = grounds.iter().flat_map(|&ground| {
        inks(text, ground).into_iter().map(move |ink| (contrast(ink, ground), ink, ground))
    });
    let Some((found, letters, ground)) = pairs.min_by(|a, b| a.0.total_cmp(&b.0)) else { return };
    let mut spans = text.text.chunks().iter().flat_map(|chunk| chunk.spans());
    let least = least_contrast(text.size(), spans.all(|span| span.font().weight() >= BOLD));
    if found < least {
        let said = format!("“{}” has too little contrast with what it stands on", text.words());
        let finding = check.finding("text-contrast-low", ink.at, &said).field(ink.block);
        findings.push(too_pale(finding, found, (letters, ground), least));
    }
}

/// Points all over a text.
fn points(bounds: Rect) -> impl Iterator<Item = Point> {
    let across = bounds.width() / (bounds.width() / APART).ceil().clamp(2.0, 64.0);
    let rows = [0.2, 0.5, 0.8].map(|share| bounds.y0 + share * bounds.height());
    let columns = std::iter::successors(Some(bounds.x0 + across / 2.0), move |x| Some(x + across));
    columns.take_while(move |x| *x < bounds.x1).flat_map(move |x| rows.map(|y| Point::new(x, y)))
}

/// The colours that a text has on a ground; that of the ground where nothing inks it.
fn inks(text: &InkedText<'_>, ground: Srgb) -> Vec<Srgb> {
    let spans = text.text.chunks().iter().flat_map(|chunk| chunk.spans());
    let ink = |span: &usvg::TextSpan| {
        let fill = span.fill().map(|fill| (fill.paint(), fill.opacity()));
        let stroke = span.stroke().map(|stroke| (stroke.paint(), stroke.opacity()));
        let Some((paint, opacity)) = fill.or(stroke) else { return vec![ground] };
        let opacity = opacity.get() * text.opacity;
        of_paint(paint).into_iter().map(|paint| mixed(paint, ground, opacity)).collect()
    };
    spans.flat_map(ink).collect()
}

/// Whether a line runs through the heart of a text, and no ground that is drawn later hides it there.
fn crosses(ink: &SvgInk<'_>, text: &InkedText<'_>, index: usize, line: &Shape<'_>) -> bool {
    let transform = text.text.abs_transform();
    let level = transform.ky.abs() < 1e-4 && transform.kx.abs() < 1e-4;
    if !level || line.path.stroke().is_none() {
        return false;
    }
    let rim = text.bounds.height() * RIM;
    let heart = text.bounds.inset((0.0, -rim));
    let hidden = |at: Point| {
        index < text.above && ink.shapes[index + 1..text.above].iter().any(|later| covers(later, at))
    };
    let mut crossed = false;
    let (mut start, mut last) = (Point::ZERO, Point::ZERO);
    kurbo::flatten(outline(line), FLAT, |element| {
        let to = match element {
            PathEl::MoveTo(to) => {
                (start, last) = (to, to);
                return;
            }
            PathEl::LineTo(to) => to,
            _ => start,
        };
        let piece = Line::new(std::mem::replace(&mut last, to), to);
        crossed |= through(piece, heart).is_some_and(|at| !hidden(at));
    });
    crossed
}

/// A point of a line inside a box, where it runs into it by more than a rim.
fn through(line: Line, heart: Rect) -> Option<Point> {
    let steps = (line.p0.distance(line.p1) / 0.2).ceil().clamp(1.0, 512.0);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "at most 512")]
    let count = steps as u32;
    (0..=count).map(|step| line.eval(f64::from(step) / steps)).find(|at| heart.contains(*at))
}

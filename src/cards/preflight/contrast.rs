//! `text-contrast-low`, `text-covered`: texts that don't stand out from their ground, or lie under it.
//!
//! Why: a card is read in the rain and in the dusk, and copied in grey.
//!
//! To put it right: black or white, whichever reads better on the ground (`mark.ink` is that of a mark); draw
//! grounds before the texts on them.

use super::Sheet;
use super::bounds::Bounds;
use super::ground::{colours, covers, mixed, of_paint};
use super::ink::{Ink, InkedText, Shape};
use crate::colour::{LEGIBLE_CONTRAST, Srgb, contrast};
use crate::diagnostics::Findings;

/// Contrast that is enough for large type (WCAG 2.2, success criterion 1.4.3).
const LARGE_CONTRAST: f64 = 3.0;
/// Large type, and large type that is bold, in points (WCAG 2.2, "large scale").
const LARGE: (f64, f64) = (18.0, 14.0);
/// What a weight must be to count as bold (CSS Fonts 4).
const BOLD: u16 = 700;
/// Points of a text whose ground is looked at lie at most this far apart, in millimetres.
const APART: f64 = 2.0;
/// A fill this opaque hides what is under it.
const HIDES: f32 = 0.1;

pub(super) fn check(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    let bleed = sheet.face.bleed.mm();
    for text in &ink.texts {
        let (under, over) = ink.shapes.split_at(text.above);
        let near = |shape: &&Shape<'_>| shape.fill().is_some() && shape.bounds.overlap(text.bounds) > 0.0;
        let under: Vec<&Shape<'_>> = under.iter().filter(near).collect();
        low(sheet, text, &under, bleed, findings);
        let hiding = over.iter().filter(near).filter(|shape| opacity(shape) > HIDES);
        if let Some(shape) =
            hiding.into_iter().find(|shape| points(text.bounds).any(|at| covers(shape, at, bleed)))
        {
            let said = format!("“{}” lies under what the block {} draws over it", text.words(), shape.block);
            findings.push(
                sheet
                    .finding("text-covered", said)
                    .field(text.block)
                    .expected("nothing drawn over a text")
                    .help("draw the ground before the text, or mend where the block lies"),
            );
        }
    }
}

fn opacity(shape: &Shape<'_>) -> f32 {
    shape.fill().map_or(0.0, |fill| fill.opacity().get() * shape.opacity)
}

fn low(sheet: Sheet<'_>, text: &InkedText<'_>, under: &[&Shape<'_>], bleed: f64, findings: &mut Findings) {
    let grounds = if under.is_empty() { vec![Srgb::WHITE] } else { grounds(text, under, bleed) };
    let pairs = grounds.iter().flat_map(|&ground| {
        let inks = inks(text, ground);
        inks.into_iter().map(move |ink| (contrast(ink, ground), ink, ground))
    });
    let Some((worst, ink, ground)) = pairs.min_by(|a, b| a.0.total_cmp(&b.0)) else { return };
    let least = least(text);
    if worst < least {
        let said = format!("“{}” hardly stands out from its ground", text.words());
        findings.push(
            sheet
                .finding("text-contrast-low", said)
                .field(text.block)
                .found(format!("contrast {worst:.1}:1, {} on {}", ink.hex(), ground.hex()))
                .expected(format!("at least {least}:1"))
                .help("set it in black or white, whichever reads better on that ground"),
        );
    }
}

fn grounds(text: &InkedText<'_>, under: &[&Shape<'_>], bleed: f64) -> Vec<Srgb> {
    let mut grounds: Vec<Srgb> =
        points(text.bounds).flat_map(|at| colours(under.iter().copied(), at, bleed)).collect();
    grounds.sort_unstable();
    grounds.dedup();
    grounds
}

/// Points all over a text.
fn points(bounds: Bounds) -> impl Iterator<Item = (f64, f64)> {
    let across = bounds.width() / (bounds.width() / APART).ceil().clamp(2.0, 64.0);
    let rows = [0.2, 0.5, 0.8].map(|share| bounds.top + share * bounds.height());
    let columns = std::iter::successors(Some(bounds.left + across / 2.0), move |x| Some(x + across));
    columns.take_while(move |x| *x < bounds.right).flat_map(move |x| rows.map(|y| (x, y)))
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

fn least(text: &InkedText<'_>) -> f64 {
    let size = text.size().pt() + 0.01;
    let mut spans = text.text.chunks().iter().flat_map(|chunk| chunk.spans());
    let bold = spans.all(|span| span.font().weight() >= BOLD);
    let large = size >= LARGE.0 || bold && size >= LARGE.1;
    if large { LARGE_CONTRAST } else { LEGIBLE_CONTRAST }
}

//! `text-crossed`: a line that runs through a text.
//!
//! Why: a line through a figure makes another figure of it, and a line through a word strikes it out.
//!
//! To put it right: mend where the layout draws the line; one that a later ground hides is none.

use super::Sheet;
use super::bounds::Bounds;
use super::ground::covers;
use super::ink::{Ink, InkedText, Shape};
use super::outline::{Piece, pieces};
use crate::diagnostics::Findings;
use usvg::tiny_skia_path::Point;

/// How much of a text's height a line may take from above and from below: underlines and frames.
const RIM: f64 = 0.25;

pub(super) fn check(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    let bleed = sheet.face.bleed.mm();
    for text in ink.texts.iter().filter(|text| is_level(text)) {
        let core = core(text.bounds);
        let lines = ink.shapes.iter().enumerate();
        let near = lines.filter(|(_, line)| line.path.stroke().is_some() && line.inked.overlap(core) > 0.0);
        let shows = |(index, line): &(usize, &Shape<'_>)| {
            let later = ink.shapes.get(index + 1..text.above).unwrap_or_default();
            inside(line, core, bleed).iter().any(|at| !later.iter().any(|fill| covers(fill, *at, bleed)))
        };
        if let Some((_, line)) = near.into_iter().find(shows) {
            let said = format!("a line of the block {} runs through “{}”", line.block, text.words());
            findings.push(
                sheet
                    .finding("text-crossed", said)
                    .field(text.block)
                    .expected("lines beside texts, over or under them")
                    .help("mend where the layout draws the line"),
            );
        }
    }
}

/// The box round a text that stands askew is mostly empty.
fn is_level(text: &InkedText<'_>) -> bool {
    let transform = text.text.abs_transform();
    transform.kx == 0.0 && transform.ky == 0.0 || transform.sx == 0.0 && transform.sy == 0.0
}

/// The middle of a text, where letters are.
fn core(bounds: Bounds) -> Bounds {
    let (across, along) = (bounds.width().min(bounds.height()) * RIM, bounds.height() * RIM);
    Bounds {
        left: bounds.left + across.min(along),
        top: bounds.top + along,
        right: bounds.right - across.min(along),
        bottom: bounds.bottom - along,
    }
}

/// The middle of each stretch of a line that lies in a box.
fn inside(line: &Shape<'_>, field: Bounds, bleed: f64) -> Vec<(f64, f64)> {
    let mut found = Vec::new();
    let there = |mut point: Point| {
        line.path.abs_transform().map_point(&mut point);
        (f64::from(point.x) - bleed, f64::from(point.y) - bleed)
    };
    pieces(line.path.data(), &mut |Piece { from, to, drawn }| {
        if drawn {
            found.extend(middle(there(from), there(to), field));
        }
    });
    found
}

/// The middle of what lies in a box of a straight line (Liang and Barsky 1984).
fn middle(from: (f64, f64), to: (f64, f64), field: Bounds) -> Option<(f64, f64)> {
    let (across, down) = (to.0 - from.0, to.1 - from.1);
    let sides = [
        (-across, from.0 - field.left),
        (across, field.right - from.0),
        (-down, from.1 - field.top),
        (down, field.bottom - from.1),
    ];
    let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
    for (towards, room) in sides {
        if towards == 0.0 && room < 0.0 {
            return None;
        }
        if towards < 0.0 {
            enters = enters.max(room / towards);
        } else if towards > 0.0 {
            leaves = leaves.min(room / towards);
        }
    }
    let share = f64::midpoint(enters, leaves);
    (enters < leaves).then_some((from.0 + share * across, from.1 + share * down))
}

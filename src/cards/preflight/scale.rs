//! `drawing-not-to-scale`: a drawing of this program's that a layout scales, skews or turns over.
//!
//! Why: it says "5:1" or stands for true size, and a conductor is held against it.
//!
//! To put it right: give the block another width or height, for which the drawing is made anew; moving and
//! turning it is fine.

use super::Sheet;
use super::ink::{Ink, scales};
use crate::diagnostics::Findings;
use usvg::Transform;

/// How much of a drawing's length may be off: less than a caliper finds on a card.
const SLACK: f64 = 0.001;

pub(super) fn check(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    for (block, transform) in &ink.made_here {
        if let Some(found) = fault(*transform) {
            let said =
                format!("the drawing in the block {block} is not drawn to the scale that it was made for");
            findings.push(
                sheet
                    .finding("drawing-not-to-scale", said)
                    .field(*block)
                    .found(found)
                    .expected("1.000 times as large as made")
                    .help("move it, and settle its size by the block's `data-width` and `data-most`, not by a transform"),
            );
        }
    }
}

fn fault(transform: Transform) -> Option<String> {
    let (least, most) = scales(transform);
    let turned_over = transform.sx * transform.sy < transform.kx * transform.ky;
    if (least - 1.0).abs() > SLACK || (most - 1.0).abs() > SLACK {
        let even = (most - least).abs() <= SLACK;
        let between = if even { format!("{most:.3}") } else { format!("{least:.3} to {most:.3}") };
        Some(format!("{between} times as large as made"))
    } else {
        turned_over.then(|| "turned over, as in a mirror".to_owned())
    }
}

//! Texts that leave the safe area, lie over each other, or stand where the hole is punched.

use super::Sheet;
use super::ink::{Bounds, Ink};
use crate::cards::face::Side;
use crate::diagnostics::Findings;

/// How far inside the cut everything that is read must stay.
const SAFE: f64 = 3.0;
/// Side of the clear corner for a punched hole: upper right on the front, so upper left on the back.
const PUNCH: f64 = 12.0;
/// What rounding may take.
const SLACK: f64 = 0.02;

pub(super) fn check(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    safe_area(sheet, ink, findings);
    punch_corner(sheet, ink, findings);
    overlaps(sheet, ink, findings);
}

fn safe_area(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    let (width, height) = (sheet.face.cut.0.mm(), sheet.face.cut.1.mm());
    let safe = Bounds { left: SAFE, top: SAFE, right: width - SAFE, bottom: height - SAFE };
    for text in &ink.texts {
        let out = text.bounds.outside(safe);
        if out > SLACK {
            let said = format!("“{}” runs {out:.1} mm out of the safe area", text.words());
            findings.push(
                sheet.finding("text-unsafe", said).field(text.block).help("shorten it, or mend the layout"),
            );
        }
    }
    for (name, bounds) in &ink.drawings {
        let out = bounds.outside(safe);
        if out > SLACK {
            let said = format!("the drawing {name} runs {out:.1} mm out of the safe area");
            findings.push(sheet.finding("drawing-unsafe", said).field(*name).help("mend the layout"));
        }
    }
}

fn punch_corner(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    let width = sheet.face.cut.0.mm();
    let left = match sheet.face.side {
        Side::Front => width - PUNCH,
        Side::Back => 0.0,
    };
    let corner = Bounds { left, top: 0.0, right: left + PUNCH, bottom: PUNCH };
    for text in &ink.texts {
        if text.bounds.overlap(corner) > SLACK {
            let said = format!("“{}” stands in the corner where the hole is punched", text.words());
            findings.push(
                sheet.finding("text-punched", said).field(text.block).help("shorten it, or mend the layout"),
            );
        }
    }
    for (name, bounds) in &ink.drawings {
        if bounds.overlap(corner) > SLACK {
            let said = format!("the drawing {name} stands in the corner where the hole is punched");
            findings.push(sheet.finding("drawing-punched", said).field(*name).help("mend the layout"));
        }
    }
}

fn overlaps(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    for (index, one) in ink.texts.iter().enumerate() {
        for two in &ink.texts[index + 1..] {
            if one.bounds.overlap(two.bounds) > SLACK {
                let said = format!("“{}” and “{}” lie over each other", one.words(), two.words());
                findings.push(
                    sheet
                        .finding("text-overlap", said)
                        .field(one.block)
                        .help("shorten them, or mend the layout"),
                );
            }
        }
        let others = ink.drawings.iter().filter(|(name, _)| *name != one.block);
        for (name, _) in others.filter(|(_, bounds)| bounds.overlap(one.bounds) > SLACK) {
            let said = format!("“{}” and the drawing {name} lie over each other", one.words());
            findings.push(
                sheet.finding("text-overlap", said).field(one.block).help("shorten it, or mend the layout"),
            );
        }
    }
}

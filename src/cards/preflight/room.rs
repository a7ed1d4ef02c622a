//! `text-unsafe`, `drawing-unsafe`, `text-punched`, `drawing-punched`, `text-overlap`: what leaves the safe
//! area, stands where the hole is punched, or lies over something else.
//!
//! Why: a cut is never quite where it should be, a laminate needs its rim, and what is printed over another
//! text can't be read.
//!
//! To put it right: shorten the text, or mend the layout.

use super::bounds::Bounds;
use super::ink::Ink;
use super::{SAFE, Sheet};
use crate::cards::face::Side;
use crate::diagnostics::Findings;

/// Side of the clear corner for a punched hole: upper right on the front, so upper left on the back.
const PUNCH: f64 = 12.0;
/// What rounding may take.
const SLACK: f64 = 0.02;

const MEND_TEXT: &str = "shorten it, or mend the layout";
const MEND_LAYOUT: &str = "mend the layout";

pub(super) fn check(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    safe_area(sheet, ink, findings);
    punch_corner(sheet, ink, findings);
    overlaps(sheet, ink, findings);
}

/// What is read, with its box, what it is called, and how it is put right.
fn read<'a>(ink: &'a Ink<'_>) -> impl Iterator<Item = (bool, &'a str, Bounds, String)> {
    let texts = ink.texts.iter().map(|text| (true, text.block, text.bounds, format!("“{}”", text.words())));
    let drawings =
        ink.drawings.iter().map(|(name, bounds)| (false, *name, *bounds, format!("the drawing {name}")));
    texts.chain(drawings)
}

fn safe_area(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    let (width, height) = (sheet.face.cut.0.mm(), sheet.face.cut.1.mm());
    let safe = Bounds { left: SAFE, top: SAFE, right: width - SAFE, bottom: height - SAFE };
    for (is_text, block, bounds, called) in read(ink) {
        let out = bounds.outside(safe);
        if out > SLACK {
            let code = if is_text { "text-unsafe" } else { "drawing-unsafe" };
            let finding = sheet.finding(code, format!("{called} runs {out:.1} mm out of the safe area"));
            findings.push(
                finding
                    .field(block)
                    .found(format!("{:.1} mm inside the cut", SAFE - out))
                    .expected(format!("at least {SAFE:.1} mm"))
                    .help(if is_text { MEND_TEXT } else { MEND_LAYOUT }),
            );
        }
    }
}

fn punch_corner(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    let left = match sheet.face.side {
        Side::Front => sheet.face.cut.0.mm() - PUNCH,
        Side::Back => 0.0,
    };
    let corner = Bounds { left, top: 0.0, right: left + PUNCH, bottom: PUNCH };
    for (is_text, block, bounds, called) in read(ink) {
        let over = bounds.overlap(corner);
        if over > SLACK {
            let code = if is_text { "text-punched" } else { "drawing-punched" };
            let finding =
                sheet.finding(code, format!("{called} stands in the corner where the hole is punched"));
            findings.push(
                finding
                    .field(block)
                    .found(format!("{over:.1} mm inside the corner"))
                    .expected(format!("a clear corner of {PUNCH} × {PUNCH} mm"))
                    .help(if is_text { MEND_TEXT } else { MEND_LAYOUT }),
            );
        }
    }
}

fn overlaps(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    let mut report = |block: &str, one: String, two: String, over: f64| {
        let finding = sheet.finding("text-overlap", format!("“{one}” and {two} lie over each other"));
        let help = "shorten them, or mend the layout";
        findings.push(
            finding.field(block).found(format!("{over:.1} mm")).expected("texts that stand clear").help(help),
        );
    };
    for (index, one) in ink.texts.iter().enumerate() {
        for two in &ink.texts[index + 1..] {
            let over = one.bounds.overlap(two.bounds);
            if over > SLACK {
                report(one.block, one.words(), format!("“{}”", two.words()), over);
            }
        }
        for (name, bounds) in ink.drawings.iter().filter(|(name, _)| *name != one.block) {
            let over = one.bounds.overlap(*bounds);
            if over > SLACK {
                report(one.block, one.words(), format!("the drawing {name}"), over);
            }
        }
    }
}

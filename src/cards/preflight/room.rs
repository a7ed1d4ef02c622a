//! `text-unsafe`, `drawing-unsafe`, `text-punched`, `drawing-punched`, `text-overlap`: what leaves the safe area,
//! stands where the hole is punched, or lies over something else.
//!
//! Why: a trim is never quite where it should be, a laminate needs its rim, and what is printed over another text
//! can't be read.
//!
//! To put it right: at the layout's line, take away a fixed width or height, or give what stands there more room.

use super::check::Check;
use crate::cards::face::{Block, Item, ItemMark, Side};
use crate::cards::margins::{PUNCH, SAFE};
use crate::diagnostics::{Findings, Place};
use kurbo::Rect;

/// What rounding may take.
const SLACK: f64 = 0.03;

const GIVE_ROOM: &str =
    "give it room in the layout: take away a fixed width or height here, or in an element round it";

/// Something that is read, with the room of its ink.
struct Read<'a> {
    is_text: bool,
    bounds: Rect,
    called: String,
    at: &'a Place,
    block: &'a str,
}

pub(super) fn check(check: Check<'_>, findings: &mut Findings) {
    let all: Vec<Read<'_>> = read(check).collect();
    for one in &all {
        safe_area(check, one, findings);
        punched(check, one, findings);
    }
    overlaps(check, &all, findings);
}

/// Lines, signs and drawings, and the texts of SVG of the layout's own.
fn read<'a>(check: Check<'a>) -> impl Iterator<Item = Read<'a>> {
    let items = check.face.blocks.iter().flat_map(|block| block.items.iter().map(move |item| (block, item)));
    let drawn = check.drawn.iter().flat_map(|ink| {
        ink.texts.iter().map(move |text| Read {
            is_text: true,
            bounds: text.bounds,
            called: format!("“{}”", text.words()),
            at: ink.at,
            block: ink.block,
        })
    });
    items.filter_map(|(block, item)| typed(block, item)).chain(drawn)
}

fn typed<'a>(block: &'a Block, item: &'a Item) -> Option<Read<'a>> {
    let (is_text, called) = match &item.mark {
        ItemMark::Line { words, .. } => (true, format!("“{words}”")),
        ItemMark::Sign(sign) => (true, format!("the sign for “{}”", sign.meaning())),
        ItemMark::Drawing(name, _) => (false, format!("the drawing {name}")),
        _ => return None,
    };
    Some(Read { is_text, bounds: item.bounds, called, at: &item.at, block: &block.name })
}

fn safe_area(check: Check<'_>, one: &Read<'_>, findings: &mut Findings) {
    let (width, height) = check.trim();
    let inside = Rect::new(SAFE, SAFE, width - SAFE, height - SAFE);
    let out = past(one.bounds, inside).into_iter().fold(0.0, f64::max);
    if out > SLACK {
        let code = if one.is_text { "text-unsafe" } else { "drawing-unsafe" };
        let said = format!("{} runs {out:.1} mm out of the safe area", one.called);
        let finding = check.finding(code, one.at, &said).field(one.block);
        findings.push(
            finding
                .found(format!("{:.1} mm inside the trim", SAFE - out))
                .expected(format!("at least {SAFE:.1} mm"))
                .help(GIVE_ROOM),
        );
    }
}

/// How far a box runs past another on its left, top, right and bottom.
pub(super) fn past(bounds: Rect, inside: Rect) -> [f64; 4] {
    [inside.x0 - bounds.x0, inside.y0 - bounds.y0, bounds.x1 - inside.x1, bounds.y1 - inside.y1]
}

fn punched(check: Check<'_>, one: &Read<'_>, findings: &mut Findings) {
    let x = if check.face.side == Side::Front { check.trim().0 - PUNCH } else { 0.0 };
    let corner = Rect::new(x, 0.0, x + PUNCH, PUNCH);
    if overlap(one.bounds, corner) > SLACK {
        let code = if one.is_text { "text-punched" } else { "drawing-punched" };
        let said = format!("{} stands in the corner that is punched", one.called);
        findings.push(
            check
                .finding(code, one.at, &said)
                .field(one.block)
                .expected(format!("a clear corner of {PUNCH:.0} × {PUNCH:.0} mm"))
                .help("put its block directly into the face: there it is kept out of the corner"),
        );
    }
}

/// How far two boxes lie over each other; at most 0 where they don't.
fn overlap(one: Rect, two: Rect) -> f64 {
    (one.x1.min(two.x1) - one.x0.max(two.x0)).min(one.y1.min(two.y1) - one.y0.max(two.y0))
}

fn overlaps(check: Check<'_>, all: &[Read<'_>], findings: &mut Findings) {
    for (index, one) in all.iter().enumerate() {
        for two in &all[index + 1..] {
            if (one.is_text || two.is_text) && overlap(one.bounds, two.bounds) > SLACK {
                let said = format!("{} lies over {}", two.called, one.called);
                let finding = check.finding("text-overlap", two.at, &said).field(two.block);
                findings
                    .push(finding.related(one.at.clone(), "what it lies over stands here").help(GIVE_ROOM));
            }
        }
    }
}

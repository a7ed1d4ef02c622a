//! What has no room on a face, and how that is said.

use super::description::Content;
use super::face::BlockKind;
use super::flow::Slot;
use super::margins::SAFE;
use super::measure::Measurer;
use super::setting::Setting;
use crate::diagnostics::{Findings, Place};
use std::collections::BTreeMap;

/// Why a face can't be made.
#[derive(Debug)]
pub enum FaceError {
    /// The layout is not sound.
    Layout(Findings),
    /// Not everything fits at the least type of its class.
    TooFull(TooFull),
}

/// What does not fit.
#[derive(Debug)]
pub struct TooFull {
    /// The record's field that takes most of the room.
    pub field: String,
    /// How many millimetres are too much.
    pub excess: String,
    /// What is too long, in words.
    pub said: String,
    /// Where the layout gives it its room, if it is one text that is too long.
    pub at: Option<Place>,
}

/// Lengths are rounded to a thousandth; sums of them may be off by a few.
pub(super) const SLACK: f64 = 0.01;

/// Texts that are longer than their room, and signs beside it, each with its slot and by how much.
pub(super) fn too_long<'s>(
    slots: &'s [Slot<'_>],
    setting: &'s Setting,
    measurer: &'s Measurer<'_>,
) -> impl Iterator<Item = (usize, f64)> + 's {
    slots.iter().enumerate().filter_map(|(index, slot)| {
        let text = match &slot.node.content {
            Content::Text(text) => text,
            Content::Sign(_) if !has_width(slots, index) => {
                let over = slot.rect.x1 - right_of(slots, index, measurer);
                return (over > 2.0 * SLACK).then_some((index, over));
            }
            _ => return None,
        };
        let room = if text.upward { slot.rect.height() } else { slot.rect.width() };
        let set = measurer.set(text, setting.tightness, if text.upward { f64::MAX } else { room });
        let inside = right_of(slots, index, measurer) - slot.rect.x0;
        let room = if text.upward || has_width(slots, index) { room } else { room.min(inside) };
        let over = set.extent() - room;
        (over > 2.0 * SLACK).then_some((index, over))
    })
}

/// Where an element must end on the right: inside the lines drawn round all that it stands in, and with the safe area.
fn right_of(slots: &[Slot<'_>], index: usize, measurer: &Measurer<'_>) -> f64 {
    match slots[index].parent {
        Some(parent) => {
            let frame = measurer.style.frame(&slots[parent].node.frame);
            let free = frame.filter(|frame| frame.line > 0.0).map_or(0.0, |frame| frame.pad[1]);
            (slots[parent].rect.x1 - free).min(right_of(slots, parent, measurer))
        }
        None => measurer.inside.0 + SAFE,
    }
}

/// Whether the layout says how wide an element is, or one that it stands in: what is then outside the safe area is the
/// layout's fault, not that of a long word.
fn has_width(slots: &[Slot<'_>], index: usize) -> bool {
    let own = |slot: &Slot<'_>| slot.node.room.width.is_some() || slot.node.room.least_width.is_some();
    own(&slots[index]) || slots[index].parent.is_some_and(|parent| has_width(slots, parent))
}

/// What a face lacks room for that is so high.
pub(super) fn too_full(
    slots: &[Slot<'_>],
    setting: &Setting,
    height: f64,
    measurer: &Measurer<'_>,
) -> TooFull {
    if let Some((index, over)) = too_long(slots, setting, measurer).next() {
        let slot = &slots[index];
        let words = match &slot.node.content {
            Content::Text(text) => text.words.trim(),
            Content::Sign(sign) => sign.meaning(),
            _ => "",
        };
        let excess = tenths(over);
        // Word joiners keep a stamp in one line; nobody wrote them.
        let words = words.replace('\u{2060}', "");
        let said = format!("“{words}” is {excess} mm too long for its line");
        return TooFull {
            field: field(slots, index).unwrap_or_default().to_owned(),
            excess,
            said,
            at: Some(slot.node.at.clone()),
        };
    }
    let excess = tenths(height - measurer.inside.1);
    let heights = field_heights(slots);
    let field = heights.first().map_or_else(String::new, |(field, _)| (*field).to_owned());
    let named: Vec<String> = heights
        .iter()
        .take(MOST_NAMED)
        .map(|(field, high)| format!("{} {} mm", called(field), tenths(*high)))
        .collect();
    let said = format!("its texts are {excess} mm too long together: {}", named.join(", "));
    TooFull { field, excess, said, at: None }
}

/// The field of the block that a slot stands in.
fn field<'a>(slots: &[Slot<'a>], mut index: usize) -> Option<&'a str> {
    loop {
        match &slots[index].node.block {
            Some(block) => return Some(&block.field),
            None => index = slots[index].parent?,
        }
    }
}

/// What takes the room: a field of the record, or what the program makes from it, which no shorter text makes lower.
fn called(field: &str) -> &str {
    match field {
        "wear" => "the table made by the program from `wear`",
        field => field,
    }
}

/// How many of the fields that fill a face are named: those that shortening helps most.
const MOST_NAMED: usize = 3;

/// The fields whose texts fill a face, with the height of each in the column where it takes most.
fn field_heights<'a>(slots: &[Slot<'a>]) -> Vec<(&'a str, f64)> {
    let mut columns: BTreeMap<(&str, i64), f64> = BTreeMap::new();
    for slot in slots {
        let Some(block) = slot.node.block.as_ref().filter(|block| block.kind != BlockKind::Drawing) else {
            continue;
        };
        let column = slot.rect.x0.round() as i64;
        *columns.entry((&block.field, column)).or_default() += slot.rect.height();
    }
    let mut fields: BTreeMap<&str, f64> = BTreeMap::new();
    for ((field, _), height) in columns {
        let most = fields.entry(field).or_default();
        *most = most.max(height);
    }
    let mut fields: Vec<(&str, f64)> = fields.into_iter().collect();
    fields.sort_by(|a, b| b.1.total_cmp(&a.1));
    fields
}

/// Rounded up, so that nothing is said to be less than it is.
fn tenths(mm: f64) -> String {
    format!("{:.1}", (mm * 10.0).ceil() / 10.0)
}

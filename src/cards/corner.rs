//! What reaches into the corner of a face that is punched.

use super::description::{Align, Content, Edges};
use super::flow::Slot;
use super::margins::{PUNCH, SAFE};
use super::measure::Measurer;
use super::setting::Setting;
use super::too_full::SLACK;
use kurbo::Rect;

/// A child of the face that reaches into the punched corner.
#[derive(Clone, Copy)]
pub(super) struct Punched {
    /// Its slot, and which child it is.
    pub slot: usize,
    pub child: usize,
    /// How much lower it would be clear of it.
    pub lower: f64,
    pub is_heading: bool,
}

/// The first child of the face, of those asked for, that reaches into the punched corner.
pub(super) fn punched(
    slots: &[Slot<'_>],
    setting: &Setting,
    measurer: &Measurer<'_>,
    asked: impl Fn(usize) -> bool,
) -> Option<Punched> {
    let width = measurer.inside.0 + 2.0 * SAFE;
    let x = if measurer.corner_left { 0.0 } else { width - PUNCH };
    let corner = Rect::new(x, 0.0, x + PUNCH, PUNCH);
    let reaches = |slot: &Slot<'_>| {
        let common = inked(slot, setting, measurer).map(|ink| ink.intersect(corner));
        common.is_some_and(|common| common.width() > SLACK && common.height() > SLACK)
    };
    let children = slots.first()?.node.children_in(setting.form);
    let child_of = |mut index: usize| {
        while slots[index].parent? != 0 {
            index = slots[index].parent?;
        }
        Some(index)
    };
    let mut reaching = (1..slots.len()).filter(|index| reaches(&slots[*index])).filter_map(child_of);
    let number = |index: usize| children.iter().position(|child| std::ptr::eq(*child, slots[index].node));
    let wanted = |slot: usize| Some((slot, number(slot).filter(|child| asked(*child))?));
    let (slot, child) = reaching.find_map(wanted)?;
    let is_heading = slots[slot].node.is_heading();
    Some(Punched { slot, child, lower: PUNCH - slots[slot].rect.y0, is_heading })
}

/// What needs to stand no more than this lower to be clear of the punched corner is not narrowed for it.
pub(super) const NEARLY_BELOW: f64 = 2.6;

/// The room that an element's ink takes; none of what only holds others.
fn inked(slot: &Slot<'_>, setting: &Setting, measurer: &Measurer<'_>) -> Option<Rect> {
    match &slot.node.content {
        Content::Text(text) if !text.upward => {
            let set = measurer.set(text, setting.tightness, slot.rect.width());
            let extent = set.extent();
            let spare = (slot.rect.width() - extent).max(0.0);
            let right = set.lines.iter().any(|line| line.right_to_left);
            let left = match text.align {
                Align::Middle => spare / 2.0,
                Align::End => spare,
                Align::Start if right => spare,
                Align::Start => 0.0,
            };
            let x = slot.rect.x0 + left;
            (extent > 0.0).then(|| Rect::new(x, slot.rect.y0, x + extent, slot.rect.y1))
        }
        // What a layout draws itself over the card's edges is looked at as it is drawn.
        Content::Svg { .. } if slot.edges != Edges::default() => None,
        Content::Space | Content::Strike | Content::Forms | Content::TableRow { .. } => None,
        Content::Stack | Content::Row { .. } | Content::Columns { .. } | Content::Table { .. } => {
            (!slot.node.frame.is_empty()).then_some(slot.rect)
        }
        _ => Some(slot.rect),
    }
}

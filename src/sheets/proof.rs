//! A sheet of outlines, front and back, that shows how far a printer misses when it turns the paper.

use super::document::{described, finish, heading, new_document};
use super::fault::SheetFault;
use super::impose::{Rectangle, SheetPlan, Slot, capacity, impose};
use super::margin::{self, Margin};
use super::options::Options;
use super::page::{Page, Printer};
use super::print_item::PrintKind;
use crate::cards::Side;
use crate::typeset::{FontStyle, Line, Style};
use crate::units::Length;
use krilla::geom::{Path, PathBuilder};
use krilla::outline::Outline;
use krilla::tagging::{Artifact, ArtifactType, ContentTag, Tag, TagGroup, TagTree};

const OUTLINE: Length = Length::from_mm(0.1);
/// Marks of the ruler on either side of a cut line, a millimetre apart.
const RULER: i32 = 3;
const SQUARE: Length = Length::from_mm(20.0);

/// One sheet full of card outlines. On the front, each edge of a card carries a ruler of millimetres. Held
/// against the light, the back's outline shows on it how far the printer misses. A square of 20 × 20 mm on
/// the first card shows the scale in both directions.
///
/// # Errors
/// Where a card does not fit the sheet, or the margin's texts can't be archived as PDF/A-2b.
pub fn proof(options: &Options<'_>) -> Result<Vec<u8>, SheetFault> {
    let room = capacity(options.trim, &options.format)
        .ok_or_else(|| SheetFault::does_not_fit(PrintKind::Cards, options))?;
    let plans = impose(options.trim, room, &options.format).unwrap_or_default();
    let mut document = new_document();
    let mut printer = Printer::default();
    let mut tags = TagTree::new().with_lang(Some(options.language.to_owned()));
    for plan in &plans {
        for &side in PrintKind::Cards.sides() {
            let slots = plan.slots(side);
            printer.print(
                &mut document,
                plan.size,
                Some(&margin_of(side, slots, options)),
                options,
                |page| {
                    tags.push(outlines(page, plan, side, slots, options));
                },
            );
        }
    }
    document.set_metadata(described(options, format!("{}: duplex proof", options.title)));
    document.set_outline(Outline::new());
    document.set_tag_tree(tags);
    finish(document)
}

fn margin_of(side: Side, slots: &[Slot], options: &Options<'_>) -> Margin {
    Margin {
        trim_bounds: SheetPlan::trim_bounds(slots),
        trims: slots.iter().map(|slot| slot.trim).collect(),
        left: heading(options),
        right: format!("duplex proof · {}", side.word()),
        kind: PrintKind::Cards,
    }
}

fn outlines(
    page: &mut Page<'_, '_>,
    plan: &SheetPlan,
    side: Side,
    slots: &[Slot],
    options: &Options<'_>,
) -> TagGroup {
    let surface = page.surface();
    surface.start_tagged(ContentTag::Artifact(Artifact::with_kind(ArtifactType::Page)));
    margin::stroke(surface, frames(slots, side), OUTLINE);
    surface.end_tagged();
    let mut group = TagGroup::new(Tag::P);
    group.push(surface.start_tagged(ContentTag::Other));
    let lines: String = slots.iter().map(|slot| words(slot.trim, side, options)).collect();
    margin::svg(surface, plan.size, &lines, options.fonts);
    surface.end_tagged();
    group
}

fn words(trim: Rectangle, side: Side, options: &Options<'_>) -> String {
    let text = match side {
        Side::Front => "Front: each edge carries a ruler of millimetres.",
        Side::Back => {
            "Back: held against the light, this outline shows on the front's rulers how far the printer misses. \
             The long stroke of a ruler is zero."
        }
    };
    let style = Style::points(FontStyle::Regular, 7.0);
    let inset = Length::from_mm(5.0);
    let lines = options.fonts.lines(text, style, trim.width - inset * 2.0);
    let place = |index: usize| {
        (trim.left + inset, trim.top + Length::from_mm(10.0) + style.size * (1.3 * index as f64))
    };
    let set = |(index, line): (usize, &Line)| {
        margin::text(options.fonts, &line.text, style.font_style, place(index), trim.width - inset * 2.0)
    };
    lines.iter().enumerate().map(set).collect()
}

fn frames(slots: &[Slot], side: Side) -> Option<Path> {
    let mut path = PathBuilder::new();
    for slot in slots {
        frame(&mut path, slot.trim);
        if side == Side::Front {
            rulers(&mut path, slot.trim);
        }
    }
    if let Some(first) = slots.first().filter(|_| side == Side::Front) {
        let inset = Length::from_mm(5.0);
        let corner = (first.trim.left + inset, first.trim.bottom() - inset - SQUARE);
        frame(&mut path, Rectangle { left: corner.0, top: corner.1, width: SQUARE, height: SQUARE });
    }
    path.finish()
}

fn frame(path: &mut PathBuilder, trim: Rectangle) {
    let corners = [
        (trim.left, trim.top),
        (trim.right(), trim.top),
        (trim.right(), trim.bottom()),
        (trim.left, trim.bottom()),
        (trim.left, trim.top),
    ];
    for pair in corners.windows(2) {
        margin::line(path, pair[0], pair[1]);
    }
}

/// One on each edge, those of neighbours away from each other.
fn rulers(path: &mut PathBuilder, trim: Rectangle) {
    let across = |share: f64| trim.left + trim.width * share;
    let down = |share: f64| trim.top + trim.height * share;
    ruler(path, (across(0.4), trim.top), true);
    ruler(path, (across(0.6), trim.bottom()), true);
    ruler(path, (trim.left, down(0.4)), false);
    ruler(path, (trim.right(), down(0.6)), false);
}

/// Strokes a millimetre apart on either side of an edge, parallel to it.
fn ruler(path: &mut PathBuilder, (x, y): (Length, Length), across: bool) {
    for step in -RULER..=RULER {
        let off = Length::from_mm(f64::from(step));
        let half = Length::from_mm(if step == 0 { 4.0 } else { 2.0 });
        if across {
            margin::line(path, (x - half, y + off), (x + half, y + off));
        } else {
            margin::line(path, (x + off, y - half), (x + off, y + half));
        }
    }
}

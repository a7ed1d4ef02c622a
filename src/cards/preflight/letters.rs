//! `glyph-missing`, `type-below-class`, `text-contrast-low`: characters that no font has, the gripping part's stamp
//! smaller than it must be, and texts that don't stand out from their ground.
//!
//! Why: a character that its font lacks prints as an empty box; the stamp of the gripping part is what a card is
//! held up for; a card is read in the rain and in the dusk, and copied in grey.
//!
//! To put it right: a font that has the character, in the catalogue's `fonts` folder; the class `stamp` for the
//! stamp; black or white for the text, whichever reads better on its ground.

use super::check::Check;
use crate::cards::face::{Item, ItemMark};
use crate::cards::type_class::TypeClass;
use crate::colour::{LEGIBLE_CONTRAST, Srgb, contrast};
use crate::diagnostics::{Finding, Findings};
use crate::layouts::place_in;
use crate::units::Length;
use usvg::{Group, Node};

/// What rounding may take, in points.
const SLACK: f64 = 0.01;
/// Contrast that is enough for large type (WCAG 2.2, success criterion 1.4.3).
const LARGE_CONTRAST: f64 = 3.0;
/// Large type, and large type that is bold, in points (WCAG 2.2, "large scale").
const LARGE: (f64, f64) = (18.0, 14.0);

pub(super) fn check(check: Check<'_>, findings: &mut Findings) {
    missing(check, findings);
    stamps(check, findings);
    for item in items(check) {
        pale(check, item, findings);
    }
}

fn items<'a>(check: Check<'a>) -> impl Iterator<Item = &'a Item> {
    check.face.blocks.iter().flat_map(|block| &block.items)
}

/// The contrast that a text needs.
pub(super) fn least_contrast(size: Length, bold: bool) -> f64 {
    let points = size.pt() + SLACK;
    if points >= LARGE.0 || bold && points >= LARGE.1 { LARGE_CONTRAST } else { LEGIBLE_CONTRAST }
}

fn pale(check: Check<'_>, item: &Item, findings: &mut Findings) {
    let ItemMark::Line { words, size, bold, colours: (ink, ground), .. } = &item.mark else { return };
    let (found, least) = (contrast(*ink, *ground), least_contrast(*size, *bold));
    if found < least {
        let finding = check.finding(
            "text-contrast-low",
            &item.at,
            &format!("“{words}” has too little contrast with what it stands on"),
        );
        findings.push(too_pale(finding, found, (*ink, *ground), least));
    }
}

pub(super) fn too_pale(finding: Finding, found: f64, (ink, ground): (Srgb, Srgb), least: f64) -> Finding {
    finding
        .found(format!("contrast {found:.1}:1, {} on {}", ink.hex(), ground.hex()))
        .expected(format!("at least {least}:1"))
        .help("set it in black or white, whichever is easier to read there; the `ink` of a frame is in the style")
}

/// The stamps of the gripping parts, each of which stands on the front once as large as stamps must.
fn stamps(check: Check<'_>, findings: &mut Findings) {
    for stamp in check.limits.stamps.iter().filter(|stamp| !stamp.is_empty()) {
        let says = |item: &&Item| matches!(&item.mark, ItemMark::Line { words, .. } if words.replace('\u{a0}', " ").trim() == stamp);
        let largest = items(check).filter(says).max_by(|a, b| size(a).total_cmp(&size(b)));
        let Some(item) = largest else { continue };
        let least = least_stamp(item);
        if size(item).pt() + SLACK >= least {
            continue;
        }
        let found = format!("{:.1} pt", size(item).pt());
        let said = format!("the gripping part's stamp “{stamp}” is set in {found}");
        let finding = check.finding("type-below-class", &item.at, &said).field("stamp");
        findings.push(
            finding
                .found(found)
                .expected(format!("at least {least:.1} pt"))
                .help("give it the class `stamp`"),
        );
    }
}

/// A text of the class `stamp` is smaller than that only where it must stand in one line that is too short for it.
fn least_stamp(item: &Item) -> f64 {
    match item.mark {
        ItemMark::Line { class: TypeClass::Stamp, .. } => TypeClass::Stamp.least_in_one_line(),
        _ => TypeClass::Stamp.least_legible(),
    }
}

fn size(item: &Item) -> Length {
    match item.mark {
        ItemMark::Line { size, .. } => size,
        _ => Length::ZERO,
    }
}

/// Characters without a font: those of the records' texts, and of what is drawn. One finding a side: what lacks one
/// character of a script mostly lacks them all.
fn missing(check: Check<'_>, findings: &mut Findings) {
    let mut texts: Vec<String> = check.face.lines().map(str::to_owned).collect();
    for layer in check.face.blocks.iter().flat_map(|block| &block.layers) {
        boxed(layer.tree.root(), &mut texts);
    }
    let all = texts.concat();
    let missing = check.limits.fonts.missing(&all);
    let Some(&first) = missing.first() else { return };
    let whole = texts.iter().find(|words| words.contains(first)).map_or("", String::as_str);
    let said = format!("no font has the character “{first}” ({}) of “{whole}”", code(first));
    let in_layout =
        check.limits.design.own().find_map(|(name, text)| Some(place_in(name, text, text.find(first)?)));
    findings.push(
        check
            .finding("glyph-missing", in_layout.as_ref().unwrap_or(&check.limits.place), &said)
            .found(listed(&missing))
            .help("put a font that has it into the catalogue's fonts folder, or write the text without it"),
    );
}

/// Texts that are drawn with an empty box: the glyph 0 of a font.
fn boxed(group: &Group, texts: &mut Vec<String>) {
    for node in group.children() {
        match node {
            Node::Group(group) => boxed(group, texts),
            Node::Text(text) if super::svg_ink::has_box(text) => texts.push(super::svg_ink::words(text)),
            _ => {}
        }
    }
}

fn code(character: char) -> String {
    format!("U+{:04X}", u32::from(character))
}

/// Most characters that are listed one by one.
const LISTED: usize = 8;

fn listed(missing: &[char]) -> String {
    let codes: Vec<String> = missing.iter().take(LISTED).map(|&character| code(character)).collect();
    let more = missing.len() - codes.len();
    let codes = codes.join(", ");
    if more == 0 { codes } else { format!("{codes} and {more} more characters without a font") }
}

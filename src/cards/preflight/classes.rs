//! `type-below-class`: a text under the least size of what it is for.
//!
//! Why: the stamp of the gripping part is what a card is held up for, and checks are read at arm's length.
//! A layout can shrink a text behind the back of `text` and `table`: by a transform, or by writing it raw.
//!
//! To put it right: set it with `text` or `table`, with its class, and leave it at that size. A text that a
//! layout writes itself says what it is for in `data-class`; without one it is held to the class `body`.

use super::Sheet;
use super::ink::{Ink, InkedText};
use crate::cards::face::{BlockKind, Side};
use crate::cards::type_class::{Fit, TypeClass};
use crate::diagnostics::Findings;
use crate::units::Length;

/// What rounding may take, in points.
const SLACK: f64 = 0.01;

pub(super) fn check(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    let stamps = stamps(sheet, ink);
    for block in &sheet.face.blocks {
        let texts: Vec<&InkedText<'_>> = ink.texts_of(block).collect();
        let named: Vec<&str> = block.source.split("<text").skip(1).map(class).collect();
        // Where texts are drawn by reference or left out there is no telling which is which.
        let told = texts.len() == named.len();
        for (index, text) in texts.into_iter().enumerate() {
            let named = if told { named[index] } else { "foot" };
            let is_stamp = stamps.iter().any(|stamp| std::ptr::eq(*stamp, text));
            let named = if is_stamp { "stamp" } else { named };
            if let Some((name, class)) = class_of(text, named) {
                below(sheet, text, (name, least(sheet, class)), findings);
            }
        }
    }
}

/// The stamps of the gripping parts, each of which stands on the front once as large as stamps must: the
/// largest text that says it.
fn stamps<'a, 'b>(sheet: Sheet<'_>, ink: &'b Ink<'a>) -> Vec<&'b InkedText<'a>> {
    if sheet.face.side != Side::Front {
        return Vec::new();
    }
    let largest = |stamp: &String| {
        let same = |text: &&InkedText<'_>| text.words().replace('\u{a0}', " ").trim() == stamp;
        ink.texts.iter().filter(same).max_by(|a, b| a.size().mm().total_cmp(&b.size().mm()))
    };
    sheet.stamps.iter().filter(|stamp| !stamp.is_empty()).filter_map(largest).collect()
}

/// The class that an element of text names.
fn class(element: &str) -> &str {
    let attributes = element.split('>').next().unwrap_or_default();
    let class = attributes.split("data-class=\"").nth(1);
    class.and_then(|class| class.split('"').next()).unwrap_or_default()
}

/// What letters of drawings are for is the drawing's own matter.
fn class_of<'a>(text: &InkedText<'_>, named: &'a str) -> Option<(&'a str, TypeClass)> {
    let raw = !text.made_here && text.kind != BlockKind::Drawing;
    let class = TypeClass::from_word(named).map(|class| (named, class));
    class.or(raw.then_some(("body", TypeClass::Body)))
}

/// The size that a class shrinks to where room is short.
fn least(sheet: Sheet<'_>, class: TypeClass) -> Length {
    Fit { close: 1.0, shrink: 1.0, smallest: sheet.smallest_type }.size(class)
}

/// What is smaller than the smallest type on a card is found as such.
fn below(sheet: Sheet<'_>, text: &InkedText<'_>, (class, least): (&str, Length), findings: &mut Findings) {
    let size = text.size();
    if !is_below(size, least) || is_below(size, sheet.smallest_type) {
        return;
    }
    let said = format!("“{}” is set in {:.1} pt, too small for the class {class}", text.words(), size.pt());
    findings.push(
        sheet
            .finding("type-below-class", said)
            .field(text.block)
            .found(format!("{:.1} pt", size.pt()))
            .expected(format!("at least {:.1} pt", least.pt()))
            .help("set it with `text` or `table` and do not scale it; a raw <text> names its class in `data-class`"),
    );
}

fn is_below(size: Length, least: Length) -> bool {
    size.pt() + SLACK < least.pt()
}

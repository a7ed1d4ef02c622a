//! `type-too-small`, `font-missing`, `glyph-missing`: letters that are too small, and fonts and characters that
//! are not there.
//!
//! Why: a font that is missing leaves its text out without a word, and a character that it lacks prints as an
//! empty box.
//!
//! To put it right: a built-in font, or one of the catalogue's `fonts` folder that has the character.

use super::Sheet;
use super::ink::{Ink, InkedText};
use crate::cards::face::Block;
use crate::diagnostics::Findings;
use usvg::roxmltree::{Document, Node};

pub(super) fn check(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    for block in &sheet.face.blocks {
        fonts(sheet, block, ink, findings);
    }
    for text in &ink.texts {
        sizes(sheet, text, findings);
    }
    glyphs(sheet, ink, findings);
}

fn sizes(sheet: Sheet<'_>, text: &InkedText<'_>, findings: &mut Findings) {
    let size = text.size();
    if size.pt() + 0.01 < sheet.smallest_type.pt() {
        let said = format!("“{}” is set in {:.1} pt", text.words(), size.pt());
        let finding = sheet.finding("type-too-small", said).field(text.block);
        findings.push(
            finding
                .found(format!("{:.1} pt", size.pt()))
                .expected(format!("at least {:.1} pt", sheet.smallest_type.pt()))
                .help("set it larger, or mend the layout"),
        );
    }
}

/// A text whose font is not there is left out of the drawing without a word.
fn fonts(sheet: Sheet<'_>, block: &Block, ink: &Ink<'_>, findings: &mut Findings) {
    let drawn = ink.texts_of(block).count();
    if drawn == block.source.matches("<text").count() {
        return;
    }
    let whole = format!("<svg xmlns=\"http://www.w3.org/2000/svg\">{}</svg>", block.source);
    let Ok(document) = Document::parse(&whole) else { return };
    let texts = document.descendants().filter(|node| node.has_tag_name("text"));
    let read: Vec<String> = texts.map(|node| words(node)).filter(|words| !words.trim().is_empty()).collect();
    if read.len() > drawn {
        let all: Vec<String> = ink.texts_of(block).map(InkedText::words).collect();
        let lost = read.into_iter().find(|words| !all.contains(words)).unwrap_or_default();
        let said = format!("“{lost}” asks for a font that is not there");
        let help = "use a built-in font, or one of the catalogue's fonts folder";
        let finding = sheet.finding("font-missing", said).field(&block.name);
        findings.push(finding.expected("a font of the program or of the catalogue").help(help));
    }
}

fn words(node: Node<'_, '_>) -> String {
    node.descendants().filter(Node::is_text).filter_map(|node| node.text()).collect()
}

/// A font that lacks a character draws its glyph 0, an empty box. One finding a side: what lacks one
/// character of a script mostly lacks them all.
fn glyphs(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    let boxed: Vec<&InkedText<'_>> = ink.texts.iter().filter(|text| has_box(text)).collect();
    let Some(text) = boxed.first() else { return };
    let said: String = boxed.iter().map(|text| text.words()).collect();
    let missing = sheet.fonts.missing(&said);
    let finding = match missing.first() {
        Some(&first) => {
            let whole = boxed.iter().map(|text| text.words()).find(|words| words.contains(first));
            let said = format!(
                "no font has the character “{first}” ({}) of “{}”",
                code(first),
                whole.unwrap_or_default()
            );
            sheet.finding("glyph-missing", said).field(text.block).found(listed(&missing)).help(
                "put a font that has it into the catalogue's fonts folder, or write the text without it",
            )
        }
        None => {
            let said = format!("the font of “{}” lacks a character that another font has", text.words());
            sheet
                .finding("glyph-missing", said)
                .field(text.block)
                .help("set it with `text` or `table`, which choose a font for each character")
        }
    };
    findings.push(finding);
}

fn has_box(text: &InkedText<'_>) -> bool {
    text.text.layouted().iter().flat_map(|span| &span.positioned_glyphs).any(|glyph| glyph.id.0 == 0)
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

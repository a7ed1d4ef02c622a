//! Letters that are too small, and characters and fonts that are not there.

use super::Sheet;
use super::ink::{Ink, InkedText};
use crate::cards::face::Block;
use crate::diagnostics::Findings;
use crate::units::Length;
use usvg::roxmltree::{Document, Node};

pub(super) fn check(sheet: Sheet<'_>, ink: &Ink<'_>, findings: &mut Findings) {
    for block in &sheet.face.blocks {
        fonts(sheet, block, ink, findings);
    }
    for text in &ink.texts {
        sizes(sheet, text, findings);
        glyphs(sheet, text, findings);
    }
}

fn sizes(sheet: Sheet<'_>, text: &InkedText<'_>, findings: &mut Findings) {
    let scale = f64::from(text.text.abs_transform().get_scale().1);
    let spans = text.text.chunks().iter().flat_map(|chunk| chunk.spans());
    let smallest = spans.map(|span| f64::from(span.font_size().get()) * scale).fold(f64::INFINITY, f64::min);
    let size = Length::from_mm(smallest);
    if size.pt() + 0.01 < sheet.smallest_type.pt() {
        let said = format!("“{}” is set in {:.1} pt", text.words(), size.pt());
        let expected = format!("at least {:.1} pt", sheet.smallest_type.pt());
        findings.push(sheet.finding("type-too-small", said).field(text.block).expected(expected));
    }
}

/// A text whose font is not there is left out of the drawing without a word.
fn fonts(sheet: Sheet<'_>, block: &Block, ink: &Ink<'_>, findings: &mut Findings) {
    let drawn = ink.texts.iter().filter(|text| text.block == block.name).count();
    if drawn == block.source.matches("<text").count() {
        return;
    }
    let whole = format!("<svg xmlns=\"http://www.w3.org/2000/svg\">{}</svg>", block.source);
    let Ok(document) = Document::parse(&whole) else { return };
    let texts = document.descendants().filter(|node| node.has_tag_name("text"));
    let read: Vec<String> = texts.map(|node| words(node)).filter(|words| !words.trim().is_empty()).collect();
    if read.len() > drawn {
        let all = ink
            .texts
            .iter()
            .filter(|text| text.block == block.name)
            .map(InkedText::words)
            .collect::<Vec<_>>();
        let lost = read.into_iter().find(|words| !all.contains(words)).unwrap_or_default();
        let said = format!("“{lost}” asks for a font that is not there");
        let help = "use a built-in font, or one of the catalogue's fonts folder";
        findings.push(sheet.finding("font-missing", said).field(&block.name).help(help));
    }
}

fn words(node: Node<'_, '_>) -> String {
    node.descendants().filter(Node::is_text).filter_map(|node| node.text()).collect()
}

/// A font that lacks a character draws its glyph 0, an empty box.
fn glyphs(sheet: Sheet<'_>, text: &InkedText<'_>, findings: &mut Findings) {
    let mut glyphs = text.text.layouted().iter().flat_map(|span| &span.positioned_glyphs);
    let Some(missing) = glyphs.find(|glyph| glyph.id.0 == 0) else { return };
    let character = missing.text.chars().next().unwrap_or_default();
    let said = format!(
        "no font has the character “{character}” (U+{:04X}) of “{}”",
        u32::from(character),
        text.words()
    );
    let help = "put a font that has it into the catalogue's fonts folder, or write the text without it";
    findings.push(sheet.finding("glyph-missing", said).field(text.block).help(help));
}

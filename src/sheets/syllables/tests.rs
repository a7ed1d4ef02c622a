//! Which glyphs make a syllable, in fonts of two scripts.

use super::*;
use crate::source::{FilePath, MemoryWorld, Place, World};
use crate::typeset::FontSource;

fn read(text: &str, family: &str) -> Vec<String> {
    let bytes = include_bytes!("../../../tests/cases/scripts/in/fonts/Lohit-Devanagari.ttf").as_slice();
    let place = Place::whole(FilePath::catalogue("fonts/Lohit-Devanagari.ttf"));
    let font = FontSource { bytes: bytes.into(), place };
    let (fonts, _) = Fonts::new(&MemoryWorld::new().fonts(), &[font]);
    let svg = format!(
        "<svg xmlns='http://www.w3.org/2000/svg'><text y='9' font-size='9' font-family='{family}'>{text}</text></svg>"
    );
    let tree = usvg::Tree::from_str(&svg, &fonts.options()).expect("a sound drawing");
    let mut texts = Vec::new();
    gather(tree.root(), &mut texts).expect("plain texts");
    let (ranges, text) = syllables(&texts[0].layouted()[0].positioned_glyphs);
    ranges.into_iter().map(|range| text[range].to_owned()).collect()
}

#[test]
fn every_glyph_of_a_syllable_has_its_whole_text() {
    assert_eq!(read("तिका", "Lohit Devanagari"), ["ति", "ति", "का", "का"]);
    assert_eq!(read("سلكٌ", "DejaVu Sans").concat().chars().count(), "سلكٌ".chars().count() + 2);
    assert_eq!(read("AB", "DejaVu Sans"), ["A", "B"]);
}

#[test]
fn texts_and_nothing_else_are_taken_out() {
    let source = "<rect/><text x=\"1\">a<tspan>b</tspan></text><path/><text>c</text><g/>";
    assert_eq!(without_texts(source), "<rect/><path/><g/>");
}

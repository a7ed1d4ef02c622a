//! Which glyphs make a syllable, in fonts of two scripts.

use super::*;
#[cfg(feature = "debian-fonts")]
use crate::source::{FilePath, Place};
use crate::source::{MemoryWorld, World};
use crate::typeset::FontSource;

fn read(text: &str, family: &str, own: &[FontSource]) -> Vec<String> {
    let (fonts, _) = Fonts::new(&MemoryWorld::new().fonts(), own);
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
    assert_eq!(read("سلكٌ", "DejaVu Sans", &[]).concat().chars().count(), "سلكٌ".chars().count() + 2);
    assert_eq!(read("AB", "DejaVu Sans", &[]), ["A", "B"]);
}

/// Why this module is there: the library that draws a tree gives each glyph the text that is hung on it here, so that a
/// search of the PDF would find “त”, “ि” and “का” torn apart. Where this fails because the library has become better,
/// the module can go; `tests/scripts` reads the words out of the PDF.
#[test]
fn the_library_hangs_the_text_of_a_cluster_on_one_of_its_glyphs() {
    let (fonts, _) = Fonts::new(&MemoryWorld::new().fonts(), &[]);
    let svg = "<svg xmlns='http://www.w3.org/2000/svg'><text y='9' font-size='9' font-family='DejaVu Sans'>سلكٌ</text></svg>";
    let tree = usvg::Tree::from_str(svg, &fonts.options()).expect("a sound drawing");
    let mut texts = Vec::new();
    gather(tree.root(), &mut texts).expect("plain texts");
    let glyphs = &texts[0].layouted()[0].positioned_glyphs;
    assert!(glyphs.iter().any(|glyph| glyph.text.is_empty()), "a glyph without a text of its own");
    assert!(glyphs.iter().any(|glyph| glyph.text.chars().count() > 1), "and one with that of two");
}

#[cfg(feature = "debian-fonts")]
#[test]
fn every_glyph_of_a_syllable_in_devanagari_has_its_whole_text() {
    let file = "/usr/share/fonts/truetype/lohit-devanagari/Lohit-Devanagari.ttf";
    let bytes = std::fs::read(file)
        .unwrap_or_else(|_| panic!("{file} is not there: install the Debian package fonts-lohit-deva"));
    let place = Place::whole(FilePath::catalogue("fonts/Lohit-Devanagari.ttf"));
    let font = FontSource { bytes: bytes.into(), place };
    assert_eq!(read("तिका", "Lohit Devanagari", &[font]), ["ति", "ति", "का", "का"]);
}

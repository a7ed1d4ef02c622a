//! What `tests` holds of the built-in fonts, in a script that they lack and with a font of a Debian package.

use super::tests::{glyphs_of, ink_of, lines_of};
use super::*;
use crate::source::{FilePath, MemoryWorld, Place, World};

const FONT: &str = "/usr/share/fonts/truetype/lohit-devanagari/Lohit-Devanagari.ttf";

const TEXTS: [&str; 3] = ["अंतिम पकड़ 95", "दूसरा व्यक्ति निशान KA पढ़े।", "र्कीं कार्ड"];

/// The built-in fonts and one of the catalogue.
fn fonts() -> Fonts {
    let bytes = std::fs::read(FONT)
        .unwrap_or_else(|_| panic!("{FONT} is not there: install the Debian package fonts-lohit-deva"));
    let place = Place::whole(FilePath::catalogue("fonts/Lohit-Devanagari.ttf"));
    Fonts::new(&MemoryWorld::new().fonts(), &[FontSource { bytes: bytes.into(), place }]).0
}

#[test]
fn ink_is_where_it_was_measured() {
    ink_of(&fonts(), &TEXTS);
}

#[test]
fn each_glyph_is_drawn_where_it_was_measured() {
    glyphs_of(&fonts(), &TEXTS);
}

#[test]
fn ink_that_sticks_out_is_kept_in_the_width() {
    lines_of(&fonts(), "तार काटें और साफ़ करें तार काटें");
}

#[test]
fn no_character_is_missing() {
    assert!(fonts().missing("अंतिम पकड़").is_empty());
}

#[test]
fn a_narrow_cut_takes_what_it_lacks_from_another_font() {
    let fonts = fonts();
    let style = Style::points(FontStyle::CondensedBold, 10.0);
    let runs = fonts.line("KA अंतिम, 95 mm", style).runs;
    let shown: Vec<(&str, &str)> = runs.iter().map(|run| (&*run.family, run.text.as_str())).collect();
    let (narrow, own) = ("DejaVu Sans Condensed", "Lohit Devanagari");
    assert_eq!(shown, [(narrow, "KA "), (own, "अंतिम, "), (narrow, "95 mm")]);
}

//! Measured widths against the library that draws, and fonts that lack a character.

use super::*;
use crate::source::{FilePath, MemoryWorld, Place, World};
use crate::units::Length;

fn fonts() -> Fonts {
    Fonts::new(&MemoryWorld::new().fonts(), &[]).0
}

fn drawn_width(fonts: &Fonts, run: &Run, size: f64) -> f32 {
    let svg = format!(
        "<svg xmlns='http://www.w3.org/2000/svg' viewBox='0 0 500 100'><text y='50' font-family='{}' \
         font-weight='{}' font-size='{size}'>{}</text></svg>",
        run.family, run.weight, run.text
    );
    let tree = usvg::Tree::from_str(&svg, &fonts.options()).expect("a sound drawing");
    let usvg::Node::Text(text) = &tree.root().children()[0] else { panic!("a text") };
    text.bounding_box().width()
}

#[test]
fn widths_are_those_of_the_drawing_library() {
    let fonts = fonts();
    for cut in [Cut::Regular, Cut::Bold, Cut::Condensed, Cut::CondensedBold] {
        for text in ["B14.0", "Seated 3.0…6.0 mm", "AVAW Tofu", "19 × 2.80 mm", "Ωµ²°"] {
            let measured = fonts.width(text, Style { cut, size: Length::from_mm(10.0) }).mm();
            let drawn: f32 = fonts.runs(text, cut).iter().map(|run| drawn_width(&fonts, run, 10.0)).sum();
            assert!((measured - f64::from(drawn)).abs() < 0.02, "{cut:?} {text}: {measured} and {drawn}");
        }
    }
}

#[test]
fn each_cut_is_a_font_of_its_own() {
    let fonts = fonts();
    let width = |cut| fonts.width("Gripping cone", Style::points(cut, 10.0)).mm();
    assert!(width(Cut::Condensed) < width(Cut::CondensedBold));
    assert!(width(Cut::CondensedBold) < width(Cut::Bold));
    assert!(width(Cut::Condensed) < width(Cut::Regular) * 0.95);
}

#[test]
fn a_character_that_no_font_has_is_named() {
    let place = Place::whole(FilePath::catalogue("fittings/a.yaml"));
    let finding = fonts().missing_glyph("Cone 錐", &place).expect("a finding");
    assert_eq!(finding.code, "glyph-missing");
    assert!(finding.message.contains("U+9310") && finding.message.contains("Cone 錐"), "{}", finding.message);
    assert!(fonts().missing_glyph("Cone Ω\u{AD}", &place).is_none());
}

#[test]
fn a_narrow_cut_takes_what_it_lacks_from_another_font() {
    let fonts = fonts();
    let lacking = ('\u{2190}'..'\u{2C00}').find(|&c| {
        fonts.missing(&c.to_string()).is_none()
            && fonts.runs(&c.to_string(), Cut::Condensed)[0].family.len() < 15
    });
    if let Some(c) = lacking {
        let runs = fonts.runs(&format!("go {c} on"), Cut::Condensed);
        assert_eq!(runs.iter().map(|run| run.text.as_str()).collect::<String>(), format!("go {c} on"));
        assert!(runs.len() > 1);
    }
}

#[test]
fn a_file_that_is_no_font_is_found() {
    let place = Place::whole(FilePath::catalogue("fonts/broken.ttf"));
    let broken = FontSource { bytes: b"no font".as_slice().into(), place };
    let (_, findings) = Fonts::new(&MemoryWorld::new().fonts(), &[broken]);
    assert_eq!(findings.sorted()[0].code, "font-unreadable");
}

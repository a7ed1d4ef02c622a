//! Measured widths against the library that draws, and fonts that lack a character.

use super::*;
use crate::source::{FilePath, MemoryWorld, Place, World};
use crate::units::Length;

fn fonts() -> Fonts {
    Fonts::new(&MemoryWorld::new().fonts(), &[]).0
}

const SIZE: f64 = 40.0;
/// Where the line begins, so that ink may stick out on every side.
const ORIGIN: (f64, f64) = (60.0, 100.0);

/// A line as cards draw it.
fn drawing(fonts: &Fonts, line: &Line) -> usvg::Tree {
    let chunk = |run: &Run| {
        let shifts: Vec<String> = run.shifts.iter().map(|shift| format!("{}", shift.mm())).collect();
        format!(
            "<tspan x='{}' y='{}' dx='{}' font-family='{}' font-weight='{}'>{}</tspan>",
            ORIGIN.0 + run.left.mm(),
            ORIGIN.1,
            if shifts.is_empty() { "0".to_owned() } else { shifts.join(" ") },
            run.family,
            run.weight,
            run.text
        )
    };
    let chunks: String = line.runs.iter().map(chunk).collect();
    let svg = format!(
        "<svg xmlns='http://www.w3.org/2000/svg' width='1200' height='200'>\
         <text font-size='{SIZE}' xml:space='preserve'>{chunks}</text></svg>"
    );
    usvg::Tree::from_str(&svg, &fonts.options()).expect("a sound drawing")
}

/// Left, top, right and bottom of the dark pixels.
fn dark(tree: &usvg::Tree) -> [f64; 4] {
    let mut pixmap = resvg::tiny_skia::Pixmap::new(1200, 200).expect("pixels");
    resvg::render(tree, usvg::Transform::identity(), &mut pixmap.as_mut());
    let inked = pixmap.pixels().iter().enumerate().filter(|(_, pixel)| pixel.alpha() > 8);
    let places = inked.map(|(index, _)| ((index % 1200) as f64, (index / 1200) as f64));
    places.fold([f64::MAX, f64::MAX, 0.0, 0.0], |box_, (x, y)| {
        [box_[0].min(x), box_[1].min(y), box_[2].max(x + 1.0), box_[3].max(y + 1.0)]
    })
}

const TEXTS: [&str; 11] = [
    "B14.0",
    "Seated 3.0…6.0 mm",
    "AVAW Tofu",
    "Jj",
    "Überstand",
    "Ế Ǘ Ạ",
    "Ωµ²°",
    "نهاية السلك 70",
    "يقرأ شخص ثان العلامة TE.",
    "سلك 19 × 2.80 mm",
    "שלום F-2",
];

#[test]
fn ink_is_where_it_was_measured() {
    ink_of(&fonts(), &TEXTS);
}

/// The box that is reckoned from the fonts' glyphs by ttf-parser, against pixels drawn by resvg.
pub(super) fn ink_of(fonts: &Fonts, texts: &[&str]) {
    for font_style in [FontStyle::Regular, FontStyle::CondensedBold] {
        for text in texts {
            let line = fonts.line(text, Style { font_style, size: Length::from_mm(SIZE) });
            let found = dark(&drawing(fonts, &line));
            let (ink, right) = (line.ink, ORIGIN.0 + line.width.mm());
            let above_and_below = [ORIGIN.1 - ink.above.mm(), ORIGIN.1 + ink.below.mm()];
            assert!((found[1] - above_and_below[0]).abs() < 1.2, "{font_style:?} {text}: {found:?} {line:?}");
            assert!((found[3] - above_and_below[1]).abs() < 1.2, "{font_style:?} {text}: {found:?} {line:?}");
            assert!(found[0] > ORIGIN.0 - ink.before.mm() - 1.2, "{font_style:?} {text}: {found:?} {line:?}");
            assert!(found[2] < right + ink.after.mm() + 1.2, "{font_style:?} {text}: {found:?} {line:?}");
            assert!(
                found[0] < ORIGIN.0 + SIZE * 0.2 && found[2] > right - SIZE * 0.2,
                "{font_style:?} {text}"
            );
        }
    }
}

#[test]
fn each_glyph_is_drawn_where_it_was_measured() {
    glyphs_of(&fonts(), &TEXTS);
}

/// Advances measured run by run, against those of the glyphs that usvg lays out.
pub(super) fn glyphs_of(fonts: &Fonts, texts: &[&str]) {
    for text in texts {
        let line = fonts.line(text, Style { font_style: FontStyle::Regular, size: Length::from_mm(SIZE) });
        let tree = drawing(fonts, &line);
        let usvg::Node::Text(drawn) = &tree.root().children()[0] else { panic!("a text") };
        let glyphs: Vec<_> = drawn.layouted().iter().flat_map(|span| &span.positioned_glyphs).collect();
        let mut expected = Vec::new();
        for run in &line.runs {
            expected.extend(origins(fonts, run).into_iter().map(|x| ORIGIN.0 + run.left.mm() + x));
        }
        assert_eq!(glyphs.len(), expected.len(), "{text}");
        for (glyph, expected) in glyphs.iter().zip(expected) {
            let x = f64::from(glyph.transform().tx);
            assert!((x - expected).abs() < 0.02, "{text}: {} at {x}, not {expected}", glyph.text);
        }
    }
}

/// Where the shaper puts each glyph of a run.
fn origins(fonts: &Fonts, run: &Run) -> Vec<f64> {
    let face = fonts.faces.iter().find(|face| face.family == run.family && face.weight == run.weight);
    let origins = |data: &[u8], index| {
        let face = rustybuzz::Face::from_slice(data, index).expect("a font");
        let mut buffer = rustybuzz::UnicodeBuffer::new();
        buffer.push_str(&run.text);
        buffer.guess_segment_properties();
        let (glyphs, mut pen) = (rustybuzz::shape(&face, &[], buffer), 0);
        let scale = SIZE / f64::from(face.units_per_em());
        let mut at = Vec::new();
        for position in glyphs.glyph_positions() {
            at.push(f64::from(pen + position.x_offset) * scale);
            pen += position.x_advance;
        }
        at
    };
    fonts.database.with_face_data(face.expect("a font").id, origins).expect("a font")
}

#[test]
fn each_cut_is_a_font_of_its_own() {
    let fonts = fonts();
    let width = |font_style| fonts.width("Gripping cone", Style::points(font_style, 10.0)).mm();
    assert!(width(FontStyle::Condensed) < width(FontStyle::CondensedBold));
    assert!(width(FontStyle::CondensedBold) < width(FontStyle::Bold));
    assert!(width(FontStyle::Condensed) < width(FontStyle::Regular) * 0.95);
}

#[test]
fn characters_that_no_font_has_are_named_once() {
    assert_eq!(fonts().missing("Cone 錐と錐"), ['錐', 'と']);
    assert!(fonts().missing("Cone Ω\u{AD}\u{200D}").is_empty());
    assert!(fonts().missing("अंतिम पकड़").starts_with(&['अ', '\u{902}']));
}

#[test]
fn a_line_from_right_to_left_is_read_in_order_and_lies_the_other_way() {
    let line = fonts().line("سلك (B14.0) حامل.", Style::points(FontStyle::Regular, 10.0));
    let words: Vec<String> = line.runs.iter().map(|run| without_marks(&run.text)).collect();
    assert_eq!(words.concat(), line.text);
    assert!(line.right_to_left && line.runs.windows(2).all(|pair| pair[0].left > pair[1].left), "{line:?}");
    let widths: f64 = line.runs.iter().map(|run| run.width.mm()).sum();
    assert!((widths - line.width.mm()).abs() < 1e-9);
}

#[test]
fn ink_that_sticks_out_is_kept_in_the_width() {
    let (fonts, style) = (fonts(), Style::points(FontStyle::Regular, 12.0));
    assert!(fonts.line("Jj", style).ink.before.mm() > 0.1);
    for text in ["Jäger Jäger Jäger Jäger jf jf jf jf", "اقطع السلك ونظفه 95 mm² جيدا"]
    {
        lines_of(&fonts, text);
    }
}

/// No line of a text is wider than it may be, whatever that is.
pub(super) fn lines_of(fonts: &Fonts, text: &str) {
    for tenths in 200..400 {
        let width = Length::from_mm(f64::from(tenths) / 10.0);
        let lines = fonts.lines(text, Style::points(FontStyle::Regular, 12.0), width);
        assert!(lines.iter().all(|line| line.extent().mm() < width.mm() + 0.006), "{tenths} {lines:?}");
    }
}

#[test]
fn a_file_that_is_no_font_is_found() {
    let place = Place::whole(FilePath::catalogue("fonts/broken.ttf"));
    let broken = FontSource { bytes: b"no font".as_slice().into(), place };
    let (_, findings) = Fonts::new(&MemoryWorld::new().fonts(), &[broken]);
    assert_eq!(findings.sorted()[0].code, "font-unreadable");
}

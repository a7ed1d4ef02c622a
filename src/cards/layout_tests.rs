//! Faults of layouts and of the style, each at its line.

use super::Design;
use super::tests::{made, with_face, world};
use crate::source::FilePath;

/// Where each fault of a layout is told: its line in the file that has it.
#[test]
fn a_layout_s_faults_are_found_at_their_lines() {
    let faults = [
        ("<block id=\"a\">\n<txt>x</txt></block>", "layout-element", 3, "there is no element <txt>"),
        (
            "<block id=\"a\">\n<text clas=\"body\">x</text></block>",
            "layout-element",
            3,
            "<text> has no attribute `clas`",
        ),
        (
            "<block id=\"a\">\n\n<text class=\"huge\">x</text></block>",
            "layout-element",
            4,
            "`class` of <text> is “huge”",
        ),
        ("<block id=\"a\"><rule\nline=\"0.05\"/></block>", "layout-element", 2, "a <rule> is 0.05 mm wide"),
        ("<block id=\"a\" frame=\"tabb\"/>", "layout-element", 2, "`frame` of <block> is “tabb”"),
        ("<block/>", "layout-element", 2, "a <block> has no `id`"),
        (
            "<block id=\"a\"/>\n<block id=\"a\"/>",
            "layout-element",
            3,
            "two blocks of the face are called “a”",
        ),
        ("\n<text>x</text>", "layout-element", 3, "a <text> stands in no block"),
        ("<block id=\"a\">\nx</block>", "layout-element", 2, "“x” stands outside a <text>"),
        (
            "<block id=\"a\"><text>x\n<text>y</text></text></block>",
            "layout-element",
            2,
            "<text> stands in a <text>",
        ),
        (
            "<block id=\"a\"><drawing of=\"assembly\"/></block>",
            "layout-element",
            2,
            "the drawing “assembly” has no `least` height",
        ),
        (
            "<block id=\"a\">\n<text>x</txt></block>",
            "layout-unsound",
            3,
            "the filled layout is not sound XML",
        ),
        ("\n{{ colour_of_the_sky }}", "layout-value", 3, "colour_of_the_sky"),
        (
            "<block id=\"a\"><row\nbetween=\"-28\"><text>x</text><text>y</text></row></block>",
            "layout-element",
            2,
            "`between` of <row> is “-28”",
        ),
        (
            "<block id=\"a\"><text\nwidth=\"-10\">x</text></block>",
            "layout-element",
            2,
            "`width` of <text> is “-10”",
        ),
        (
            "<block id=\"a\">\n<text ink=\"#eeeeee\">pale</text></block>",
            "text-contrast-low",
            3,
            "“pale” has too little contrast",
        ),
        (
            "<space height=\"12\"/><block id=\"a\">\n<text width=\"90\">a text that goes on and on and on, past the edge of any card of this size</text></block>",
            "text-unsafe",
            3,
            "out of the safe area",
        ),
    ];
    for (face, code, line, said) in faults {
        let (_, findings) = made(&with_face(face));
        let sorted = findings.sorted();
        let first = sorted.first().unwrap_or_else(|| panic!("nothing is found in {face}"));
        assert_eq!((first.code, first.place.line), (code, line), "{face}: {}", first.message);
        assert_eq!(&*first.place.file.path, "cards/fitting-front.xml");
        assert!(first.message.contains(said), "{}", first.message);
        assert!(!first.help.is_empty() || first.expected.is_some(), "{}", first.message);
    }
}

/// A fault in a file that a layout takes in is found there.
#[test]
fn a_fault_of_an_included_file_is_found_in_it() {
    let world = world("Look.").with(FilePath::layouts("cards/title.xml"), "\n<blok id=\"title\"/>");
    let (_, findings) = made(&world);
    let sorted = findings.sorted();
    assert_eq!((&*sorted[0].place.file.path, sorted[0].place.line), ("cards/title.xml", 2));
    assert_eq!(sorted[0].help, "did you mean <block>?");
}

#[test]
fn faults_of_a_style_are_found_at_their_lines() {
    let faults = [
        ("types:\n  step: { size: 9, least: 7.5 }\n", 2, "the class step would be set too small"),
        ("types:\n  huge: { size: 9, least: 9 }\n", 2, "unknown variant `huge`"),
        ("frames:\n  tab: { fill: blue }\n", 2, "“blue” is not a colour"),
        ("air: 3\n", 1, "unknown field `air`"),
    ];
    for (style, line, said) in faults {
        let world = world("Look.").with(FilePath::layouts("cards/style.yaml"), style);
        let (_, findings) = Design::load(&world, &[]).expect("a readable world");
        let sorted = findings.sorted();
        assert_eq!((sorted[0].code, sorted[0].place.line), ("layout-style", line), "{}", sorted[0].message);
        assert!(sorted[0].message.contains(said), "{}", sorted[0].message);
    }
}

/// What a browser runs or follows when the SVG of a card is opened, and what never ends.
#[test]
fn svg_that_is_not_plain_is_found_at_its_line() {
    let nested = format!("{}{}", "<g>".repeat(33), "</g>".repeat(33));
    let many = "<g/>".repeat(5001);
    let lines = [
        ("<script>go()</script>", "<script>"),
        ("<foreignObject/>", "<foreignObject>"),
        ("<style>@import 'x.css';</style>", "<style>"),
        ("<g id=\"b\"/><use href=\"#b\"/>", "<use>"),
        ("<animate attributeName=\"x\"/>", "<animate>"),
        ("<pattern id=\"p\"/>", "<pattern>"),
        ("<svg/>", "<svg>"),
        ("<path d=\"M0 0\" onload=\"go()\"/>", "`onload` of <path>"),
        ("<path d=\"M0 0\" ONCLICK=\"go()\"/>", "`ONCLICK` of <path>"),
        ("<linearGradient id=\"a\" href=\"https://example.org/a.svg#a\"/>", "`href` of <linearGradient>"),
        ("<rect width=\"9\" height=\"9\" fill=\"url( 'https://example.org/#a')\"/>", "`fill` of <rect>"),
        ("<rect width=\"9\" height=\"9\" style=\"fill:u\\72l(//example.org)\"/>", "`style` of <rect>"),
        ("<mask id=\"m\"><rect width=\"9\" height=\"9\" mask=\"url(#n)\"/></mask>", "`mask` of <rect>"),
        (&*nested, "stands too deep"),
    ];
    for (source, said) in lines {
        let face = format!("<block id=\"a\"><svg width=\"9\" height=\"9\">\n\n{source}</svg></block>");
        let (_, findings) = made(&with_face(&face));
        let found = findings.sorted().into_iter().find(|finding| finding.code == "svg-not-plain");
        let found = found.unwrap_or_else(|| panic!("nothing is found in {source}"));
        assert!(found.message.contains(said) && found.place.line == 4, "{source}: {found:?}");
    }
    let face = format!("<block id=\"a\">\n<svg width=\"9\" height=\"9\">{many}</svg></block>");
    let (_, findings) = made(&with_face(&face));
    let sorted = findings.sorted();
    assert_eq!((sorted[0].code, sorted[0].place.line), ("svg-not-plain", 3));
}

#[test]
fn svg_that_is_plain_is_taken() {
    let source = "<defs><linearGradient id=\"b\"><stop offset=\"0\" stop-color=\"#000000\"/></linearGradient>\
        <clipPath id=\"c\"><rect width=\"9\" height=\"9\"/></clipPath></defs>\
        <g clip-path=\"url(#c)\"><rect width=\"5\" height=\"5\" fill=\"url(#b)\" style=\"stroke:none\"/></g>";
    let face =
        format!("<space height=\"14\"/><block id=\"a\"><svg width=\"9\" height=\"9\">{source}</svg></block>");
    let (_, findings) = made(&with_face(&face));
    let found = findings.sorted().into_iter().find(|finding| finding.code == "svg-not-plain");
    assert_eq!(found, None);
}

/// Sizes and counts that no card has.
#[test]
fn what_no_card_has_room_for_is_refused() {
    let nested = format!("{}{}", "<stack>".repeat(40), "</stack>".repeat(40));
    let many = "<space/>".repeat(61_000);
    let faces = [
        ("<block id=\"a\" width=\"1e9\"/>", "layout-element"),
        ("<block id=\"a\" width=\"inf\"/>", "layout-element"),
        ("<block id=\"a\" width=\"nan\"/>", "layout-element"),
        ("<block id=\"a\" above=\"-1e9\"/>", "layout-element"),
        ("<block id=\"a\"><drawing of=\"assembly\" least=\"1e9%\"/></block>", "layout-element"),
        ("<block id=\"a\"><svg width=\"1e9\" height=\"9\"/></block>", "layout-element"),
        ("<swatch id=\"a\" notches=\"4000000000\" notch=\"chip\"/>", "layout-element"),
        ("<table columns=\"1e9fr\"/>", "layout-element"),
        ("<table columns=\"inf\"/>", "layout-element"),
        (&*nested, "layout-element"),
        (&*many, "layout-unsound"),
        (
            "<block id=\"a\"><text>{% for a in range(end=9000) %}abc {% endfor %}</text></block>",
            "layout-element",
        ),
    ];
    for (face, code) in faces {
        let (_, findings) = made(&with_face(face));
        let sorted = findings.sorted();
        assert_eq!(sorted.first().map(|finding| finding.code), Some(code), "{}", &face[..face.len().min(80)]);
    }
}

/// The lines of the first text of a front of the user's own, with the size of each in points.
fn lines(text: &str) -> Vec<(String, f64)> {
    let face = format!("<space height=\"14\"/><block id=\"a\"><row>{text}</row></block>");
    let (cards, _) = made(&with_face(&face));
    let items = cards[0].front.blocks.iter().flat_map(|block| &block.items);
    let line = |item: &super::Item| match &item.mark {
        super::ItemMark::Line { words, size, .. } => Some((words.clone(), size.pt())),
        _ => None,
    };
    items.filter_map(line).collect()
}

/// A check has 11.5 pt, shrinks to 10 pt and in one line to 8.5 pt (style.yaml, `TypeClass`).
#[test]
fn a_text_that_shrinks_stays_in_one_line() {
    let check = |width: f64, shrink: &str| {
        lines(&format!(
            "<text class=\"check\" width=\"{width}\" shrink=\"{shrink}\">Tensioned: stand-out</text>"
        ))
    };
    let full = |size: f64| (size - 11.5).abs() < 0.05;
    let wide = check(60.0, "yes");
    assert!(wide.len() == 1 && full(wide[0].1), "{wide:?}");
    let narrow = check(32.0, "yes");
    assert_eq!(narrow.len(), 1, "{narrow:?}");
    assert!((8.45..11.4).contains(&narrow[0].1), "{narrow:?}");
    let broken = check(32.0, "no");
    assert!(broken.len() == 2 && full(broken[0].1), "{broken:?}");
}

/// Figures that hide what a face should show, or that no face can be drawn with, are found at their lines in the style.
#[test]
fn figures_of_the_style_that_hide_something_are_found() {
    let faults = [
        ("frames:\n  plate: { fill: \"#ffffff\", stroke: \"#111111\", line: 7 }", 2, "the line of plate"),
        ("frames:\n  plate: { stroke: \"#111111\", line: 0.01 }", 2, "the line of plate"),
        ("notches:\n  band: { half: 0, depth: 2, apart: 1 }", 2, "the half of band"),
        ("notches:\n  band: { half: 1, depth: 0.05, apart: 1 }", 2, "the depth of band"),
        ("types:\n  step: { size: .nan, least: 9 }", 2, "the size of step"),
        ("types:\n  step: { size: 9, least: 10 }", 2, "the least size of step"),
        ("leading: { roomy: 0.5, tight: 0.3 }", 1, "the tight of leading"),
        ("air_mm: -3", 1, "the length of air_mm"),
        ("sizes:\n  a6:\n    types:\n      step: { size: 15, least: 10 }", 2, "no face is of the size “a6”"),
        ("sizes:\n  A6:\n    air_mm: 900", 3, "the length of air_mm"),
    ];
    for (style, line, says) in faults {
        let world = world("Look.").with(FilePath::layouts("cards/style.yaml"), style);
        let (_, findings) = Design::load(&world, &[]).expect("layouts");
        let found = findings.sorted().into_iter().find(|finding| finding.message.contains(says));
        let found = found.unwrap_or_else(|| panic!("{style}: {says} is not found"));
        assert_eq!((found.code, found.place.line), ("layout-style", line), "{style}");
    }
}

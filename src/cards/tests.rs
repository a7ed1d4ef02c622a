//! Faces of a small catalogue: what fits, what is too much, and what preflight sees.

use super::*;
use crate::diagnostics::Findings;
use crate::facts::CardFacts;
use crate::layouts::Layouts;
use crate::register::{Register, Standing};
use crate::source::{FilePath, MemoryWorld, World};
use crate::typeset::Fonts;
use crate::{catalogue, facts, mixups};
use std::sync::Arc;

pub(super) const SETTINGS: &str =
    "title: Ends\nowner: Tarn Light Railway\nedition: \"1\"\ncaution: Cards never authorise work.\n";
pub(super) const WIRE: &str = "id: wire-8\nname: Earth wire 8\nduty: earth\nmaterial: copper-hard-drawn\n\
                    construction: { stranded: { wires: 7, wire_diameter_mm: 2.67 } }\n";
pub(super) const PARTS: &str = "number: P-1\nname: Body\nrole: body\nmaterial: steel-galvanised\nstamp: P1\n---\n\
                     number: P-2\nname: Cone 8\nrole: cone\nmaterial: copper-hard-drawn\nstamp: \"C 8.0\"\n\
                     mark: { colour: BU, text: KA, notches: 2 }\n";

fn fitting(step: &str) -> String {
    format!(
        "number: F-1\nname: Dead-end\nfamily: cone-dead-end\nconductor: wire-8\nparts: [P-1, P-2]\nsteps: [\"{step}\"]\n"
    )
}

pub(super) fn world(step: &str) -> MemoryWorld {
    let files = [("conductors/a.yaml", WIRE), ("parts/a.yaml", PARTS), ("fittings/a.yaml", &fitting(step))];
    let world = MemoryWorld::new().with(FilePath::catalogue("catalogue.yaml"), SETTINGS);
    files.into_iter().fold(world, |world, (path, text)| world.with(FilePath::catalogue(path), text))
}

pub(super) fn made(world: &MemoryWorld) -> (Vec<Card>, Findings) {
    with_input(world, make_all)
}

fn with_input<T>(world: &MemoryWorld, work: impl FnOnce(Input<'_>, &[CardFacts]) -> T) -> T {
    let (fonts, _) = Fonts::new(&world.fonts(), &[]);
    let fonts = Arc::new(fonts);
    let loaded = catalogue::load(world).expect("a readable world");
    assert!(!loaded.findings.has_errors(), "{:?}", loaded.findings.sorted());
    let (layouts, findings) = Layouts::load(world, "cards", &helpers(&fonts)).expect("a readable world");
    assert!(!findings.has_errors(), "{:?}", findings.sorted());
    let mixups = mixups::find(&loaded.catalogue);
    let facts = facts::of_catalogue(&loaded.catalogue, &mixups);
    let (register, catalogue) = (Register::default(), &loaded.catalogue);
    work(Input { catalogue, mixups: &mixups, register: &register, layouts: &layouts, fonts: &fonts }, &facts)
}

pub(super) fn codes(findings: &Findings) -> Vec<&'static str> {
    findings.sorted().iter().map(|finding| finding.code).collect()
}

/// A front of the user's own with this in its only block.
pub(super) fn with_front(body: &str) -> MemoryWorld {
    let layout = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\">\n<g id=\"a\" data-kind=\"text\" data-y=\"0\">\n{body}\n</g></svg>"
    );
    world("Look.").with(FilePath::layouts("cards/a7-portrait-fitting-front.svg"), layout)
}

pub(super) fn text(x: f64, y: f64, size: f64, family: &str, text: &str) -> String {
    format!("<text x=\"{x}\" y=\"{y}\" font-size=\"{size}\" font-family=\"{family}\">{text}</text>")
}

#[test]
fn a_card_is_whole_and_says_what_it_must() {
    let (cards, findings) = made(&world("Read the stamp."));
    assert_eq!(codes(&findings), Vec::<&str>::new());
    let (front, back) = (cards[0].front.svg(), cards[0].back.svg());
    for word in ["F-1", "blue, 2 notches", ">C 8.0<", "Earth wire 8", "draft, not issued"] {
        assert!(front.contains(word), "{word} in {front}");
    }
    for word in ["Read the stamp.", "Cards never authorise work."] {
        assert!(back.contains(word), "{word} in {back}");
    }
    for face in [&cards[0].front, &cards[0].back] {
        assert_eq!(face.lost_to_clip(300.0), Ok(0));
    }
}

/// Number and check code are what a printed copy is looked up by.
#[test]
fn an_issued_card_says_issue_edition_and_check_code_unbroken_in_every_size() {
    let standing =
        Standing::Issued { issue: 112, edition: "2026-12".to_owned(), check_code: "7K3M9Q".to_owned() };
    for size in ["A7", "A6", "ID-1"] {
        for lies in ["portrait", "landscape"] {
            let card = format!("card: {{ size: {size}, orientation: {lies} }}\n");
            let settings = format!("{SETTINGS}{card}");
            let world = world("Look.").with(FilePath::catalogue("catalogue.yaml"), settings);
            let (made, findings) =
                with_input(&world, |input, facts| super::make::make_standing(input, &facts[0], &standing));
            assert_eq!(codes(&findings), Vec::<&str>::new(), "{card}");
            let front = made.expect("a card").front.svg();
            for text in [">F-1<", ">check 7K3M9Q<", ">issue 112 · edition 2026-12<"] {
                assert!(front.contains(text), "{text} on {card}{front}");
            }
            assert!(!front.contains("draft"), "{card}");
        }
    }
}

#[test]
fn the_gripping_parts_stamp_is_the_largest_text() {
    let (cards, _) = made(&world("Read the stamp."));
    let svg = cards[0].front.svg();
    let size = |text: &str| {
        let start = svg.find(text).and_then(|end| svg[..end].rfind("<text")).expect("the text");
        let size = svg[start..].split("font-size=\"").nth(1).and_then(|rest| rest.split('"').next());
        size.and_then(|size| size.parse::<f64>().ok()).expect("a size")
    };
    let sizes = svg.split("font-size=\"").skip(1).filter_map(|rest| rest.split('"').next()?.parse().ok());
    assert!(size(">C 8.0<") >= 6.35, "at least 18 pt");
    assert!((size(">C 8.0<") - sizes.fold(0.0, f64::max)).abs() < 1e-9);
}

#[test]
fn what_does_not_fit_stops_with_card_field_and_excess() {
    let (cards, findings) =
        made(&world(&["A step that goes on for too long. ".repeat(5).as_str(); 7].join("\", \"")));
    assert!(cards.is_empty());
    let sorted = findings.sorted();
    assert_eq!((sorted[0].code, sorted[0].field.as_deref()), ("card-too-full", Some("steps")));
    assert!(sorted[0].message.contains("the back of card F-1") && sorted[0].message.contains(" mm too long"));
    assert_eq!(&*sorted[0].place.file.path, "fittings/a.yaml");
}

#[test]
fn a_word_that_is_longer_than_its_line_stops() {
    let (_, findings) = made(&world(&"Seilspannvorrichtung".repeat(6)));
    let message = &findings.sorted()[0].message;
    assert!(message.contains("mm too long for its line"), "{message}");
}

#[test]
fn a_users_layout_that_asks_for_what_is_not_there_stops_with_file_and_line() {
    let (_, findings) = made(&with_front("{{ colour_of_the_sky }}"));
    let finding = findings.sorted()[0].clone();
    assert_eq!((finding.code, finding.place.line), ("layout-value", 3));
    assert_eq!(&*finding.place.file.path, "cards/a7-portrait-fitting-front.svg");
}

/// Tops of the named blocks of a front, as its SVG tells, with the bleed.
fn tops(front: &str, names: &[&str]) -> Vec<f64> {
    let top = |name: &&str| {
        let block = front.split(&format!("<g id=\"{name}\"")).nth(1).expect("the block");
        let shift = block.split("translate(").nth(1).and_then(|rest| rest.split(')').next());
        shift.and_then(|shift| shift.split(' ').nth(1)?.parse().ok()).expect("a shift")
    };
    names.iter().map(top).collect()
}

fn with_layout(attributes: &str, blocks: &str) -> MemoryWorld {
    let layout = format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" data-top=\"10\" data-bottom=\"90\" {attributes}>{blocks}</svg>"
    );
    world("Look.").with(FilePath::layouts("cards/a7-portrait-fitting-front.svg"), layout)
}

fn block(id: &str, column: &str, height: &str) -> String {
    format!(
        "<g id=\"{id}\" data-kind=\"ornament\" data-column=\"{column}\" data-height=\"{height}\"><path d=\"M5 0h5\" stroke=\"#000\"/></g>"
    )
}

#[test]
fn columns_begin_at_one_level_and_end_before_what_takes_the_whole_width() {
    let blocks = [
        ("a", "", "5"),
        ("b", "left", "20"),
        ("c", "right", "8"),
        ("d", "left", "3"),
        ("e", "right", "4"),
        ("f", "", "2"),
        ("g", "right", "1"),
    ];
    let blocks: String = blocks.iter().map(|(id, column, height)| block(id, column, height)).collect();
    let (cards, findings) = made(&with_layout("", &blocks));
    assert_eq!(codes(&findings), Vec::<&str>::new());
    let found = tops(&cards[0].front.svg(), &["a", "b", "c", "d", "e", "f", "g"]);
    let bleed = 2.0;
    assert_eq!(found, [10.0, 15.0, 15.0, 35.0, 23.0, 38.0, 40.0].map(|top| top + bleed));
}

#[test]
fn a_form_that_is_too_full_gives_way_to_the_next() {
    let form = |first: &str| {
        let both = format!(
            "{{% if form == 0 %}}{}{{% else %}}{}{{% endif %}}",
            block("words", "", first),
            block("signs", "", "30")
        );
        let (cards, findings) = made(&with_layout("data-forms=\"2\"", &both));
        (cards.first().map(|card| card.front.svg().contains("id=\"words\"")), codes(&findings))
    };
    assert_eq!(form("79"), (Some(true), vec![]));
    assert_eq!(form("81"), (Some(false), vec![]));
    let (_, findings) = made(&with_layout("data-forms=\"2\"", &block("words", "", "81")));
    assert_eq!(codes(&findings), ["card-too-full"]);
}

#[test]
fn the_first_column_gets_the_width_that_leaves_most_room() {
    let blocks =
        block("a", "left", "{{ 90 - 100 * share }}") + &block("b", "right", "{{ 100 * share - 10 }}");
    let (cards, _) = made(&with_layout(
        "data-least-share=\"0.4\" data-most-share=\"0.7\"",
        &format!("{blocks}{}", block("c", "", "1")),
    ));
    let level = tops(&cards[0].front.svg(), &["c"])[0];
    assert!((level - 52.0).abs() < 1.1, "{level}");
}

#[test]
fn a_script_without_a_font_is_named_by_card_text_and_character() {
    let (_, findings) = made(&world("तार काटें। Cut the wire."));
    let sorted = findings.sorted();
    assert_eq!(codes(&findings), ["glyph-missing"], "one finding a side");
    let message = &sorted[0].message;
    assert!(message.contains("the back of card F-1: no font has the character “त” (U+0924)"), "{message}");
    assert!(message.contains("“तार काटें। Cut the wire.”"), "{message}");
    assert_eq!((&*sorted[0].place.file.path, sorted[0].field.as_deref()), ("fittings/a.yaml", Some("steps")));
    assert_eq!(
        sorted[0].found.as_deref(),
        Some("U+0924, U+093E, U+0930, U+0915, U+091F, U+0947, U+0902, U+0964")
    );
}

#[test]
fn ink_outside_the_bleed_is_counted() {
    let (cards, _) = made(&with_front("<rect x=\"-10\" y=\"50\" width=\"20\" height=\"5\"/>"));
    assert!(cards[0].front.lost_to_clip(72.0).expect("a picture") > 100);
}

#[test]
fn pictures_are_trimmed_to_the_cut_and_rounded_up_sensibly() {
    let (cards, _) = made(&world("Look."));
    let size = |dpi: f64| {
        let png = cards[0].front.png(dpi).expect("a picture");
        let side = |at: usize| u32::from_be_bytes([png[at], png[at + 1], png[at + 2], png[at + 3]]);
        (side(16), side(20))
    };
    assert_eq!(size(25.4), (74, 105));
    assert_eq!(size(150.0), (438, 621));
    assert!(cards[0].front.png(1e9).is_err());
}

#[test]
fn the_same_records_make_the_same_bytes() {
    let bytes = || {
        let (cards, _) = made(&world("Look."));
        (cards[0].front.svg(), cards[0].back.png(96.0).expect("a picture"))
    };
    assert_eq!(bytes(), bytes());
}

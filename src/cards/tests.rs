//! Faces of a small catalogue: what fits, what is too much, and what preflight sees.

use super::*;
use crate::diagnostics::Findings;
use crate::facts::CardFacts;
use crate::layouts::Helper;
use crate::register::{Issued, Register, Standing};
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

pub(super) fn with_input<T>(world: &MemoryWorld, work: impl FnOnce(Input<'_>, &[CardFacts]) -> T) -> T {
    with_helpers(world, &[], work)
}

pub(super) fn with_helpers<T>(
    world: &MemoryWorld,
    helpers: &[Helper],
    work: impl FnOnce(Input<'_>, &[CardFacts]) -> T,
) -> T {
    let (fonts, _) = Fonts::new(&world.fonts(), &[]);
    let loaded = catalogue::load(world).expect("a readable world");
    assert!(!loaded.findings.has_errors(), "{:?}", loaded.findings.sorted());
    let (design, findings) = Design::load(world, helpers).expect("a readable world");
    assert!(!findings.has_errors(), "{:?}", findings.sorted());
    let mixups = mixups::find(&loaded.catalogue);
    let facts = facts::of_catalogue(&loaded.catalogue, &mixups);
    let (register, catalogue) = (Register::default(), &loaded.catalogue);
    work(Input { catalogue, mixups: &mixups, register: &register, design: &design, fonts: &fonts }, &facts)
}

pub(super) fn codes(findings: &Findings) -> Vec<&'static str> {
    findings.sorted().iter().map(|finding| finding.code).collect()
}

/// A front of the user's own.
pub(super) fn with_face(face: &str) -> MemoryWorld {
    world("Look.").with(FilePath::layouts("cards/fitting-front.xml"), format!("<face>\n{face}\n</face>"))
}

/// A front of the user's own with this SVG on the whole card.
pub(super) fn with_front(body: &str) -> MemoryWorld {
    with_face(&format!(
        "<svg id=\"a\" edges=\"top right bottom left\" width=\"74\" height=\"105\">\n{body}\n</svg>"
    ))
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

pub(super) fn issued(issue: u32, edition: &str) -> Issued {
    Issued { issue, edition: edition.to_owned(), check_code: "7K3M9Q".to_owned(), ..Issued::default() }
}

/// Number and check code are what a printed copy is looked up by.
#[test]
fn an_issued_card_says_issue_edition_and_check_code_unbroken_in_every_size() {
    let standing = Standing::Issued(Box::new(issued(112, "2026-12")));
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

/// Before an issue only the widest copy of a card is looked over. What has room with a copy's number must have it without.
#[test]
fn what_holds_a_copys_number_holds_the_card_without_it() {
    let standing = Standing::Issued(Box::new(issued(112, "2026-12")));
    let copy = "copy 100/100 depot-with-a-long-name";
    for lies in ["portrait", "landscape"] {
        let settings = format!("{SETTINGS}card: {{ size: A7, orientation: {lies} }}\n");
        let (mut held, mut full) = (0, 0);
        for words in (2..22).step_by(2) {
            let step = ["Look"].repeat(words).join(" up, ");
            let world = world(&[step.as_str(); 7].join("\", \""));
            let world = world.with(FilePath::catalogue("catalogue.yaml"), settings.as_str());
            let [with, without] = with_input(&world, |input, facts| {
                [copy, ""].map(|copy| super::make::make_copy_standing(input, &facts[0], &standing, copy).1)
            });
            if with.is_empty() {
                held += 1;
                assert_eq!(codes(&without), Vec::<&str>::new(), "{words} words a step, {lies}");
            } else {
                full += 1;
            }
        }
        assert!(held > 1 && full > 1, "{held} hold it and {full} don't, {lies}: both must be tried");
    }
}

/// A bar stands beside each block that says a text which is another than in the issue before, and beside no other.
#[test]
fn bars_stand_beside_what_has_changed() {
    let bars = |changed: &[&str]| {
        let changed = changed.iter().map(|name| (*name).to_owned()).collect();
        let standing = Standing::Issued(Box::new(Issued { changed, ..issued(2, "2026-2") }));
        let (card, findings) = with_input(&world("Look."), |input, facts| {
            super::make::make_standing(input, &facts[0], &standing)
        });
        assert_eq!(codes(&findings), Vec::<&str>::new());
        let card = card.expect("a card");
        let blocks = card.front.blocks.into_iter().chain(card.back.blocks);
        let barred = blocks.filter(|block| block.items.iter().any(|item| item.mark == ItemMark::ChangeBar));
        barred.map(|block| block.name).collect::<Vec<_>>()
    };
    assert_eq!(bars(&[]), Vec::<String>::new());
    assert_eq!(bars(&["step 1"]), ["steps"]);
    assert_eq!(bars(&["gripping part's stamp", "item 2"]), ["stamp", "parts"]);
    assert_eq!(bars(&["caution"]), ["foot"]);
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

/// Tops of the named blocks of a face.
fn tops(face: &Face, names: &[&str]) -> Vec<f64> {
    let top = |name: &&str| {
        let block = face.blocks.iter().find(|block| block.name == *name).expect("the block");
        (block.items[0].bounds.y0 * 1000.0).round() / 1000.0
    };
    names.iter().map(top).collect()
}

/// A block so high, which has nothing on it but a rule at its upper end.
fn block(id: &str, height: &str) -> String {
    format!("<block id=\"{id}\" level=\"top\" height=\"{height}\"><rule line=\"0.2\"/></block>")
}

#[test]
fn columns_begin_at_one_level_and_end_before_what_takes_the_whole_width() {
    let stack = |blocks: &[(&str, &str)]| {
        let blocks: String = blocks.iter().map(|(id, height)| block(id, height)).collect();
        format!("<stack>{blocks}</stack>")
    };
    let columns = format!(
        "<columns>{}{}</columns>",
        stack(&[("b", "20"), ("d", "3")]),
        stack(&[("c", "8"), ("e", "4")])
    );
    let (cards, findings) = made(&with_face(&(block("a", "12") + &columns + &block("f", "2"))));
    assert_eq!(codes(&findings), Vec::<&str>::new());
    let found = tops(&cards[0].front, &["a", "b", "c", "d", "e", "f"]);
    // The first stands beside the punched corner, since the face is lower so.
    assert_eq!(found, [3.0, 15.0, 15.0, 35.0, 23.0, 38.0]);
    assert!(cards[0].front.blocks[0].items[0].bounds.x1 <= 62.0);
}

#[test]
fn a_form_that_is_too_full_gives_way_to_the_next() {
    let form = |first: &str| {
        let forms = format!(
            "<forms><form>{}</form><form>{}</form></forms>",
            block("words", first),
            block("signs", "30")
        );
        let (cards, findings) = made(&with_face(&forms));
        (cards.first().map(|card| card.front.blocks[0].name == "words"), codes(&findings))
    };
    // 105 mm less the safe area above and below.
    assert_eq!(form("98.9"), (Some(true), vec![]));
    assert_eq!(form("99.1"), (Some(false), vec![]));
    let (_, findings) = made(&with_face(&block("words", "99.1")));
    assert_eq!(codes(&findings), ["card-too-full"]);
    let related: Vec<&str> =
        findings.sorted()[0].related.iter().map(|related| &*related.place.file.path).collect();
    assert_eq!(related, ["cards/fitting-front.xml"], "it may be the layout's own");
}

#[test]
fn the_first_column_gets_the_width_that_leaves_most_room() {
    let words = |count: usize| format!("<text>{}</text>", "wire ".repeat(count));
    let columns = |share: &str| {
        let texts = format!(
            "<stack><block id=\"a\">{}</block></stack><stack><block id=\"b\">{}</block></stack>",
            words(45),
            words(20)
        );
        let columns =
            format!("<space height=\"12\"/><columns between=\"3\" share=\"{share}\">{texts}</columns>");
        let (cards, findings) = made(&with_face(&(columns + &block("c", "1"))));
        assert_eq!(codes(&findings), Vec::<&str>::new(), "{share}");
        tops(&cards[0].front, &["c"])[0]
    };
    let (settled, narrow, wide) = (columns("0.3 0.9"), columns("0.4 0.4"), columns("0.8 0.8"));
    assert!(settled + 3.0 < narrow && settled + 3.0 < wide, "{settled}, {narrow}, {wide}");
}

/// What names a card stands beside the hole; all else below it, or beside it where the face is lower so.
#[test]
fn the_punched_corner_stays_clear_on_both_sides() {
    let long = "<text>wire wire wire wire wire wire wire wire wire wire wire wire</text>";
    let front = |attributes: &str| {
        let (cards, findings) = made(&with_face(&format!("<block id=\"a\" {attributes}>{long}</block>")));
        assert_eq!(codes(&findings), Vec::<&str>::new());
        let item = &cards[0].front.blocks[0].items[0];
        (item.bounds.x1 < 62.0, item.bounds.y0 > 12.0)
    };
    assert_eq!(front("kind=\"heading\""), (true, false));
    assert_eq!(front("kind=\"text\""), (true, false));
    assert_eq!(front("kind=\"text\" least-width=\"68\""), (false, true));
    let back = world("Look.").with(
        FilePath::layouts("cards/fitting-back.xml"),
        format!("<face><block id=\"a\" kind=\"heading\">{long}</block></face>"),
    );
    let (cards, _) = made(&back);
    assert!(cards[0].back.blocks[0].items[0].bounds.x0 > 12.0);
}

#[test]
fn the_layout_of_a_face_is_filled_once() {
    let world = with_face("{{ count() }}<block id=\"a\"><text class=\"stamp\">C 8.0</text></block>");
    let filled = Arc::new(std::sync::atomic::AtomicUsize::new(0));
    let counter = filled.clone();
    let count = Helper::new("count", move |_| {
        counter.fetch_add(1, std::sync::atomic::Ordering::Relaxed);
        Ok("".into())
    });
    let (cards, findings) = with_helpers(&world, &[count], make_all);
    assert_eq!((cards.len(), codes(&findings)), (1, vec![]));
    assert_eq!(filled.load(std::sync::atomic::Ordering::Relaxed), 1);
}

/// A style of one's own says what is different, and no more.
#[test]
fn a_style_changes_one_class_on_one_size() {
    let larger = "sizes:\n  A7:\n    types:\n      step: { size: 12, least: 11 }\n";
    let step = |world: &MemoryWorld| {
        let (cards, findings) = made(world);
        assert_eq!(codes(&findings), Vec::<&str>::new());
        let sizes =
            cards[0].back.blocks.iter().flat_map(|block| &block.items).filter_map(|item| match item.mark {
                ItemMark::Line { class: TypeClass::Step, size, .. } => Some(size.pt()),
                _ => None,
            });
        sizes.fold(0.0, f64::max)
    };
    let styled = world("Look.").with(FilePath::layouts("cards/style.yaml"), larger);
    assert!((step(&world("Look.")) - 10.5).abs() < 0.05);
    assert!((step(&styled) - 12.0).abs() < 0.05);
}

#[test]
fn a_script_without_a_font_is_named_by_card_text_and_character() {
    let (_, findings) = made(&world("तार काटें। FontStyle the wire."));
    let sorted = findings.sorted();
    assert_eq!(codes(&findings), ["glyph-missing"], "one finding a side");
    let message = &sorted[0].message;
    assert!(message.contains("the back of card F-1: no font has the character “त” (U+0924)"), "{message}");
    assert!(message.contains("“तार काटें। FontStyle the wire.”"), "{message}");
    assert_eq!(&*sorted[0].place.file.path, "fittings/a.yaml");
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

/// Where the base line of a text lies on a front.
fn base_line(front: &str, words: &str) -> f64 {
    let before = front.split(&format!(">{words}<")).next().expect("a front");
    let element = before.rsplit("<text").next().expect("a text");
    let y = element.split(" y=\"").nth(1).and_then(|rest| rest.split('"').next());
    y.and_then(|y| y.parse().ok()).unwrap_or_else(|| panic!("{words} in {element}"))
}

/// What stands on one base line has it at one height, in whatever size a text that shrinks is set.
#[test]
fn a_text_that_shrinks_stands_on_the_base_line_of_its_row() {
    let texts = |words: &str, width: &str| {
        format!(
            "<text class=\"body\">beside</text><text class=\"stamp\" style=\"bold\" shrink=\"yes\"{width}>{words}</text>"
        )
    };
    for words in ["AB 8", "ABCD 12.5", "ABCDEF 12.5"] {
        for (around, width) in [
            ("<row level=\"base\" between=\"2\">TEXTS</row>", " width=\"30\""),
            ("<row level=\"base\" between=\"2\">TEXTS</row>", " grow=\"yes\""),
            ("<table columns=\"auto 30\" between=\"2\"><tr level=\"base\">TEXTS</tr></table>", ""),
            ("<table columns=\"auto 1fr\" between=\"2\"><tr level=\"base\">TEXTS</tr></table>", ""),
        ] {
            let row = around.replace("TEXTS", &texts(words, width));
            let (cards, _) = made(&with_face(&format!("<block id=\"a\">{row}</block>")));
            let front = cards[0].front.svg();
            let (one, other) = (base_line(&front, "beside"), base_line(&front, words));
            assert!((one - other).abs() < 0.02, "{words} in {around}: {one} and {other}");
        }
    }
}

//! Bodies that several fittings share: a card and a table where a part inside decides, plain words where none does.

use super::made::{Made, html, records};
use crate::faces::made::{in_size, sizes};
use fittingcards::diagnostics::Severity;
use fittingcards::facts::{self, CardFacts, Content};
use fittingcards::publish::{self, AuditOptions};
use fittingcards::source::{FilePath, MemoryWorld};
use fittingcards::{catalogue, mixups};

const CLAMPS: &str = "tests/cases/shared-clamp/in";

fn cards(world: &MemoryWorld) -> Vec<CardFacts> {
    let catalogue = catalogue::load(world).unwrap().catalogue;
    facts::of_catalogue(&catalogue, &mixups::find(&catalogue))
}

fn body_card(world: &MemoryWorld) -> Option<CardFacts> {
    cards(world).into_iter().find(|card| matches!(card.content, Content::Body(_)))
}

fn errors(world: &MemoryWorld) -> Vec<String> {
    let findings = publish::check(world, &AuditOptions::default(), &|_| {}).unwrap();
    let errors = findings.sorted().into_iter().filter(|finding| finding.severity == Severity::Error);
    errors.map(|finding| format!("{}: {}", finding.code, finding.message)).collect()
}

/// By the records of the case: a body, a keeper and bolts, none of which grips.
#[test]
fn a_body_without_parts_that_decide_has_no_card_and_stops_no_size() {
    for row in sizes() {
        let world = in_size(CLAMPS, row);
        assert_eq!(errors(&world), [""; 0], "{row}");
        let numbers: Vec<String> = cards(&world).into_iter().map(|card| card.number).collect();
        assert_eq!(numbers, ["F-1", "F-2"], "{row}");
    }
}

#[test]
fn hundreds_of_fittings_on_such_a_body_stop_nothing() {
    let first = std::fs::read_to_string(crate::fixtures::root().join(CLAMPS).join("fittings/clamps.yaml"));
    let first = first.unwrap();
    let first = first.split("---\n").next().unwrap();
    let many: Vec<String> =
        (100..400).map(|nth| first.replace("number: F-1", &format!("number: F-{nth}"))).collect();
    let world = records(CLAMPS).with(FilePath::catalogue("fittings/many.yaml"), many.join("---\n"));
    assert_eq!(errors(&world), [""; 0]);
    assert!(body_card(&world).is_none());
}

#[test]
fn the_page_of_such_a_body_says_that_no_part_decides() {
    let pages = Made::of(&records(CLAMPS)).pages;
    let page = |path: &str| pages.iter().find(|page| page.path == path).map(|page| page.text.as_str());
    let body = page("body-P-1.html").expect("a page of the shared body");
    for said in ["which fittings share it", "no part inside decides", "fitting-F-1.html", "fitting-F-2.html"]
    {
        assert!(body.contains(said), "{said}");
    }
    for never in ["<table", "P-1-front.svg", "Every part on every conductor", "what goes into it"] {
        assert!(!body.contains(never), "{never}");
    }
    assert!(page("part-P-1.html").unwrap().contains("Several fittings share it: <a href=\"body-P-1.html\""));
    assert!(page("teaching-P-1.html").is_none());
    // Where bodies are told apart by what is inside, it has no place.
    assert!(!page("look-alikes.html").unwrap().contains("P-1"));
    assert!(!page("index.html").unwrap().contains("body-P-1.html"));
}

/// The demo's collet body takes many cones: its page and its card stay.
#[test]
fn a_body_that_wrong_parts_go_into_keeps_its_table_and_its_card() {
    let body = html().find(|page| page.path == "body-ST-4101.html").unwrap();
    for said in ["what goes into it", "Every part on every conductor", "<table", "ST-4101-front.svg"] {
        assert!(body.text.contains(said), "{said}");
    }
}

/// ST-4080 is superseded: its column says so, and no cell of it reads as an order to build it.
#[test]
fn the_column_of_a_superseded_fitting_says_so_and_orders_nothing() {
    let body = html().find(|page| page.path == "body-ST-4101.html").unwrap();
    let cells: Vec<&str> = body.text.split("<td").filter(|cell| cell.contains("\"ST-4080 on ")).collect();
    assert_eq!(cells.len(), 5);
    for cell in &cells {
        assert!(cell.contains("Superseded by ST-4100: do not use\""), "{cell}");
        assert!(!cell.contains("Right part") && !cell.contains("Proven here too"), "{cell}");
    }
    assert!(cells.iter().any(|cell| cell.contains("<strong>Do not use</strong>")), "{cells:?}");
    assert!(body.text.contains("<strong>Right part</strong>"));
}

/// The same cone in both fittings: the body is shared, and its card says which part goes in.
#[test]
fn one_part_that_all_fittings_take_is_on_the_card() {
    let second = "number: F-2\nname: Second\nfamily: cone-dead-end\nconductor: wire-95\nparts: [P-1, P-2]\n";
    let plain = records("tests/cases/plain/in").with(FilePath::catalogue("fittings/second.yaml"), second);
    let card = body_card(&plain).expect("a card of the shared body");
    let Content::Body(body) = &card.content else { panic!("a body's card") };
    assert_eq!(body.parts.iter().map(|part| part.number.as_str()).collect::<Vec<_>>(), ["P-2"]);
}

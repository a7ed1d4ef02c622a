//! Stated figures keep the digits of their record on every page; computed limits round to the safe side.

use super::made::{Made, PAGES, content};
use fittingcards::booklet::Page;
use fittingcards::source::{FilePath, World};

/// The text of a page, with plain spaces.
fn text(pages: &[Page], path: &str) -> String {
    pages.iter().find(|page| page.path == path).expect("a page").text.replace('\u{a0}', " ")
}

/// Figures with more digits than any that the program computes: rounded, some would lie beyond what is stated.
#[test]
fn what_is_stated_keeps_its_digits() {
    let changes = [
        (
            "parts/collet-body.yaml",
            "bore_mm: 14.3, bore_tolerance_mm: 0.05",
            "bore_mm: 14.325, bore_tolerance_mm: 0.025",
        ),
        ("parts/collet-body.yaml", "holding_load_kN: 66.8", "holding_load_kN: 66.755"),
        ("conductors/contact-wires.yaml", "stop_height_mm: 9.2", "stop_height_mm: 9.225"),
        (
            "conductors/contact-wires.yaml",
            "limit_percent: 20, basis: nominal, plan_height_mm: 10.3",
            "limit_percent: 16.67, basis: nominal, plan_height_mm: 10.3",
        ),
        ("conductors/feeders.yaml", "section_mm2: 147.11", "section_mm2: 147.1149"),
    ];
    let world = changes.iter().fold(content(), |world, (path, from, to)| {
        let file = FilePath::catalogue(path);
        let before = String::from_utf8(world.read(&file).expect("a file").to_vec()).expect("text");
        assert!(before.contains(from), "{path} has no {from}");
        world.with(file, before.replacen(from, to, 1))
    });
    let pages = Made::of(&world).pages;
    for (page, figure) in [
        ("part-ST-4103.html", "14.325 ± 0.025 mm"),
        ("part-ST-4103.html", "66.755 kN"),
        ("wear.html", "<dd>9.225 mm</dd>"),
        ("wear.html", "9.225 mm</th>"),
        ("wear.html", "16.67 %"),
        ("conductor-feeder-150.html", "147.1149 mm²"),
        // What stands on the card is what is stated, not what is computed.
        ("fitting-ST-4150.html", "147.1149 mm²"),
    ] {
        assert!(text(&pages, page).contains(figure), "{page} has no {figure}");
    }
}

/// By hand, for a circle of 12.85 mm with 3.05 mm of it gone: 23.560 mm², 19.633 % of 120 mm². To the nearest tenth that would
/// be 19.6 %.
#[test]
fn no_wire_is_said_to_be_less_worn_than_it_is() {
    let page = text(&PAGES, "wear.html");
    let wire = page.split("id=\"wear-contact-120\"").nth(1).expect("its part of the page");
    let row = wire.split("<tr").find(|row| row.contains(">9.8 mm</th>")).expect("a row");
    assert!(row.contains(">19.7 %<"), "{row}");
}

//! Whatever a large file holds, it is answered: with findings, and without work that grows with the square of what is in
//! it. Where it did grow so, these tests would not end.

use super::{print_findings, printed};
use fittingcards::catalogue::load;
use fittingcards::source::{FilePath, MemoryWorld};
use std::fmt::Write as _;

const SIZE: usize = 100_000;
const SETTINGS: &str =
    "title: Example\nowner: Example railway\nedition: \"1\"\ncaution: Example, not for use.\n";
const FITTING: &str = "number: F-1\nname: F\nfamily: other\nconductor: w\nparts: [P-1]\n";
const PARTS: &str = "number: P-1\nname: Body\nrole: body\nmaterial: brass\n";
const WIRE: &str =
    "id: w\nname: W\nduty: stay\nmaterial: steel-st1a\nconstruction: { solid: { diameter_mm: 8 } }\n";

/// A sound catalogue with these files more.
fn world(files: &[(&str, String)]) -> MemoryWorld {
    let world = [
        ("catalogue.yaml", SETTINGS),
        ("fittings/f.yaml", FITTING),
        ("parts/p.yaml", PARTS),
        ("conductors/w.yaml", WIRE),
    ]
    .into_iter()
    .fold(MemoryWorld::new(), |world, (path, text)| world.with(FilePath::catalogue(path), text));
    files.iter().fold(world, |world, (path, text)| world.with(FilePath::catalogue(path), text))
}

/// What is printed of its records.
fn with(files: &[(&str, String)]) -> String {
    let world = world(files);
    print_findings(&load(&world).unwrap().findings, &world)
}

fn note(text: String) -> String {
    printed(&world(&[("notes/chapters/01-long.md", text)]))
}

fn stream(count: usize, record: impl Fn(usize) -> String) -> String {
    (0..count).map(record).collect::<Vec<_>>().join("---\n")
}

#[test]
fn long_notes_of_every_shape_are_read() {
    let fill = |piece: &str| piece.repeat(SIZE / piece.len());
    let half = |piece: &str| piece.repeat(SIZE / piece.len() / 2);
    let numbered: String = (0..SIZE / 12).fold(String::new(), |mut text, number| {
        let _ = writeln!(text, "[a{number}]: F-1");
        text
    });
    let notes = [
        fill("# Equal\n\n"),
        format!("# T\n\n## a\n\n{}", fill("[x](#a) ")),
        format!("# T\n\n{}\n\n[a]: F-1\n", fill("[x][a] ")),
        format!("# T\n\n{numbered}\n[a1] [a2]"),
        fill("> "),
        fill("- "),
        fill("*a "),
        fill("**a *b "),
        fill("["),
        fill("[a]("),
        fill("!["),
        fill("<a "),
        fill("a <![CDATA["),
        fill("`a``b"),
        fill("a"),
        format!("# T\n\n## {}\n", fill("a b ")),
        format!("{}\n{}\n", half("|a"), half("|-")),
        format!("|a|b|\n|-|-|\n{}", fill("|c|d|\n")),
        fill("ا 1 a "),
    ];
    for text in notes {
        let start: String = text.chars().take(40).collect();
        let out = note(text);
        assert!(!out.contains("error"), "{start}: {}", out.chars().take(400).collect::<String>());
    }
}

#[test]
fn many_wrong_links_are_all_told() {
    let links: String = (0..20_000).map(|number| format!("[x](nothing-{number}) ")).collect();
    let out = note(format!("# T\n\n{links}\n"));
    assert_eq!(out.matches("[note-link-unknown]").count(), 20_000);
}

#[test]
fn many_wrong_names_among_many_records_are_all_told() {
    let parts =
        stream(15_000, |number| format!("number: Q-{number}\nname: B\nrole: other\nmaterial: brass\n"));
    let fittings = stream(5_000, |number| {
        FITTING.replace("F-1", &format!("G-{number}")).replace("P-1", &format!("R-{number}"))
    });
    let out = with(&[("parts/many.yaml", parts), ("fittings/many.yaml", fittings)]);
    assert!(out.matches("[unknown-part]").count() >= 4_999, "{}", out.chars().take(400).collect::<String>());
}

#[test]
fn many_faults_in_one_file_are_all_told() {
    let keys: String = (0..80_000).map(|number| format!("k{number}:\n")).collect();
    let out =
        with(&[("parts/many.yaml", format!("number: P-2\nname: B\nrole: body\nmaterial: brass\n{keys}"))]);
    assert_eq!(out.matches("[unknown-key]").count(), 80_000);
}

#[test]
fn more_records_of_a_kind_than_a_network_has_are_refused() {
    let wires = stream(2_000, |number| WIRE.replace("id: w", &format!("id: v-{number}")));
    let out = with(&[("conductors/x.yaml", wires)]);
    assert!(out.contains("error[too-many-records]"), "{}", out.chars().take(400).collect::<String>());
    assert!(out.contains("at most 300 conductors in one catalogue"), "{out}");
}

#[test]
fn more_parts_than_a_body_can_be_told_from_are_refused() {
    let cones = stream(3_000, |number| {
        format!("number: C-{number}\nname: C\nrole: cone\nmaterial: bronze-soft\ninterface: same\n")
    });
    let out = with(&[("parts/cones.yaml", cones)]);
    assert!(out.contains("error[too-many-alike]"), "{}", out.chars().take(400).collect::<String>());
    let cones =
        stream(200, |number| format!("number: C-{number}\nname: C\nrole: cone\nmaterial: bronze-soft\n"));
    let fittings = stream(2_000, |number| {
        let parts = format!("[P-1, C-{}]", number % 200);
        FITTING.replace("F-1", &format!("G-{number}")).replace("[P-1]", &parts)
    });
    let out = with(&[("parts/cones.yaml", cones), ("fittings/many.yaml", fittings)]);
    assert!(out.contains("too much shares the body P-1"), "{}", out.chars().take(400).collect::<String>());
}

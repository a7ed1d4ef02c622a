//! What a kit tag says of parts that state much, little, or that they must not be used.

use super::TagFacts;
use crate::catalogue;
use crate::source::{FilePath, MemoryWorld};

const WIRE: &str = "id: wire-8\nname: Earth wire 8\nduty: earth\nmaterial: copper-hard-drawn\n\
                    construction: { stranded: { wires: 7, wire_diameter_mm: 2.67 } }\n";
const PARTS: &str = "number: P-1\nname: Half\nrole: body\nmaterial: steel-galvanised\n---\n\
                     number: P-2\nname: Left sleeve\nrole: sleeve\nmaterial: copper-annealed\nstamp: \"C 8\"\n\
                     drawing: D-2/A\nmark: { colour: BU, text: KA, notches: 2 }\n---\n\
                     number: P-3\nname: Right sleeve\nrole: sleeve\nmaterial: copper-annealed\nstamp: \"C 8\"\n\
                     status: on-hold\n";
const FITTING: &str = "number: F-1\nname: Joint\nfamily: sleeve\nconductor: wire-8\n\
                       parts: [{ part: P-1, quantity: 2 }, P-2, P-3]\n";

fn facts() -> TagFacts {
    tags("").remove(0)
}

/// The tags of a catalogue with one fitting, whose record ends with a line.
fn tags(line: &str) -> Vec<TagFacts> {
    let fitting = format!("{FITTING}{line}");
    let settings =
        "title: Joints\nowner: Tarn Light Railway\nedition: \"1\"\ncaution: Tags never authorise work.\n";
    let files = [("conductors/a.yaml", WIRE), ("parts/a.yaml", PARTS), ("fittings/a.yaml", fitting.as_str())];
    let world = MemoryWorld::new().with(FilePath::catalogue("catalogue.yaml"), settings);
    let world =
        files.into_iter().fold(world, |world, (path, text)| world.with(FilePath::catalogue(path), text));
    let loaded = catalogue::load(&world).expect("a readable world");
    assert!(!loaded.findings.has_errors(), "{:?}", loaded.findings.sorted());
    crate::facts::tags(&loaded.catalogue)
}

#[test]
fn a_kit_has_every_part_with_what_its_record_states() {
    let facts = facts();
    let parts = facts.parts.iter().map(|part| {
        (
            part.item,
            part.quantity,
            part.number.as_str(),
            part.drawing.as_str(),
            part.stamp.as_str(),
            part.gripping,
        )
    });
    let expected =
        [(1, 2, "P-1", "", "", false), (2, 1, "P-2", "D-2/A", "C 8", true), (3, 1, "P-3", "", "C 8", true)];
    assert_eq!(parts.collect::<Vec<_>>(), expected);
    assert_eq!(
        (facts.conductors, facts.caution),
        (vec!["Earth wire 8".to_owned()], "Tags never authorise work.".to_owned())
    );
    assert_eq!(facts.mark.map(|mark| mark.text).as_deref(), Some("KA"));
}

#[test]
fn a_stamp_that_two_gripping_parts_share_is_named_once() {
    assert_eq!(facts().gripping_stamps, ["C 8"]);
}

#[test]
fn a_part_that_must_not_be_used_says_so() {
    let facts = facts();
    let held = "On hold: stop until told";
    assert_eq!(facts.parts.iter().map(|part| part.status_words.as_str()).collect::<Vec<_>>(), ["", "", held]);
}

#[test]
fn what_must_not_be_built_gets_no_tag() {
    assert_eq!(tags("status: current\n").len(), 1);
    for line in ["status: on-hold\n", "status: withdrawn\n"] {
        assert_eq!(tags(line), [], "{line}");
    }
}

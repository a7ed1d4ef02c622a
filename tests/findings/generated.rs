//! Catalogues too large or too odd to keep as files.

use super::print_findings;
use crate::fixtures::random_cases;
use fittingcards::catalogue::load;
use fittingcards::source::{FilePath, MemoryWorld};
use proptest::prelude::*;

const SETTINGS: &str =
    "title: Example\nowner: Example railway\nedition: \"1\"\ncaution: Example, not for use.\n";
const PART: &str = "number: P-1\nname: Body\nrole: body\nmaterial: brass\n";

/// What is printed of a sound catalogue with one more file.
fn printed(path: &str, bytes: impl AsRef<[u8]>) -> String {
    let world = MemoryWorld::new()
        .with(FilePath::catalogue("catalogue.yaml"), SETTINGS)
        .with(FilePath::catalogue(path), bytes);
    print_findings(&load(&world).unwrap().findings, &world)
}

#[test]
fn a_file_over_one_mebibyte_is_refused() {
    let large = format!("{PART}# {}\n", "x".repeat(1024 * 1024));
    let expected = "content/parts/large.yaml: error[too-large]: this file is too large\n    \
                    found     1048629 bytes\n    expected  at most 1048576 bytes (1 MiB)\n    \
                    help      split it into several files of the same folder\n1 error\n";
    assert_eq!(printed("parts/large.yaml", &large), expected);
    assert!(printed("notes/P-1.md", &large).contains("notes/P-1.md: error[too-large]"));
}

#[test]
fn line_ends_and_byte_order_marks_of_windows_make_no_difference() {
    let faulty = format!("{PART}stmap: \"40\"\n");
    let expected = printed("parts/part.yaml", &faulty);
    assert!(expected.starts_with("content/parts/part.yaml:5:1: error[unknown-key]"), "{expected}");
    let windows = format!("\u{feff}{}", faulty.replace('\n', "\r\n"));
    assert_eq!(printed("parts/part.yaml", windows), expected);
}

#[test]
fn text_in_utf_16_is_told_apart() {
    let utf16: Vec<u8> =
        "\u{feff}".encode_utf16().chain(PART.encode_utf16()).flat_map(u16::to_le_bytes).collect();
    let out = printed("parts/part.yaml", utf16);
    assert!(out.starts_with("content/parts/part.yaml:1:1: error[not-utf8]"), "{out}");
    assert!(out.contains("saved as UTF-16"), "{out}");
}

#[test]
fn an_alias_in_its_own_value_is_refused() {
    let out = printed("parts/part.yaml", format!("{PART}mark: &m {{ colour: *m }}\n"));
    assert!(out.starts_with("content/parts/part.yaml:5:20: error[alias-bomb]"), "{out}");
}

#[test]
fn aliases_are_good_for_what_they_are_made_for() {
    let cone = "number: P-2\nname: Cone\nrole: cone\nmaterial: brass\nmark: &m { colour: VT }\nstamp: &s B\ndrawing: *s\n";
    assert_eq!(printed("parts/part.yaml", cone), "");
    let out = printed("parts/part.yaml", cone.replace("colour: VT", "colour: XX"));
    assert!(out.starts_with("content/parts/part.yaml:5:20: error[unknown-word]"), "{out}");
}

#[test]
fn columns_are_counted_in_characters() {
    let out = printed("parts/part.yaml", PART.replace("name: Body", "{name: \"Körper µ\", nam: x}"));
    assert!(out.contains("error[not-yaml]"), "{out}");
    let flow = "{ number: P-1, name: \"Körper µ\", role: bdy, material: brass }\n";
    let out = printed("parts/part.yaml", flow);
    assert!(out.starts_with("content/parts/part.yaml:1:40: error[unknown-word]"), "{out}");
}

#[test]
fn nesting_and_repeating_without_end_is_refused() {
    let bombs = [
        "[".repeat(1_000_000),
        "{a: ".repeat(250_000),
        "- ".repeat(500_000),
        "? ".repeat(500_000),
        "a: &a [*a]\n".repeat(80_000),
        format!("a: &a {}\nb: [{}]\n", "x".repeat(500_000), "*a, ".repeat(100_001)),
        "&a ".repeat(300_000),
        "a:\n ".repeat(200_000),
        "\"".repeat(1_000_000),
        "--- \n".repeat(200_000),
        (0..100_000).map(|key| format!("k{key}:\n")).collect(),
    ];
    for bomb in bombs {
        let out = printed("parts/bomb.yaml", &bomb);
        assert!(out.contains("content/parts/bomb.yaml"), "{}", &bomb[..20]);
    }
}

#[test]
fn a_thousand_fittings_load_without_a_finding() {
    let mut world = MemoryWorld::new().with(FilePath::catalogue("catalogue.yaml"), SETTINGS);
    let wire =
        "id: w\nname: W\nduty: stay\nmaterial: steel-st1a\nconstruction: { solid: { diameter_mm: 8 } }\n";
    world = world.with(FilePath::catalogue("conductors/w.yaml"), wire);
    for index in 0..1000 {
        let number = |letter: &str| format!("{letter}-{index}");
        let parts: Vec<String> =
            ["A", "B", "C"].iter().map(|letter| PART.replace("P-1", &number(letter))).collect();
        let fitting = format!(
            "number: {}\nname: End\nfamily: other\nconductor: w\nparts: [{}, {}, {}]\n",
            number("F"),
            number("A"),
            number("B"),
            number("C")
        );
        world = world
            .with(FilePath::catalogue(&format!("parts/{index}.yaml")), parts.join("---\n"))
            .with(FilePath::catalogue(&format!("fittings/{index}.yaml")), fitting);
    }
    let loaded = load(&world).unwrap();
    assert_eq!(print_findings(&loaded.findings, &world), "");
    assert_eq!((loaded.catalogue.fittings.len(), loaded.catalogue.parts.len()), (1000, 3000));
}

proptest! {
    #![proptest_config(random_cases(256))]

    #[test]
    fn whatever_stands_in_a_file_is_answered_with_findings(
        text in r#"([a-z]{1,3}: |- |\[|\]|\{|\}|, |\n|\n  |\t|'|"|&a |\*a|!x |\||>|%|#|~|\? |0|1\.5|--- |\.\.\.|é|:){0,60}"#
    ) {
        let out = printed("parts/part.yaml", text);
        prop_assert!(out.contains("content/parts/part.yaml"));
    }

    #[test]
    fn whatever_bytes_stand_in_a_file_are_answered_with_findings(
        bytes in proptest::collection::vec(any::<u8>(), 0..200)
    ) {
        prop_assert!(printed("parts/part.yaml", bytes).contains("content/parts/part.yaml"));
    }
}

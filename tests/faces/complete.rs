//! What a layout leaves out and a card must show: no card is printed that lacks what decides, whatever it is that a
//! maintainer mistypes. The expectation of each is by the fault, not by what the program lists.

use super::made;
use fittingcards::layouts::Layouts;
use fittingcards::source::FilePath;
use rayon::prelude::*;

/// A file, what is mistyped in it, and what ST-4100 or ST-4080 then lacks. Its torque stands in a step, too.
const MISTYPED: [(&str, &str, &str, &str); 11] = [
    (
        "cards/tightening.xml",
        "{%- if tightening %}",
        "{%- if tightning %}",
        "card ST-4100 does not show what is greased",
    ),
    ("cards/checks.xml", "{%- if checks %}", "{%- if cheks %}", "card ST-4100 does not show what is checked"),
    ("cards/not-these.xml", "{%- if not_these %}", "{%- if not_thees %}", "the wrong parts that go in"),
    ("cards/mark.xml", "{%- if mark %}", "{%- if marc %}", "the mark, the mark's colour in words"),
    (
        "cards/fitting-front.xml",
        "{%- if barred %}",
        "{%- if bared %}",
        "card ST-4080 does not show the lines over both",
    ),
    ("cards/steps.xml", "", "", "the steps"),
    ("cards/if-wrong.xml", "", "", "what a failed check calls for"),
    ("cards/witness.xml", "", "", "the witness"),
    ("cards/before-work.xml", "", "", "what comes before work"),
    ("cards/conductors.xml", "", "", "the conductor, what looks like the conductor"),
    ("cards/section.xml", "", "", "what is rejected"),
];

#[test]
fn a_name_mistyped_in_a_layout_is_no_way_to_lose_what_decides() {
    let wrong: Vec<String> = MISTYPED.par_iter().filter_map(|fault| wrong(*fault)).collect();
    assert!(wrong.is_empty(), "{wrong:#?}");
}

/// What is not found where a file has its fault; an empty search stands for a file that is emptied.
fn wrong((file, sound, mistyped, lacks): (&str, &str, &str, &str)) -> Option<String> {
    let built_in = Layouts::built_in(file).unwrap();
    let text = if sound.is_empty() { String::new() } else { built_in.replacen(sound, mistyped, 1) };
    assert_ne!(text, built_in, "{file}");
    let world = made::in_size("content", "A7,portrait").with(FilePath::layouts(file), text);
    let lacking = made::lacking(&world);
    let is_found = lacking.iter().any(|found| found.contains(lacks));
    (!is_found).then(|| format!("{file}: {lacks} is not in {lacking:#?}"))
}

/// The demo and the catalogues of all cases lack nothing in any size: what is asked is what cards have.
#[test]
fn sound_layouts_lack_nothing_in_any_size() {
    let catalogues = [
        "content",
        "tests/cases/plain/in",
        "tests/cases/long-names/in",
        "tests/cases/statuses/in",
        "tests/cases/ten-parts/in",
    ];
    let all: Vec<(&str, &str)> =
        catalogues.iter().flat_map(|catalogue| made::sizes().map(move |size| (*catalogue, size))).collect();
    let lacking: Vec<(&str, &str, Vec<String>)> = all
        .into_par_iter()
        .map(|(catalogue, size)| (catalogue, size, made::lacking(&made::in_size(catalogue, size))))
        .filter(|(_, _, lacking)| !lacking.is_empty())
        .collect();
    assert!(lacking.is_empty(), "{lacking:#?}");
}

/// Stamp and number as parts of longer texts, such as 14.0 in a diameter, do not count.
#[test]
fn a_stamp_that_only_a_longer_text_has_is_lacking() {
    let file = "parts/collet-body.yaml";
    let text = made::read(&made::folder("content").join(file));
    let world = made::in_size("content", "A7,portrait")
        .with(FilePath::catalogue(file), text.replace("\"BZ2 14.0\"", "\"14.0\""))
        .with(FilePath::layouts("cards/stamp.xml"), "")
        .with(FilePath::layouts("cards/parts.xml"), "");
    let lacking = made::lacking(&world);
    let said = "the front of card ST-4100 does not show the gripping part's stamp";
    assert!(lacking.iter().any(|found| found.contains(said)), "{lacking:#?}");
}

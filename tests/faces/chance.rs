//! Catalogues by chance, the same in every run: a card prints whole, or stops with the card, the field and the excess.

use super::from_records::{self, Records};
use super::made;
use super::printed::lost;
use fittingcards::cards::Card;
use fittingcards::diagnostics::Findings;
use fittingcards::facts::CardFacts;
use fittingcards::source::{FilePath, MemoryWorld};
use rayon::prelude::*;
use std::fmt::Write;

/// As many catalogues as a debug build makes in a few seconds; CHANCES in the environment asks for others.
const CATALOGUES: std::ops::Range<u64> = 270..300;

#[test]
fn a_card_by_chance_prints_whole_or_stops_with_the_card_the_field_and_the_excess() {
    let asked = made::environment("CHANCES").and_then(|text| {
        let (first, last) = text.split_once("..")?;
        Some(first.parse().ok()?..last.parse().ok()?)
    });
    let catalogues: Vec<u64> = asked.unwrap_or(CATALOGUES).collect();
    let faults: Vec<String> = catalogues.into_par_iter().flat_map_iter(faults).collect();
    assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
}

/// What is wrong with the cards of one catalogue.
fn faults(number: u64) -> Vec<String> {
    let sizes: Vec<&str> = made::sizes().collect();
    let size = sizes[usize::try_from(number).unwrap() % sizes.len()];
    let world = catalogue(&mut Chance(number), size);
    let (made, records) = (made::facts_and_cards(&world), Records::of(&world));
    let mut faults = Vec::new();
    for facts in &made.facts {
        match made.cards.iter().find(|card| card.number == facts.number) {
            Some(card) => {
                let small = size.starts_with("ID-1");
                faults.extend(of_card(facts, card, small));
                faults.extend(from_records::lost(&records, card, small));
            }
            None => faults.extend(of_stop(facts, &made.findings)),
        }
    }
    let unsound = made.findings.sorted().into_iter().filter(|finding| finding.code != "card-too-full");
    faults.extend(unsound.map(|finding| format!("{}: {}", finding.code, finding.message)));
    faults.iter().map(|fault| format!("{number}, {size}: {fault}")).collect()
}

fn of_card(facts: &CardFacts, card: &Card, small: bool) -> Vec<String> {
    let mut faults = lost(facts, card, small);
    for face in [&card.front, &card.back] {
        let lost = face.lost_to_clip(200.0);
        if lost != Ok(0) {
            faults.push(format!("ink is lost to the clip on the {}: {lost:?}", face.side.word()));
        }
    }
    faults.into_iter().map(|fault| format!("{}: {fault}", facts.number)).collect()
}

/// A card that is not made has a finding that says what to shorten, and by how much.
fn of_stop(facts: &CardFacts, findings: &Findings) -> Option<String> {
    let sorted = findings.sorted();
    let mut about = sorted.iter().filter(|finding| finding.record.as_deref() == Some(&facts.number));
    let said = about.any(|finding| {
        finding.code == "card-too-full"
            && finding.field.as_deref().is_some_and(|field| !field.is_empty())
            && finding.message.contains(" mm too long")
    });
    (!said).then(|| format!("{}: no card, and no finding that says why", facts.number))
}

/// SplitMix64 (Steele, Lea, Flood 2014).
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// From `least` to `most`.
    fn count(&mut self, least: usize, most: usize) -> usize {
        least + usize::try_from(self.next() % (most - least + 1) as u64).unwrap()
    }

    fn one_in(&mut self, many: u64) -> bool {
        self.next().is_multiple_of(many)
    }

    fn of<'a>(&mut self, choices: &[&'a str]) -> &'a str {
        choices[self.count(0, choices.len() - 1)]
    }

    /// A text of words, as JSON writes it, which YAML reads. Mostly short: long ones fill a card at once.
    fn text(&mut self, most: usize) -> String {
        let most = if self.one_in(12) { self.count(0, most) } else { self.count(1, most.min(36)) };
        let mut text = self.of(&WORDS).to_owned();
        loop {
            let word =
                format!("{}{}", self.of(&[" ", " ", " ", "\u{a0}", " – ", "-", "/", ", "]), self.of(&WORDS));
            if text.chars().count() + word.chars().count() > most {
                return serde_json::to_string(&text).unwrap();
            }
            text.push_str(&word);
        }
    }

    fn list(&mut self, least: usize, most: usize, longest: usize) -> String {
        let count = self.count(least, most);
        let texts: Vec<String> = (0..count).map(|_| self.text(longest)).collect();
        format!("[{}]", texts.join(", "))
    }
}

const WORDS: [&str; 40] = [
    "cone",
    "wedge",
    "taper",
    "grease",
    "thread",
    "clamp",
    "I",
    "x",
    "Kegelendverankerung",
    "Bronzetragseil",
    "Donaudampfschifffahrtsgesellschaft",
    "<b>",
    "&amp;",
    "\"14.0\"",
    "‘ring’",
    "λ≤0,155",
    "Ω",
    "Σ",
    "μm",
    "120\u{a0}mm²",
    "14.0\u{a0}mm",
    "80\u{a0}N·m",
    "M36×2",
    "±0.1",
    "é",
    "Ångström",
    "façade",
    "½",
    "5°",
    "(closed)",
    "e\u{301}te\u{301}",
    "AT/B-14.0.2",
    "fi",
    "ffl",
    "stop!",
    "never.",
    "100\u{a0}%",
    "ЖД",
    "{{ x }}",
    "---",
];

/// A catalogue with one body: settings, conductors, parts and fittings.
fn catalogue(chance: &mut Chance, size: &str) -> MemoryWorld {
    let (size, orientation) = size.split_once(',').unwrap();
    let fittings = if chance.one_in(8) { chance.count(4, 12) } else { chance.count(1, 3) };
    let settings = format!(
        "title: Chance\nowner: Example railway\nedition: \"1\"\ndate: 2026-01-01\ndecimal_mark: \"{}\"\n\
         caution: {}\ncard: {{ size: {size}, orientation: {orientation} }}\n",
        chance.of(&[".", ","]),
        chance.text(80),
    );
    let (mut conductors, mut parts, mut made) = (String::new(), body(chance), String::new());
    for index in 0..fittings {
        conductors += &conductor(chance, index);
        parts += &gripping_part(chance, index);
        made += &fitting(chance, index, fittings);
    }
    for index in 0..SMALL_PARTS {
        parts += &small_part(chance, index);
    }
    let files = [
        ("conductors/a", conductors),
        ("parts/a", parts),
        ("fittings/a", made),
        ("notices/a", NOTICES.to_owned()),
    ];
    let world = MemoryWorld::new().with(FilePath::catalogue("catalogue.yaml"), settings);
    files
        .into_iter()
        .fold(world, |world, (path, text)| world.with(FilePath::catalogue(&format!("{path}.yaml")), text))
}

const SMALL_PARTS: usize = 10;

const NOTICES: &str =
    "number: N-1\ndate: 2026-01-01\ntitle: One\n---\nnumber: N-2\ndate: 2026-01-01\ntitle: Two\n";

const MARKS: [&str; 8] = ["KA", "TE", "\"V1\"", "ЖД", "A-7", "\"A B\"", "WWWW", "Kegelendverankerung"];

const COLOURS: [&str; 12] = ["WH", "BU", "OG", "BK", "VT", "RD", "GY", "TQ", "PK", "BN", "WH", "BU"];

/// A key with a value, one time in `of` left out.
fn key(
    chance: &mut Chance,
    out: &mut String,
    of: u64,
    name: &str,
    value: impl FnOnce(&mut Chance) -> String,
) {
    if !chance.one_in(of) {
        let value = value(chance);
        let _ = writeln!(out, "{name}: {value}");
    }
}

fn status(chance: &mut Chance, out: &mut String) {
    if chance.one_in(6) {
        let _ = writeln!(out, "status: {}", chance.of(&["on-hold", "withdrawn"]));
    }
}

fn body(chance: &mut Chance) -> String {
    let mut out = format!(
        "number: B-0\nname: {}\nrole: body\nmaterial: aluminium-bronze\ninterface: seat\n",
        chance.text(200)
    );
    key(chance, &mut out, 3, "stamp", |chance| chance.text(20));
    status(chance, &mut out);
    out + "geometry: { body: { half_angle_deg: 5, large_diameter_mm: 40, length_mm: 70 } }\n---\n"
}

/// As a specification states it: nobody writes the last binary digits.
fn hundredths(size: f64) -> f64 {
    (size * 100.0).round() / 100.0
}

fn conductor(chance: &mut Chance, index: usize) -> String {
    let mut out = format!("id: wire-{index}\nname: {}\n", chance.text(200));
    let diameter = 2.0 + chance.count(0, 30) as f64 / 20.0;
    let built = match chance.count(0, 5) {
        0 => "grooved: { height_mm: 12.34, width_mm: 12.34, apex_width_mm: 6.80, apex_depth_mm: 4.47, fillet_mm: 0.40, lower_flank_deg: 27, upper_flank_deg: 51, wear: { limit_percent: 20, plan_height_mm: 10.0, replace_height_mm: 9.4, stop_height_mm: 8.9 } }".to_owned(),
        1 => "rope: { construction: 7x19, core: wsc, diameter_mm: 8.0, grade_N_per_mm2: 1570 }".to_owned(),
        2 => format!("solid: {{ diameter_mm: {} }}", hundredths(diameter * 3.0 + 0.25)),
        3 => format!("tube: {{ outside_diameter_mm: {}, wall_mm: 2.25 }}", hundredths(diameter * 4.0)),
        _ => format!("stranded: {{ wires: 19, wire_diameter_mm: {diameter} }}"),
    };
    let duty = if built.starts_with("grooved") { "contact" } else { "messenger" };
    let _ = write!(
        out,
        "duty: {duty}\nmaterial: {}\nconstruction: {{ {built} }}\n",
        chance.of(&["bronze-2", "copper-hard-drawn", "copper-cadmium-1.0"])
    );
    key(chance, &mut out, 2, "nominal_size_mm2", |chance| chance.of(&["95", "120", "107.2"]).to_owned());
    key(chance, &mut out, 2, "caution", |chance| chance.text(60));
    out + "---\n"
}

fn gripping_part(chance: &mut Chance, index: usize) -> String {
    let mut out = format!(
        "number: G-{index}\nname: {}\nrole: cone\nmaterial: bronze-soft\ninterface: seat\n",
        chance.text(60)
    );
    key(chance, &mut out, 4, "stamp", |chance| chance.text(14));
    if !chance.one_in(3) {
        let (text, notches) = (chance.of(&MARKS), chance.count(0, 5));
        let _ = writeln!(out, "mark: {{ colour: {}, text: {text}, notches: {notches} }}", COLOURS[index]);
    }
    status(chance, &mut out);
    let bore = 9.0 + chance.count(0, 40) as f64 / 5.0;
    if !chance.one_in(4) {
        let _ = writeln!(
            out,
            "geometry: {{ collet: {{ bore_mm: {bore}, slits: 3, slit_width_mm: 1.0, half_angle_deg: 5, length_mm: 60, stand_out_at_bore_mm: 6.0 }} }}"
        );
    }
    out + "---\n"
}

fn small_part(chance: &mut Chance, index: usize) -> String {
    let role = chance.of(&["screw", "nut", "lock", "pin", "bolt", "other", "sleeve"]);
    let mut out =
        format!("number: P-{index}\nname: {}\nrole: {role}\nmaterial: steel-galvanised\n", chance.text(200));
    key(chance, &mut out, 2, "stamp", |chance| chance.text(14));
    out + "---\n"
}

fn fitting(chance: &mut Chance, index: usize, of: usize) -> String {
    let long = if chance.one_in(8) { ".of-1st-line_and_2nd" } else { "" };
    let long = if index == 0 { "" } else { long };
    let mut out = format!("number: F-{index}{long}\nname: {}\nfamily: cone-dead-end\n", chance.text(200));
    let second = chance.count(0, of - 1);
    let _ = match chance.one_in(5) && second != index {
        true => writeln!(out, "conductors: [wire-{index}, wire-{second}]"),
        false => writeln!(out, "conductor: wire-{index}"),
    };
    let mut items = vec!["B-0".to_owned(), format!("G-{index}")];
    for part in 0..chance.count(0, SMALL_PARTS) {
        let quantity = chance.count(1, 12);
        items.push(format!("{{ part: P-{part}, quantity: {quantity} }}"));
    }
    let _ = writeln!(out, "parts: [{}]", items.join(", "));
    key(chance, &mut out, 3, "stamp", |chance| chance.text(14));
    key(chance, &mut out, 3, "stand_out", |chance| {
        let from = chance.of(&["cone-face", "screw-gap"]);
        format!(
            "{{ from: {from}, seated_mm: {{ min: 3.0, max: 6.0 }}, tensioned_mm: {{ min: 1.5, max: 4.5 }} }}"
        )
    });
    key(chance, &mut out, 2, "insertion_mm", |chance| chance.of(&["85", "85.5", "120.26"]).to_owned());
    key(chance, &mut out, 2, "tail_mm", |chance| chance.of(&["15", "7.5"]).to_owned());
    key(chance, &mut out, 2, "line_tension_max_kN", |chance| chance.of(&["21", "8.25", "0.5"]).to_owned());
    let tightening: Vec<String> = (0..chance.count(0, 3)).map(|_| tightening(chance)).collect();
    let _ = writeln!(out, "tightening: [{}]", tightening.join(", "));
    key(chance, &mut out, 3, "witness", |chance| chance.text(200));
    let _ = writeln!(out, "steps: {}", chance.list(0, 7, 200));
    let _ = writeln!(out, "reject_if: {}", chance.list(0, 4, 80));
    key(chance, &mut out, 3, "notices", |chance| chance.of(&["[N-1]", "[N-1, N-2]"]).to_owned());
    let from = out.len();
    if index > 0 && chance.one_in(6) {
        let _ = writeln!(out, "status: superseded\nsuperseded_by: F-0");
    } else {
        status(chance, &mut out);
    }
    // What is current is built, so nothing of it must stop.
    let all = ["may-stay", "inspect", "stop-now"];
    let words = if out.len() == from { &all[..2] } else { &all[..] };
    key(chance, &mut out, 3, "in_service", |chance| chance.of(words).to_owned());
    out + "---\n"
}

fn tightening(chance: &mut Chance) -> String {
    let item = chance.text(30);
    let torque = chance.of(&["{ min: 80, max: 90 }", "{ min: 80, max: 80 }", "{ min: 2.5, max: 3 }"]);
    let grease = chance.list(0, 2, 20);
    format!(
        "{{ item: {item}, thread: M36x2, spanner_mm: 55, torque_Nm: {torque}, grease: {grease}, passes: {} }}",
        chance.count(1, 3)
    )
}

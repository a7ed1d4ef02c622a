//! Assembly slips against the records as they are written.

use super::made::{DEMO, said};
use super::records::{grips, is_current, own_or_procedure, parts, records};
use fittingcards::cards::make_form;
use fittingcards::source::FilePath;
use fittingcards::training;
use serde_yaml::Value;
use std::collections::BTreeMap;

/// Every slip of the demo: its fitting's number and what it says.
fn slips() -> BTreeMap<String, String> {
    let made = training::slips(DEMO.input()).into_iter().map(|form| {
        let (face, findings) = make_form(DEMO.cards(), &form);
        assert!(findings.is_empty(), "{:?}", findings.sorted());
        (form.number.clone(), said(&face.unwrap().face))
    });
    made.collect()
}

#[test]
fn only_fittings_that_may_be_built_get_a_slip() {
    let slips = slips();
    for (number, fitting) in records("fittings") {
        assert_eq!(slips.contains_key(&number), is_current(&fitting), "{number}");
    }
    assert!(!slips.contains_key("ST-4080") && !slips.contains_key("ST-4240"), "superseded; on hold");
    assert!(slips.len() > 10);
}

/// A number of a record with the digits that the demo writes it with.
fn digits(value: &Value, decimals: usize) -> String {
    format!("{:.decimals$}", value.as_f64().unwrap().abs())
}

#[test]
fn a_slip_has_the_windows_torques_and_stamp_of_its_records() {
    let (slips, all_parts, procedures) = (slips(), records("parts"), records("procedures"));
    let (mut windows, mut torques, mut stamps, mut sockets_read) = (0, 0, 0, 0);
    for (number, fitting) in records("fittings").into_iter().filter(|(_, fitting)| is_current(fitting)) {
        let slip = &slips[&number];
        for key in ["seated_mm", "tensioned_mm"] {
            let window = &fitting["stand_out"][key];
            if window.is_null() {
                continue;
            }
            let (least, most) = (window["min"].as_f64().unwrap(), window["max"].as_f64().unwrap());
            let text = if most <= 0.0 {
                format!("sunk {} to {} mm", digits(&window["max"], 1), digits(&window["min"], 1))
            } else {
                format!("{least:.1} to {most:.1} mm")
            };
            assert!(slip.contains(&text), "{number}: {text} in {slip}");
            windows += 1;
        }
        let tightening = own_or_procedure(&fitting, &procedures, "tightening");
        for line in tightening.as_sequence().into_iter().flatten() {
            let (least, most) = (&line["torque_Nm"]["min"], &line["torque_Nm"]["max"]);
            let text = match (digits(least, 0), digits(most, 0)) {
                (least, most) if least == most => format!("{least} N·m"),
                (least, most) => format!("{least} to {most} N·m"),
            };
            assert!(slip.contains(&text), "{number}: {text} in {slip}");
            assert!(slip.contains("wrench no."), "{number}");
            torques += 1;
        }
        assert_eq!(
            slip.contains("wrench no."),
            tightening.is_sequence(),
            "{number}: only what the fitting has"
        );
        let gripping = parts(&fitting).into_iter().map(|part| &all_parts[&part]).find(|part| grips(part));
        let sockets =
            parts(&fitting).into_iter().map(|part| &all_parts[&part]).filter(|part| part["role"] == "socket");
        for stamp in sockets.filter_map(|part| part["stamp"].as_str()) {
            assert!(slip.contains(&format!("Socket, read aloud {stamp}")), "{number}: {stamp} in {slip}");
            sockets_read += 1;
        }
        if let Some(stamp) = gripping.and_then(|part| part["stamp"].as_str()) {
            assert!(
                slip.matches(stamp).count() >= 2,
                "{number}: {stamp} twice, once to be read aloud, in {slip}"
            );
            stamps += 1;
        }
    }
    assert!((windows, torques, stamps) > (10, 10, 10), "{windows} {torques} {stamps}");
    assert!(sockets_read > 2, "{sockets_read}");
}

/// Counted from the records by hand: 19 wires less the 7 that go through the cone of the earth wire 95.
#[test]
fn wires_are_counted_round_a_spreading_cone() {
    let slips = slips();
    assert!(slips["ST-4140"].contains("12 round the cone, 7 through it"), "{}", slips["ST-4140"]);
    assert!(slips["ST-4100"].contains("Wires counted 19"), "{}", slips["ST-4100"]);
    assert!(!slips["ST-4200"].contains("Wires counted"), "a contact wire has none");
}

/// The register of the demo, read as YAML: the newest edition that holds the card.
#[test]
fn a_slip_says_issue_and_check_code_of_its_card_as_the_register_has_them() {
    let text = std::fs::read_to_string(crate::fixtures::root().join("content/register/2026-1.yaml")).unwrap();
    let edition: Value = serde_yaml::from_str(&text).unwrap();
    let mut issued = 0;
    for (number, slip) in slips() {
        let cards = edition["cards"].as_sequence().unwrap();
        let card = cards.iter().find(|card| card["number"] == number.as_str()).unwrap();
        let (issue, code) = (card["issue"].as_u64().unwrap(), card["check_code"].as_str().unwrap());
        if slip.contains("draft, not issued") {
            continue;
        }
        assert!(
            slip.contains(&format!("issue {issue}")) && slip.contains(&format!("check {code}")),
            "{slip}"
        );
        assert!(slip.contains("check the register"), "{slip}");
        issued += 1;
    }
    assert!(issued > 5, "{issued} of the demo's cards are issued");
}

/// A card that was changed since its last issue is a draft: nobody is sent to work by it, nor away from the others.
#[test]
fn a_slip_of_a_draft_sends_nobody_to_work() {
    let folder = crate::faces::made::folder("content");
    let file = "fittings/collet-dead-ends.yaml";
    let text = crate::faces::made::read(&folder.join(file));
    let changed = text.replacen("max: 90 }", "max: 88 }", 2);
    assert_ne!(text, changed);
    let world = crate::faces::made::world(&folder).with(FilePath::catalogue(file), changed);
    let made = super::made::Made::of(&world);
    let says = training::slips(made.input()).into_iter().map(|form| {
        let (face, _) = make_form(made.cards(), &form);
        let said = said(&face.unwrap().face);
        let draft =
            said.contains(&format!("Not to be worked by: card {} is a draft, not issued", form.number));
        assert_ne!(draft, said.contains(&format!("Work by card {}", form.number)), "{said}");
        (form.number, draft)
    });
    let drafts: Vec<String> = says.filter(|(_, draft)| *draft).map(|(number, _)| number).collect();
    assert!(drafts.contains(&"ST-4100".to_owned()) && drafts.len() < 5, "{drafts:?}");
}

/// A clamp has no gripping part by its record: there is no batch of it, and no text with a gap in it.
#[test]
fn a_slip_of_a_fitting_without_a_gripping_part_asks_for_no_batch_of_one() {
    let (slips, all_parts) = (slips(), records("parts"));
    let (mut with, mut without) = (0, 0);
    for (number, fitting) in records("fittings").into_iter().filter(|(_, fitting)| is_current(fitting)) {
        let has = parts(&fitting).iter().any(|part| grips(&all_parts[part]));
        let slip = &slips[&number];
        assert_eq!(slip.contains("Batch of "), has, "{number}: {slip}");
        assert!(slip.contains(if has { "; drum of " } else { "Drum of " }), "{number}: {slip}");
        *if has { &mut with } else { &mut without } += 1;
    }
    assert!(with > 5 && without > 0, "{with} with a gripping part, {without} without");
}

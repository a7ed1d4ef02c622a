//! Bin labels against the answer of `mixups` and the records as they are written.

use super::made::{DEMO, said};
use super::records::{is_current, parts, records};
use fittingcards::cards::make_form;
use fittingcards::{mixups, training};
use std::collections::{BTreeMap, BTreeSet};

/// Every label of the demo: its part's number and what it says.
fn labels() -> BTreeMap<String, String> {
    let made = training::labels(DEMO.input()).into_iter().map(|form| {
        let (face, findings) = make_form(DEMO.cards(), &form);
        assert!(findings.is_empty(), "{:?}", findings.sorted());
        (form.number.clone(), said(&face.unwrap().face))
    });
    made.collect()
}

/// Parts of which one is put in for the other in a hidden mix-up: from the JSON of `mixups` and the lists of parts.
fn hidden_pairs() -> BTreeSet<(String, String)> {
    let (fittings, all_parts) = (records("fittings"), records("parts"));
    let answer = mixups::to_json(&DEMO.mixups);
    let bodies = answer["bodies"].as_array().unwrap().iter();
    let open = answer["without_body"].as_array().unwrap().iter();
    let mut pairs = BTreeSet::new();
    for case in bodies.chain(open).flat_map(|body| body["cases"].as_array().unwrap()) {
        let (wrong, fitting) = (case["part"].as_str().unwrap(), case["fitting"].as_str().unwrap());
        if case["hidden"] != true {
            continue;
        }
        let same_role = |own: &&String| all_parts[*own]["role"] == all_parts[wrong]["role"];
        for own in parts(&fittings[fitting]).iter().filter(same_role).filter(|own| *own != wrong) {
            pairs.insert((own.clone(), wrong.to_owned()));
            pairs.insert((wrong.to_owned(), own.clone()));
        }
    }
    pairs
}

#[test]
fn labels_name_every_part_of_a_hidden_mix_up_and_no_other() {
    let (labels, pairs, all_parts) = (labels(), hidden_pairs(), records("parts"));
    assert!(pairs.len() > 10, "{pairs:?}");
    for number in all_parts.keys() {
        let named = labels[number].split("Never beside: ").nth(1).unwrap_or_default();
        let named = named.split(" One goes in").next().unwrap();
        for other in all_parts.keys() {
            let is_named = named.contains(other.as_str());
            assert_eq!(
                is_named,
                pairs.contains(&(number.clone(), other.clone())),
                "{number}, {other}: {named}"
            );
        }
    }
}

#[test]
fn what_nobody_may_take_is_in_quarantine_and_nothing_else() {
    let (labels, fittings) = (labels(), records("fittings"));
    for (number, part) in records("parts") {
        let mut users = fittings.values().filter(|fitting| parts(fitting).contains(&number)).peekable();
        let unused = users.peek().is_none();
        let may_be_taken = is_current(&part) && (unused || users.any(is_current));
        assert_eq!(labels[&number].contains("QUARANTINE"), !may_be_taken, "{number}: {}", labels[&number]);
    }
    // By the records: the old cone is withdrawn; rope grips go into the held eye alone, its thimble into another too.
    assert!(labels["ST-4081"].contains("Withdrawn: do not use"));
    assert!(labels["ST-4241"].contains("On hold: stop until told"));
    assert!(!labels["ST-4221"].contains("QUARANTINE"));
}

#[test]
fn a_label_says_how_many_go_into_a_fitting() {
    let labels = labels();
    for (number, fitting) in records("fittings").into_iter().filter(|(_, fitting)| is_current(fitting)) {
        for part in fitting["parts"].as_sequence().unwrap() {
            let (name, count) = match part.as_str() {
                Some(name) => (name, 1),
                None => (part["part"].as_str().unwrap(), part["quantity"].as_u64().unwrap_or(1)),
            };
            let label = &labels[name];
            let uses = format!("{count} × in {number}");
            assert!(label.contains(&uses) || label.contains("more"), "{name}: {uses} in {label}");
        }
    }
}

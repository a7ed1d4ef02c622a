//! The demo's register, played from its history: two editions, and a change that waits to be issued.

use super::{Desk, asked};
use crate::fixtures::root;
use serde::Deserialize;
use std::collections::BTreeMap;

#[derive(Deserialize)]
struct Issue {
    edition: String,
    date: String,
    checked_by: String,
    approved_by: String,
    because: String,
    then: Vec<Otherwise>,
}

#[derive(Deserialize)]
struct Otherwise {
    /// File and number.
    record: String,
    now: String,
    then: String,
}

/// The editions as the history makes them, by their files.
fn played() -> BTreeMap<String, String> {
    let history = std::fs::read_to_string(root().join("tests/register/history.yaml")).unwrap();
    let history: Vec<Issue> = serde_yaml::from_str(&history).unwrap();
    let mut editions = BTreeMap::new();
    for issue in history {
        let mut desk = Desk::demo();
        desk.files.extend(editions.clone());
        for otherwise in &issue.then {
            let (file, number) = otherwise.record.split_once(' ').unwrap();
            desk.edit_record(file, number, &otherwise.now, &otherwise.then);
        }
        let mut asked = asked(&issue.edition, &issue.date, &issue.because);
        (asked.checked_by, asked.approved_by) = (issue.checked_by, issue.approved_by);
        desk.issue_as(&asked).unwrap_or_else(|refused| panic!("{}: {refused:#?}", issue.edition));
        let file = format!("register/{}.yaml", issue.edition);
        editions.insert(file.clone(), desk.files[&file].clone());
    }
    editions
}

/// With UPDATE=1 the editions are written anew, and the run fails.
#[test]
fn the_demos_editions_are_those_of_its_history() {
    let content = root().join("content");
    let update = std::env::var("UPDATE").is_ok();
    for (path, text) in played() {
        if update {
            std::fs::create_dir_all(content.join("register")).unwrap();
            std::fs::write(content.join(&path), &text).unwrap();
        }
        let there = std::fs::read_to_string(content.join(&path)).unwrap_or_default();
        assert!(
            there == text,
            "{path} is not what the history makes of the present records. Where what cards print has changed on \
             purpose: UPDATE=1 cargo test --all-features --test all -- register::demo"
        );
    }
    assert!(
        !update,
        "the editions were written anew: look at `fittingcards compare`, and run without UPDATE"
    );
}

/// What waits to be issued is the hold of the gripped eye, and its notice explains it.
#[test]
fn a_change_waits_to_be_issued() {
    let mut desk = Desk::demo();
    desk.files.extend(played());
    let comparison = desk.compare();
    let changed: Vec<&str> = comparison.changed().map(|card| card.number.as_str()).collect();
    assert_eq!(changed, ["ST-4240"]);
    assert_eq!(comparison.print_again[0].notices(), ["N-2026-09"]);
    assert!(comparison.print_again[0].explained);
}

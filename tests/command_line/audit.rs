//! `fittingcards audit`.

use super::{Run, demo};
use serde_json::Value;
use std::sync::LazyLock;

/// What is found in the demo.
static ANSWER: LazyLock<Value> = LazyLock::new(|| Run::new().json(&["audit", "--catalogue", &demo()]));

#[test]
fn the_demo_has_no_error() {
    assert_eq!(ANSWER["errors"], 0);
}

#[test]
fn every_fault_is_told_at_once_with_its_place() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    let parts = run.folder.path().join("content/parts/wrong.yaml");
    std::fs::write(&parts, "number: X-1\nname: Odd\nrole: con\nmaterial: brass\nlenght: 3\n").unwrap();
    let stderr = run.stderr(&["audit"], 1);
    assert!(stderr.contains("content/parts/wrong.yaml:3:7"), "{stderr}");
    assert!(stderr.contains("content/parts/wrong.yaml:5:1"), "{stderr}");
    assert!(stderr.contains("cone"), "{stderr}");
}

#[test]
fn findings_as_json_are_the_result() {
    let findings = ANSWER["findings"].as_array().unwrap();
    assert!(findings.iter().all(|finding| finding["file"].is_string() && finding["code"].is_string()));
}

#[test]
fn warnings_can_be_denied() {
    let catalogue = demo();
    let warnings = ANSWER["warnings"].as_u64().unwrap();
    let output =
        Run::new().command(&["audit", "--catalogue", &catalogue, "--deny-warnings"]).output().unwrap();
    assert_eq!(output.status.code(), Some(i32::from(warnings > 0)));
}

/// Whoever asks for quiet still hears what stops the run, and nothing else.
#[test]
fn a_quiet_run_says_which_warnings_stop_it() {
    let asked = ["audit", "--catalogue", &demo(), "--deny-warnings", "--quiet", "--records"];
    let output = Run::new().command(&asked).output().unwrap();
    let said = String::from_utf8(output.stderr).unwrap();
    let is_told = said.contains(": warning[");
    assert_eq!((output.status.code(), is_told), (Some(1), true), "{said}");
    assert!(!said.contains(": note["), "{said}");
}

#[test]
fn a_single_file_of_some_cards_is_refused() {
    let asked = ["render", "--catalogue", &demo(), "--only", "ST-4100", "--single-file"];
    assert_eq!(Run::new().command(&asked).output().unwrap().status.code(), Some(2));
}

#[test]
fn records_can_be_audited_without_faces() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    let layouts = run.folder.path().join("layouts/cards");
    std::fs::create_dir_all(&layouts).unwrap();
    std::fs::write(layouts.join("title.xml"), "<text>{{ no_such_value }}</text>\n").unwrap();
    run.command(&["audit"]).assert().code(1);
    run.command(&["audit", "--records"]).assert().success();
    let parts = run.folder.path().join("content/parts/wrong.yaml");
    std::fs::write(&parts, "number: X-1\nname: Odd\nrole: con\nmaterial: brass\n").unwrap();
    assert!(run.stderr(&["audit", "--records"], 1).contains("content/parts/wrong.yaml:3:7"));
}

/// A text that several cards take from one procedure is shortened there, not in the fittings.
#[test]
fn a_text_without_room_is_told_at_the_procedure_that_has_it() {
    let run = Run::with_demo();
    let line = "witness: Second person reads {mark}, {stamp} before closing.";
    let long = format!("{line} {}", "Then once more, aloud, with a lamp. ".repeat(10).trim());
    run.edit("procedures/dead-ends.yaml", line, &long);
    let procedures = std::fs::read_to_string(run.content("procedures/dead-ends.yaml")).unwrap();
    let at = 1 + procedures.lines().position(|found| found == long).unwrap();
    let said = run.stderr(&["audit"], 1);
    for card in ["ST-4100", "ST-4110"] {
        let place = format!("procedures/dead-ends.yaml:{at}:10: error[card-too-full]: {card} witness: ");
        assert!(said.contains(&place), "{said}");
    }
}

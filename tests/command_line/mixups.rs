//! `fittingcards mixups`.

use super::{Run, demo};

#[test]
fn cases_carry_what_other_programs_rely_on() {
    let catalogue = demo();
    let answer = Run::new().json(&["mixups", "--catalogue", &catalogue]);
    let bodies = answer["bodies"].as_array().unwrap();
    assert!(bodies.len() >= 2);
    for case in bodies.iter().flat_map(|body| body["cases"].as_array().unwrap()) {
        for name in ["part", "conductor", "fitting", "verdict"] {
            assert!(case[name].is_string(), "{name} in {case}");
        }
        for name in ["right", "approved", "danger", "visible", "hidden", "marks_distinct"] {
            assert!(case[name].is_boolean(), "{name} in {case}");
        }
        assert!(case["missing"].is_array());
    }
}

#[test]
fn an_error_elsewhere_does_not_take_the_answer_away() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    std::fs::write(run.folder.path().join("content/parts/broken.yaml"), "number: X-1\nname: Broken\n")
        .unwrap();
    let output = run.command(&["mixups", "--format", "json"]).output().unwrap();
    assert_eq!(output.status.code(), Some(1));
    let answer: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!(answer["bodies"].as_array().unwrap().len(), 1);
}

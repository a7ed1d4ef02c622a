//! `fittingcards identify`.

use super::{Run, demo};
use serde_json::Value;

fn candidates(answer: &Value) -> Vec<&str> {
    answer["candidates"]
        .as_array()
        .unwrap()
        .iter()
        .map(|found| found["conductor"].as_str().unwrap())
        .collect()
}

#[test]
fn copper_and_bronze_of_one_size_can_t_be_settled_by_hand() {
    let catalogue = demo();
    let answer = Run::new().json(&[
        "identify",
        "--catalogue",
        &catalogue,
        "--diameter",
        "14.0",
        "--scratch",
        "copper",
    ]);
    assert_eq!(candidates(&answer), ["messenger-120", "messenger-cu-120"]);
    for found in answer["candidates"].as_array().unwrap() {
        let clues = found["tell_apart"].to_string();
        assert!(clues.contains("can't be settled by hand") && clues.contains("drum tag"), "{clues}");
        assert_eq!(found["difference_mm"], 0.0);
        assert!(!found["fittings"].as_array().unwrap().is_empty());
    }
}

#[test]
fn a_grey_scratch_rules_copper_out() {
    let catalogue = demo();
    let answer =
        Run::new().json(&["identify", "--catalogue", &catalogue, "--diameter", "14.0", "--scratch", "grey"]);
    assert!(candidates(&answer).is_empty());
}

#[test]
fn a_stand_out_rules_gripping_parts_out() {
    let catalogue = demo();
    let closed = ["identify", "--catalogue", &catalogue, "--body", "ST-4101", "--conductor", "messenger-95"];
    let answer = Run::new().json(&[&closed[..], &["--stand-out", "4.2"]].concat());
    let right = answer["inside"].as_array().unwrap().iter().find(|inside| inside["right"] == true).unwrap();
    assert_eq!(right["part"], "ST-4111");
    assert_eq!(right["fits_reading"], true);
    let interval = right["interval_mm"].as_array().unwrap();
    assert!(interval[0].as_f64() <= right["stand_out_mm"].as_f64());
    assert!(interval[1].as_f64() >= right["stand_out_mm"].as_f64());
}

/// ST-4081 is the cone of the old fitting ST-4080, which is superseded: no wire is to be held by it today.
#[test]
fn a_part_that_is_out_of_use_is_not_right() {
    let catalogue = demo();
    let closed = ["identify", "--catalogue", &catalogue, "--body", "ST-4101", "--conductor", "messenger-120"];
    let answer = Run::new().json(&[&closed[..], &["--stand-out", "1.2"]].concat());
    let inside = answer["inside"].as_array().unwrap();
    let right: Vec<&Value> =
        inside.iter().filter(|inside| inside["right"] == true).map(|inside| &inside["part"]).collect();
    assert_eq!(right, ["ST-4103"], "{answer}");
    let old = inside.iter().find(|inside| inside["part"] == "ST-4081").unwrap();
    assert_eq!((&old["right"], &old["fits_reading"]), (&false.into(), &true.into()), "{old}");
}

#[test]
fn what_can_t_be_answered_is_the_callers_fault() {
    let (run, catalogue) = (Run::new(), demo());
    for arguments in [
        &["--diameter", "-3"][..],
        &["--diameter", "nan"],
        &["--diameter", "1e9"],
        &["--diameter", "14", "--diameter", "14", "--diameter", "14"],
        &["--body", "ST-4101"],
        &["--body", "ST-9999", "--conductor", "messenger-120", "--stand-out", "1"],
        &["--wires", "19"],
    ] {
        let arguments = [&["identify", "--catalogue", &catalogue][..], arguments].concat();
        run.command(&arguments).assert().code(2);
    }
    run.command(&["audit", "--catalogue", &catalogue, "--colour", "grey"]).assert().code(2);
}

//! `fittingcards explain`.

use super::Run;

fn text(arguments: &[&str]) -> String {
    let output = Run::new().command(arguments).assert().success().get_output().stdout.clone();
    String::from_utf8(output).unwrap()
}

#[test]
fn a_key_alone_is_explained_wherever_it_stands() {
    let text = text(&["explain", "bore_mm"]);
    for path in ["parts.geometry.collet.bore_mm\n", "parts.geometry.ferrule.bore_mm\n"] {
        assert!(text.contains(path), "{text}");
    }
    let collet = text.split("\n\n").next().unwrap();
    for line in ["takes    a number from 0.01 to 200 mm", "unit     mm", "needed   no", "default  nothing"] {
        assert!(collet.contains(line), "{collet}");
    }
    assert!(collet.contains("example  bore_mm: 14.3"), "{collet}");
}

#[test]
fn a_kind_lists_its_keys_and_a_key_those_below_it() {
    let parts = text(&["explain", "parts"]);
    for key in ["\n  number ", "\n    colour ", "\n      bore_mm "] {
        assert!(parts.contains(key), "{parts}");
    }
    let collet = text(&["explain", "parts.geometry.collet"]);
    assert!(collet.contains("\n  bore_mm "), "{collet}");
    assert!(!collet.contains("groove_mm"), "{collet}");
}

#[test]
fn the_field_of_a_finding_is_a_key() {
    assert!(text(&["explain", "parts.2.quantity"]).starts_with("fittings.parts.quantity\n"));
    assert!(text(&["explain", "catalogue.yaml"]).starts_with("catalogue: "));
}

#[test]
fn a_code_is_explained_as_messages_write_it() {
    for name in ["unknown-key", "[unknown-key]"] {
        let text = text(&["explain", name]);
        for start in ["unknown-key\n", "\n  finds ", "\n  why ", "\n  help "] {
            assert!(text.contains(start), "{text}");
        }
    }
    assert!(text(&["explain", "codes"]).contains("\nzero "));
}

#[test]
fn without_a_name_it_says_how_to_ask() {
    let text = text(&["explain"]);
    for kind in
        ["catalogue", "conductors", "fittings", "holders", "materials", "notices", "parts", "procedures"]
    {
        assert!(text.contains(&format!("\n  {kind} ")), "{text}");
    }
    assert!(text.contains("fittingcards explain parts"), "{text}");
}

#[test]
fn an_unknown_name_gets_the_nearest_and_exit_code_2() {
    let run = Run::new();
    assert!(run.stderr(&["explain", "bore_m"], 2).contains("did you mean bore_mm?"));
    assert!(run.stderr(&["explain", "unknown-kye"], 2).contains("did you mean unknown-key?"));
    let stderr = run.stderr(&["explain", "parts.geometry.colet.bore_mm"], 2);
    assert!(stderr.contains("parts.geometry.collet.bore_mm"), "{stderr}");
    assert!(run.stderr(&["explain", "qqqqqq"], 2).contains("says how to ask"));
}

#[test]
fn the_answer_as_json_has_kinds_keys_and_codes() {
    let run = Run::new();
    let one = run.json(&["explain", "notches"]);
    let key = &one["keys"][0];
    assert_eq!((&key["path"], &key["default"]), (&"fittings.mark.notches".into(), &"0".into()));
    assert_eq!((&key["least"], &key["most"], &key["needed"]), (&0.0.into(), &12.0.into(), &false.into()));
    assert_eq!(one["codes"], serde_json::json!([]));
    let all = run.json(&["explain"]);
    assert_eq!(all["kinds"].as_array().unwrap().len(), 9);
    assert!(all["codes"].as_array().unwrap().iter().any(|code| code["code"] == "zero"));
}

/// `min` and `max` of a window, `width` and `height` of an oval bore stand in records, and are asked for like other keys.
#[test]
fn the_ends_of_a_value_are_explained_by_the_keys_that_have_them() {
    for (end, key) in [
        ("min", "fittings.stand_out.seated_mm"),
        ("max", "procedures.tightening.torque_Nm"),
        ("seated_mm.max", "fittings.stand_out.seated_mm"),
        ("pressed_mm.min", "parts.geometry.sleeve.pressed_mm"),
        ("width", "parts.geometry.ferrule.bore_mm"),
        ("height", "parts.geometry.ferrule.bore_mm"),
    ] {
        let text = text(&["explain", end]);
        assert!(text.contains(&format!("{key}\n")), "{end}: {text}");
        assert!(!text.contains("parts.number\n"), "{end}: {text}");
    }
}

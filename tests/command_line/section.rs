//! `fittingcards section`.

use super::{Run, demo};
use serde_json::Value;

fn number(answer: &Value, name: &str) -> f64 {
    answer[name].as_f64().unwrap_or_else(|| panic!("{name} in {answer}"))
}

#[test]
fn nineteen_copper_wires_of_2_80_mm() {
    let answer = Run::new().json(&["section", "--stranded", "19/2.80", "--material", "copper-hard-drawn"]);
    // DIN 48201-1, nominal size 120: 116.99 mm², 14.0 mm, 46.90 kN (reprint).
    assert_eq!(format!("{:.2}", number(&answer, "section_mm2")), "116.99");
    assert_eq!(format!("{:.1}", number(&answer, "overall_diameter_mm")), "14.0");
    assert_eq!(format!("{:.2}", number(&answer, "circle_area_mm2")), "153.94");
    assert_eq!(format!("{:.2}", number(&answer, "fill_ratio")), "0.76");
    assert!((number(&answer, "breaking_load_kN") - 46.90).abs() < 0.02);
    assert_eq!(answer["layers"].as_array().unwrap().len(), 3);
    assert!(!answer["sources"].as_array().unwrap().is_empty());
}

#[test]
fn what_does_not_apply_is_absent() {
    let answer = Run::new().json(&["section", "--stranded", "19/2.80"]);
    for name in [
        "outer_section_mm2",
        "core_section_mm2",
        "mass_kg_per_km",
        "resistance_20c_ohm_per_km",
        "resistance_ohm_per_km",
        "breaking_load_kN",
        "neck_mm",
        "worn",
    ] {
        assert!(answer.get(name).is_none(), "{name}");
    }
    let catalogue = demo();
    for other in [
        &["--solid", "8.0"][..],
        &["--tube", "100x5"],
        &["--bar", "40x10"],
        &["--rope", "7x19/8.0", "--core", "wsc"],
        &["--conductor", "contact-120"],
    ] {
        let answer = Run::new().json(&[&["section", "--catalogue", &catalogue][..], other].concat());
        assert_ne!(answer.get("layers"), Some(&serde_json::json!([])), "{other:?}");
    }
}

#[test]
fn a_composite_has_two_sections() {
    let answer = Run::new().json(&[
        "section",
        "--stranded",
        "26/3.45+7/2.68",
        "--material",
        "aluminium-al1",
        "--core-material",
        "steel-st1a",
    ]);
    // EN 50182:2001 Table F.19, 243-AL1/39-ST1A: 243.1 + 39.5 = 282.5 mm², 21.8 mm, 85.12 kN (reprint).
    assert_eq!(format!("{:.1}", number(&answer, "outer_section_mm2")), "243.1");
    assert_eq!(format!("{:.1}", number(&answer, "core_section_mm2")), "39.5");
    assert_eq!(format!("{:.1}", number(&answer, "section_mm2")), "282.5");
    assert_eq!(format!("{:.1}", number(&answer, "overall_diameter_mm")), "21.8");
    assert!((number(&answer, "breaking_load_kN") / 85.12 - 1.0).abs() < 0.002);
}

#[test]
fn every_other_construction() {
    let run = Run::new();
    let area = |arguments: &[&str]| number(&run.json(arguments), "section_mm2");
    let close = |found: f64, expected: f64| assert!((found - expected).abs() < 0.005, "{found} {expected}");
    close(area(&["section", "--solid", "8.0"]), 50.265);
    close(area(&["section", "--tube", "100x5"]), 1492.257);
    close(area(&["section", "--bar", "40x10"]), 400.0);
    // EN 12385-4, 6x19M with a strand core: C = 0.418.
    close(area(&["section", "--rope", "7x19/8.0", "--core", "wsc", "--grade", "1570"]), 0.418 * 64.0);
}

#[test]
fn temperature_raises_resistance() {
    let answer = Run::new().json(&[
        "section",
        "--stranded",
        "19/2.80",
        "--material",
        "copper-hard-drawn",
        "--temperature",
        "80",
    ]);
    let ratio = number(&answer, "resistance_ohm_per_km") / number(&answer, "resistance_20c_ohm_per_km");
    assert!((ratio - (1.0 + 0.00381 * 60.0)).abs() < 1e-9);
}

/// A temperature that the straight line does not reach is said to be one; nothing of the material is lacking.
#[test]
fn a_temperature_out_of_range_is_told_with_the_range() {
    let wire = ["section", "--solid", "8", "--material", "copper-hard-drawn"];
    for (temperature, told) in [("299", false), ("301", true), ("-101", true)] {
        let output = Run::new()
            .command(&[&wire[..], &[&*format!("--temperature={temperature}")]].concat())
            .output()
            .unwrap();
        let said = String::from_utf8([output.stdout, output.stderr].concat()).unwrap();
        assert_eq!(said.contains("it is computed from -100 to 300 °C"), told, "{temperature}: {said}");
        assert!(!said.contains("lacks a figure"), "{said}");
    }
}

#[test]
fn a_record_is_worn_by_height_and_by_flat() {
    let run = Run::new();
    let catalogue = demo();
    let arguments = ["section", "--catalogue", &catalogue, "--conductor", "contact-120"];
    let by_height = run.json(&[&arguments[..], &["--worn-height", "9.3"]].concat());
    let flat = number(&by_height["worn"], "flat_width_mm").to_string();
    let by_flat = run.json(&[&arguments[..], &["--flat-width", &flat]].concat());
    assert!((number(&by_flat["worn"], "height_mm") - 9.3).abs() < 1e-6);
    assert!(number(&by_height["worn"], "section_mm2") < number(&by_height, "section_mm2"));
}

#[test]
fn an_id_in_another_case_is_that_id() {
    let catalogue = demo();
    for (wrong, meant) in [("MESSENGER-120", "messenger-120"), ("Messenger-150", "messenger-150")] {
        let told = Run::new().stderr(&["section", "--catalogue", &catalogue, "--conductor", wrong], 2);
        assert!(told.contains(&format!("did you mean '{meant}'?")), "{told}");
    }
}

#[test]
fn a_worn_wire_is_measured_by_its_height_or_by_its_flat() {
    let catalogue = demo();
    let asked = ["section", "--catalogue", &catalogue, "--conductor", "contact-120"];
    let height_and_flat = ["--worn-height", "9.3", "--flat-width", "6.0"];
    let stderr = Run::new().stderr(&[&asked[..], &height_and_flat].concat(), 2);
    assert!(stderr.contains("'--worn-height <MM>' cannot be used with '--flat-width <MM>'"), "{stderr}");
}

#[test]
fn sizes_that_are_none_are_the_callers_fault() {
    let run = Run::new();
    for arguments in [
        ["section", "--stranded", "20/2.8"],
        ["section", "--stranded", "19/nan"],
        ["section", "--stranded", "19/-1"],
        ["section", "--solid", "inf"],
        ["section", "--solid", "1e9"],
        ["section", "--tube", "10x6"],
        ["section", "--bar", "40"],
        ["section", "--rope", "7x19/8.0"],
    ] {
        let stderr = run.stderr(&arguments, 2);
        assert!(stderr.len() > 20, "{arguments:?}: {stderr}");
    }
    let stderr = run.stderr(&["section", "--solid", "8", "--material", "coper-hard-drawn"], 2);
    assert!(stderr.contains("coper-hard-drawn"), "{stderr}");
}

#[test]
fn the_sketch_is_written_beside_the_answer() {
    let run = Run::new();
    run.command(&["section", "--stranded", "19/2.80", "--svg", "wire.svg"]).assert().success();
    let svg = std::fs::read_to_string(run.folder.path().join("wire.svg")).unwrap();
    assert!(svg.starts_with("<svg ") && svg.contains("<title>"), "{svg}");
}

#[test]
fn a_sketch_does_not_take_the_place_of_records() {
    let run = Run::new();
    let records = run.folder.path().join("content/parts/wedges.yaml");
    std::fs::create_dir_all(records.parent().unwrap()).unwrap();
    std::fs::write(&records, "number: W-1\n").unwrap();
    let stderr = run.stderr(&["section", "--solid", "8", "--svg", "content/parts/wedges.yaml"], 2);
    assert!(stderr.contains("content/parts/wedges.yaml: lies in a folder that is read, content"), "{stderr}");
    assert_eq!(std::fs::read_to_string(records).unwrap(), "number: W-1\n");
}

/// Whoever has the earlier file open keeps it whole: the new one is written beside it and then gets its name.
#[test]
fn a_sketch_is_replaced_whole_and_leaves_nothing_beside_it() {
    let run = Run::new();
    let at = |name: &str| run.folder.path().join(name);
    std::fs::write(at("wire.svg"), "earlier").unwrap();
    std::fs::hard_link(at("wire.svg"), at("kept.svg")).unwrap();
    run.command(&["section", "--solid", "8", "--svg", "wire.svg"]).assert().success();
    assert!(std::fs::read_to_string(at("wire.svg")).unwrap().starts_with("<svg "));
    assert_eq!(std::fs::read_to_string(at("kept.svg")).unwrap(), "earlier");
    std::fs::create_dir(at("taken")).unwrap();
    assert!(run.stderr(&["section", "--solid", "8", "--svg", "taken"], 2).contains("taken"));
    assert_eq!(std::fs::read_dir(run.folder.path()).unwrap().count(), 3);
}

#[cfg(unix)]
#[test]
fn a_sketch_goes_through_a_link_and_into_a_pipe() {
    let run = Run::new();
    let at = |name: &str| run.folder.path().join(name);
    std::fs::create_dir(at("content")).unwrap();
    std::fs::write(at("wire.svg"), "earlier").unwrap();
    std::os::unix::fs::symlink("wire.svg", at("link.svg")).unwrap();
    run.command(&["section", "--solid", "8", "--svg", "link.svg"]).assert().success();
    assert!(std::fs::symlink_metadata(at("link.svg")).unwrap().file_type().is_symlink());
    assert!(std::fs::read_to_string(at("wire.svg")).unwrap().starts_with("<svg "));
    let output = run.command(&["section", "--solid", "8", "--svg", "/dev/stdout"]).output().unwrap();
    let stdout = String::from_utf8(output.stdout).unwrap();
    assert!(
        output.status.success() && stdout.starts_with("<svg ") && stdout.contains("metal section"),
        "{stdout}"
    );
}

#[test]
fn a_solid_wire_from_the_command_line_wears_as_its_record_does() {
    let run = Run::new();
    run.command(&["start"]).assert().success();
    let record = "id: rod\nname: Rod\nduty: contact\nmaterial: copper-hard-drawn\nconstruction: { solid: { diameter_mm: 8 } }\n";
    std::fs::write(run.folder.path().join("content/conductors/rod.yaml"), record).unwrap();
    let built = ["section", "--solid", "8", "--material", "copper-hard-drawn", "--temperature", "80"];
    let answer = run.json(&[&built[..], &["--worn-height", "5", "--svg", "worn.svg"]].concat());
    // A circle of radius 4 mm less the segment 3 mm high: 16·π - (16·acos(1/4) - √15) = 33.0486 mm², chord 2·√15 mm.
    let worn = &answer["worn"];
    let expected = 16.0 * std::f64::consts::PI - (16.0 * 0.25_f64.acos() - 15.0_f64.sqrt());
    assert!((number(worn, "section_mm2") - expected).abs() < 1e-6, "{worn}");
    assert!((number(worn, "flat_width_mm") - 2.0 * 15.0_f64.sqrt()).abs() < 1e-6, "{worn}");
    let left = expected / (16.0 * std::f64::consts::PI);
    assert!((number(worn, "worn_percent") - 100.0 * (1.0 - left)).abs() < 1e-6, "{worn}");
    assert!((number(worn, "breaking_load_kN") / number(&answer, "breaking_load_kN") - left).abs() < 1e-9);
    for more in [&["--worn-height", "5"][..], &["--flat-width", "7.5"]] {
        let recorded = ["section", "--conductor", "rod", "--temperature", "80"];
        let (one, other) =
            (run.json(&[&built[..], more].concat()), run.json(&[&recorded[..], more].concat()));
        assert_eq!(one["worn"], other["worn"], "{more:?}");
    }
    let output = run.command(&built).args(["--worn-height", "5"]).output().unwrap();
    let text = String::from_utf8(output.stdout).unwrap();
    // 33.0486: no more is said to be left than there is.
    assert!(text.contains("section left") && text.contains("33.04 mm²"), "{text}");
    run.command(&built).args(["--svg", "new.svg"]).assert().success();
    let sketch = |name: &str| std::fs::read_to_string(run.folder.path().join(name)).unwrap();
    assert_ne!(sketch("worn.svg"), sketch("new.svg"));
}

#[test]
fn what_a_construction_does_not_have_is_refused_and_not_passed_over() {
    let run = Run::new();
    let rope = ["--rope", "7x19/8.0", "--core", "wsc"];
    let constructions =
        [&["--stranded", "19/2.80"][..], &["--tube", "100x5"], &["--bar", "40x10"], &rope, &["--solid", "8"]];
    for (index, built) in constructions.into_iter().enumerate() {
        for worn in [["--worn-height", "5"], ["--flat-width", "5"]].into_iter().filter(|_| index < 4) {
            let stderr = run.stderr(&[&["section"][..], built, &worn].concat(), 2);
            assert!(stderr.contains("no worn height") && stderr.contains("--worn-height"), "{stderr}");
        }
        for option in [["--core", "iwrc"], ["--grade", "1570"]].into_iter().filter(|_| index != 3) {
            let stderr = run.stderr(&[&["section"][..], built, &option].concat(), 2);
            assert!(stderr.contains(option[0]) && stderr.contains(built[0]), "{stderr}");
        }
        if index > 0 {
            let stderr =
                run.stderr(&[&["section"][..], built, &["--core-material", "steel-st1a"]].concat(), 2);
            assert!(stderr.contains("--core-material") && stderr.contains(built[0]), "{stderr}");
        }
    }
    let stderr =
        run.stderr(&["section", "--catalogue", &demo(), "--conductor", "rope-8", "--grade", "1570"], 2);
    assert!(stderr.contains("--grade"), "{stderr}");
}

/// In the words that a record with the same layers gets, which are kept with the finding's folder.
#[test]
fn a_layer_that_is_not_full_is_said_in_the_words_of_the_finding() {
    let run = Run::new();
    let folder = super::root().join("tests/findings/layer-not-full");
    let told = std::fs::read_to_string(folder.join("expected.txt")).unwrap();
    let told: Vec<&str> = told.lines().collect();
    let records = folder.display().to_string();
    let built = [("1,6,10/2.80", "wire-120"), ("8,16/3.45+7/2.68", "feeder-240")];
    for ((strands, id), finding) in built.into_iter().zip(told.chunks(4)) {
        let message = finding[0].rsplit_once(": ").unwrap().1;
        let detail = |line: &str, name: &str| line.trim().strip_prefix(name).unwrap().trim().to_owned();
        let (expected, help) = (detail(finding[2], "expected"), detail(finding[3], "help"));
        let whole = format!("{message}: {expected}; {help}");
        for asked in [&["--stranded", strands][..], &["--catalogue", &records, "--conductor", id]] {
            let arguments = [&["section"][..], asked].concat();
            assert_eq!(run.json(&arguments)["warnings"], serde_json::json!([whole]), "{asked:?}");
            assert!(run.stderr(&arguments, 0).contains(&format!("warning: {whole}")), "{asked:?}");
        }
    }
    // By hand: wires of diameter d lie on R = the radius inside + d/2; π/asin(d/2R) of them are full, where 0.5 % more go in.
    // The outer wires 3, 9, 15 lie on 5.745, 9.195, 12.645 mm: 10.3, 16.6, 22.96; the 4 and 12 on 2.8, 5.6 mm: 6, 12.4.
    let by_hand = [
        ("27/3.45+7/2.68", vec![(3, 10), (9, 16), (15, 23)]),
        ("1,4,12/2.8", vec![(4, 6)]),
        ("1,6,11/2.5", vec![]),
        ("19/2.80", vec![]),
    ];
    for (strands, rooms) in by_hand {
        let answer = run.json(&["section", "--stranded", strands]);
        let warnings = answer["warnings"].as_array().cloned().unwrap_or_default();
        assert_eq!(warnings.len(), rooms.len(), "{strands}: {warnings:?}");
        for (warning, (wires, full)) in warnings.iter().zip(rooms) {
            let words =
                format!("a layer of {wires} wires has room for {} more: {full} wires make", full - wires);
            assert!(warning.as_str().unwrap().starts_with(&words), "{strands}: {warning}");
        }
    }
}

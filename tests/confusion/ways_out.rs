//! What would remove hidden dangers, tried in earnest: each change is made in the records.

use super::{BODY, catalogue, cone, demo, fitting, strand};
use fittingcards::mixups::{Effect, design_fixes, design_fixes_to_json, find, without_design_fix};
use std::collections::BTreeSet;

const WIRES: [(&str, f64); 2] = [("w-140", 2.8), ("w-138", 2.76)];

/// Two conductors that one cone closes on as well as on the other; where it stands out is measured.
fn records(stand_out: f64) -> fittingcards::catalogue::Catalogue {
    let wires: String = WIRES.iter().map(|(id, wire)| strand(id, *wire, "bronze-2")).collect();
    let first = cone("C-1", 14.0, "")
        .replace("stand_out_at_bore_mm: 6.0", &format!("stand_out_at_bore_mm: {stand_out}"));
    let parts = BODY.to_owned() + &first + &cone("C-2", 14.1, "");
    let window = "stand_out: { seated_mm: { min: 3.0, max: 6.5 } }\n";
    let fittings = fitting("F-1", "w-138", "C-1", window) + &fitting("F-2", "w-140", "C-2", window);
    catalogue(&wires, &parts, &fittings)
}

/// On the thicker wire the cone stands out just as far as where it was made to: 2 mm off the window are
/// needed to be seen.
#[test]
fn a_longer_cone_shows_and_moves_its_own_window() {
    let before = records(6.0);
    let mixups = find(&before);
    let hidden = |mixups: &fittingcards::mixups::Mixups| {
        mixups.cases().any(|case| case.part.number == "C-1" && case.fitting.number == "F-2" && case.hidden)
    };
    assert!(hidden(&mixups));
    let fixes = design_fixes(&before, &mixups);
    let longer = fixes
        .iter()
        .filter(|fix| fix.change == "C-1" && fix.key == "geometry.collet.stand_out_at_bore_mm")
        .find(|fix| fix.effect == Effect::Shows && fix.moves["F-1"] > Default::default())
        .unwrap();
    assert!(longer.words(Default::default()).contains("F-1"));
    let json = design_fixes_to_json(&mixups, std::slice::from_ref(longer));
    let becomes = json["ways_out"][0]["change"]["becomes"].as_f64().unwrap();
    assert!((becomes - 8.5).abs() < 1e-9, "{becomes}");
    let after = records(becomes);
    assert!(!hidden(&find(&after)));
    assert!(
        find(&after).cases().filter(|case| case.right).all(|case| case.outcome.verdict.word() == "grips")
    );
    // One step less would not do.
    assert!(hidden(&find(&records(becomes - 0.5))));
}

#[test]
fn every_hidden_danger_of_the_demo_has_a_way_out_or_is_named() {
    let demo = demo();
    let mixups = find(demo);
    let fixes = design_fixes(demo, &mixups);
    let out: BTreeSet<(&str, &str)> = fixes.iter().map(|fix| (&*fix.part, &*fix.fitting)).collect();
    let none: BTreeSet<(&str, &str)> = without_design_fix(&mixups, &fixes)
        .into_iter()
        .map(|(_, case)| (&*case.part.number, &*case.fitting.number))
        .collect();
    assert!(out.is_disjoint(&none));
    let in_bodies = mixups.bodies.iter().flat_map(|body| &body.cases);
    assert_eq!(out.len() + none.len(), in_bodies.filter(|case| case.hidden).count());
}

//! What would remove hidden dangers, tried in earnest: each change is made in the records.

use super::{BODY, catalogue, cone, demo, fitting, strand};
use fittingcards::mixups::{Effect, design_fixes, design_fixes_to_json, find, without_design_fix};
use std::collections::BTreeSet;

const WIRES: [(&str, f64); 2] = [("w-140", 2.8), ("w-138", 2.76)];

/// Two conductors that one cone closes on as well as on the other.
fn records(bore: f64, stand_out: f64) -> fittingcards::catalogue::Catalogue {
    let wires: String = WIRES.iter().map(|(id, wire)| strand(id, *wire, "bronze-2")).collect();
    let first = cone("C-1", bore, "")
        .replace("stand_out_at_bore_mm: 6.0", &format!("stand_out_at_bore_mm: {stand_out}"));
    let parts = BODY.to_owned() + &first + &cone("C-2", 14.1, "");
    let fittings = fitting("F-1", "w-138", "C-1", "") + &fitting("F-2", "w-140", "C-2", "");
    catalogue(&wires, &parts, &fittings)
}

#[test]
fn a_change_that_is_made_removes_the_danger() {
    let before = records(14.0, 6.0);
    let mixups = find(&before);
    let hidden = |mixups: &fittingcards::mixups::Mixups| {
        mixups.cases().any(|case| case.part.number == "C-1" && case.fitting.number == "F-2" && case.hidden)
    };
    assert!(hidden(&mixups));
    let fixes = design_fixes(&before, &mixups);
    let bore = fixes.iter().find(|fix| fix.change == "C-1" && fix.key == "geometry.collet.bore_mm").unwrap();
    assert_eq!(bore.effect, Effect::Refuses);
    let json = design_fixes_to_json(&mixups, std::slice::from_ref(bore));
    let becomes = json["ways_out"][0]["change"]["becomes"].as_f64().unwrap();
    assert!(becomes < 14.0 * 0.995, "{becomes}");
    let after = records(becomes, 6.0);
    assert!(!hidden(&find(&after)));
    let grips =
        find(&after).cases().filter(|case| case.right).all(|case| case.outcome.verdict.word() == "grips");
    assert!(grips);
    // One step less would not do.
    assert!(hidden(&find(&records(becomes + 0.05, 6.0))));
}

#[test]
fn a_longer_cone_shows_and_moves_its_own_window() {
    let before = records(14.0, 6.0);
    let fixes = design_fixes(&before, &find(&before));
    let longer = fixes
        .iter()
        .find(|fix| fix.key == "geometry.collet.stand_out_at_bore_mm" && fix.effect == Effect::Shows)
        .unwrap();
    assert_eq!(longer.moves.keys().collect::<Vec<_>>(), ["F-1"]);
    assert!(longer.words(Default::default()).contains("F-1"));
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
    assert_eq!(out.len() + none.len(), mixups.cases().filter(|case| case.hidden).count());
}

//! What would remove hidden dangers, tried in earnest: each change is made in the records.

use super::{BODY, catalogue, cone, demo, fitting, strand};
use fittingcards::catalogue::{Catalogue, Conductor, Fitting};
use fittingcards::mixups::{
    BodyMixups, DangerPlace, Effect, design_fixes, design_fixes_to_json, find, without_design_fix,
};
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
    let out: BTreeSet<DangerPlace> = fixes.iter().map(|fix| fix.danger.clone()).collect();
    let none: BTreeSet<DangerPlace> = without_design_fix(&mixups, &fixes).into_iter().collect();
    assert!(out.is_disjoint(&none));
    let place =
        |body: &BodyMixups, wrong: &str, is_kit, fitting: &Fitting, conductor: &Conductor| DangerPlace {
            body: body.body.number.clone(),
            wrong: wrong.to_owned(),
            is_kit,
            fitting: fitting.number.clone(),
            conductor: conductor.id.clone(),
        };
    let hidden: BTreeSet<DangerPlace> = mixups
        .bodies
        .iter()
        .flat_map(|body| {
            let cases = body.cases.iter().filter(|case| case.hidden);
            let cases =
                cases.map(|case| place(body, &case.part.number, false, &case.fitting, &case.conductor));
            let kits = body.kits.iter().filter(|kit| kit.hidden && kit.parts.len() > 1);
            let kits = kits.map(|kit| place(body, &kit.kit.number, true, &kit.fitting, &kit.conductor));
            cases.chain(kits).collect::<Vec<_>>()
        })
        .collect();
    assert_eq!(out.union(&none).cloned().collect::<BTreeSet<_>>(), hidden);
    assert!(hidden.iter().any(|place| place.is_kit));
}

/// Two sockets and two cones that differ in their names alone, for wires of 12.5 and 12.75 mm; nothing stands out to be
/// measured. The first socket's throat is what it is.
fn kits(throat: f64) -> Catalogue {
    let wires = strand("w-125", 2.5, "copper-hard-drawn") + &strand("w-1275", 2.55, "copper-hard-drawn");
    let (mut parts, mut fittings) = (BODY.replace("half_angle_deg: 5", "half_angle_deg: 8"), String::new());
    for (nth, wire, throat) in [(1, "w-125", throat), (2, "w-1275", 14.5)] {
        parts += &format!(
            "---\nnumber: S-{nth}\nname: S-{nth}\nrole: socket\nmaterial: aluminium-bronze\ninterface: bore\n\
             geometry: {{ socket: {{ large_diameter_mm: 23.1, half_angle_deg: 8, length_mm: 36, \
             throat_diameter_mm: {throat}, travel_mm: 7 }} }}\n\
             ---\nnumber: C-{nth}\nname: C-{nth}\nrole: cone\nmaterial: bronze-soft\ninterface: seat\n\
             geometry: {{ spreading_cone: {{ large_diameter_mm: 16.4, half_angle_deg: 8, length_mm: 24, \
             hole_diameter_mm: 7.7, wires_through_hole: 7 }} }}\n"
        );
        fittings +=
            &fitting(&format!("F-{nth}"), wire, &format!("S-{nth}, C-{nth}"), "stand_out: { from: none }\n");
    }
    catalogue(&wires, &parts, &fittings)
}

/// The thinner wire's whole kit goes home on the thicker wire, unseen; its socket refuses it once its throat is less than
/// 12.75 mm wide. By hand: 14.5 mm less eighteen steps of 0.1 mm is the first below.
#[test]
fn a_kit_that_goes_in_unseen_has_a_way_out_that_holds_when_it_is_made() {
    let hidden = |catalogue: &Catalogue| {
        let mixups = find(catalogue);
        let kits = &mixups.body("B-1").unwrap().kits;
        let kit = kits.iter().find(|kit| kit.kit.number == "F-1" && kit.fitting.number == "F-2");
        kit.unwrap().hidden
    };
    let before = kits(14.5);
    assert!(hidden(&before));
    let mixups = find(&before);
    let fixes = design_fixes(&before, &mixups);
    let narrower = fixes
        .iter()
        .find(|fix| fix.danger.is_kit && fix.danger.wrong == "F-1" && fix.key.ends_with("throat_diameter_mm"))
        .unwrap();
    assert_eq!((narrower.effect, narrower.change.as_str()), (Effect::Refuses, "S-1"));
    assert_eq!(narrower.danger.words(), "kit of F-1 in F-2 on w-1275 (body B-1)");
    let json = design_fixes_to_json(&mixups, std::slice::from_ref(narrower));
    assert_eq!(json["ways_out"][0]["kit"], "F-1");
    let becomes = json["ways_out"][0]["change"]["becomes"].as_f64().unwrap();
    assert!((becomes - 12.7).abs() < 1e-9, "{becomes}");
    let after = kits(becomes);
    assert!(!hidden(&after));
    assert!(
        find(&after).cases().filter(|case| case.right).all(|case| case.outcome.verdict.word() == "grips")
    );
    // One step less would not do.
    assert!(hidden(&kits(becomes + 0.1)));
}

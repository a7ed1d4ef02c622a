//! Wrong wedges on contact wire that wears. Expected: z = (mouth − thickness − height)/tan 6°, worked by hand.

use super::catalogue;
use fittingcards::audit::{self, Context};
use fittingcards::catalogue::Catalogue;
use fittingcards::grip::Verdict;
use fittingcards::mixups::{
    Case, Closed, LineLoad, Mixups, SeenBy, Summary, closed_with, design_fixes, design_fixes_to_json, find,
    inside, to_json, words,
};
use fittingcards::units::{Length, Numerals};

/// Two wires in one body of mouth 27.0 mm and 60 mm of travel, whose wedges bear on the height.
fn shared(bears_on: &str, proof: &str, wear: &str) -> Catalogue {
    records(bears_on, proof, wear, 14.56)
}

/// The same, the wedge of the thin wire so thick.
fn records(bears_on: &str, proof: &str, wear: &str, thickness: f64) -> Catalogue {
    let wire = |id: &str, height: f64, wear: &str| {
        format!(
            "---\nid: {id}\nname: {id}\nduty: contact\nmaterial: copper-silver-0.1\nconstruction:\n  grooved: {{ \
             height_mm: {height}, width_mm: {height}, apex_width_mm: 6.8, apex_depth_mm: 4.5, fillet_mm: 0.4, \
             lower_flank_deg: 27, upper_flank_deg: 51{wear} }}\nstated: {{ breaking_load_kN: 40 }}\n"
        )
    };
    let wedge = |number: &str, thickness: f64, more: &str| {
        format!(
            "---\nnumber: {number}\nname: {number}\nrole: wedge\nmaterial: bronze-soft\ninterface: W\n{more}\
             geometry: {{ wedge: {{ thickness_mm: {thickness}, taper_deg: 6, length_mm: 80 }} }}\n"
        )
    };
    let body = format!(
        "number: B-1\nname: Body\nrole: body\nmaterial: aluminium-bronze\ngeometry: {{ wedge_body: {{ mouth_mm: 27.0, \
         taper_deg: 6, length_mm: 140, travel_mm: 60, bears_on: {bears_on} }} }}\n"
    );
    let fitting = |number: &str, wire: &str, wedge: &str| {
        format!(
            "---\nnumber: {number}\nname: {number}\nfamily: wedge-dead-end\nconductor: {wire}\nparts: [B-1, {wedge}]\n\
             stand_out: {{ from: wedge-end, seated_mm: {{ min: -8.5, max: -5.5 }} }}\n"
        )
    };
    catalogue(
        &(wire("thick", 13.2, wear) + &wire("thin", 11.7, "")),
        &(body + &wedge("W-13", 13.06, "") + &wedge("W-14", thickness, proof)),
        &(fitting("F-thick", "thick", "W-13") + &fitting("F-thin", "thin", "W-14")),
    )
}

const TO_9_5: &str = ", wear: { limit_percent: 20, basis: computed, stop_height_mm: 9.5 }";

fn case<'a>(mixups: &'a Mixups, part: &str, fitting: &str) -> &'a Case {
    mixups.cases().find(|case| case.part.number == part && case.fitting.number == fitting).unwrap()
}

fn close(found: Option<Length>, expected: f64) {
    let found = found.unwrap().mm();
    assert!((found - expected).abs() < 0.01, "{found} instead of {expected}");
}

/// On new wire it is (14.56 + 13.2 − 27.0)/tan 6° = 7.23 mm proud, seen by everybody; at 9.5 mm left it lies 27.97 mm deep,
/// seen too. Where 27 − 14.56 − h = 7.0·tan 6°, at 11.70 mm, it lies 7.0 mm deep, as the right one does on new wire.
#[test]
fn a_wedge_that_stands_proud_on_new_wire_goes_in_unseen_on_worn_wire() {
    let new = find(&shared("height", "", ""));
    let proud = case(&new, "W-14", "F-thick");
    assert_eq!(proud.outcome.verdict, Verdict::StandsProud);
    close(proud.outcome.stand_out, 7.23);
    assert!(proud.visible && proud.worn.is_none());

    let mixups = find(&shared("height", "", TO_9_5));
    let worn = case(&mixups, "W-14", "F-thick");
    assert!(worn.hidden && worn.danger && worn.seen_by == SeenBy::Nothing);
    assert_eq!((worn.outcome.verdict, worn.summary), (Verdict::Grips, Summary::NotProven));
    let wear = worn.worn.unwrap();
    assert_eq!(wear.when_new, Summary::StandsProud);
    close(Some(wear.height), 11.70);
    close(worn.outcome.stand_out, -7.0);
    // The right wedge lies (27 − 13.06 − 11.70)/tan 6° deep there.
    close(worn.stand_out_shift, -7.0 + 21.27);
}

#[test]
fn what_is_so_on_worn_wire_alone_says_so() {
    let mixups = find(&shared("height", "", TO_9_5));
    let worn = case(&mixups, "W-14", "F-thick");
    let numerals = Numerals::default();
    let told = words::happens(&worn.comes, numerals).replace('\u{a0}', " ");
    assert_eq!(
        told,
        "Fits, looks right, not proven. May let go under load. This is so on wire worn to 11.7 mm; on new wire: \
         stands proud."
    );
    let listed = words::summary(&worn.comes, &worn.fitting, &worn.conductor, numerals);
    assert_eq!(listed.replace('\u{a0}', " "), "on wire worn to 11.7 mm: fits, looks right, not proven");
    let json = to_json(&mixups);
    let told = json["bodies"][0]["cases"].as_array().unwrap();
    let told = told.iter().find(|case| case["part"] == "W-14" && case["fitting"] == "F-thick").unwrap();
    assert_eq!(told["when_new"], "stands proud");
    assert!((told["worn_to_mm"].as_f64().unwrap() - 11.70).abs() < 0.01);
    assert!(told["hidden"] == true && case(&mixups, "W-13", "F-thin").worn.is_none());
}

/// Where nothing but worn wire hides the wrong wedge, the audit asks for a mark and a witness all the same.
#[test]
fn what_is_hidden_on_worn_wire_alone_is_found() {
    let catalogue = shared("height", "", TO_9_5);
    let mixups = find(&catalogue);
    let findings = audit::check(Context { catalogue: &catalogue, mixups: &mixups });
    let found: Vec<String> =
        findings.into_iter().map(|finding| format!("{} {}", finding.code, finding.message)).collect();
    let on_worn_wire = |code: &str| {
        found.iter().any(|said| {
            said.starts_with(code) && said.replace('\u{a0}', " ").contains("W-14 (on wire worn to 11.7 mm)")
        })
    };
    assert!(
        on_worn_wire("hidden-mix-up-without-witness ") && on_worn_wire("hidden-mix-up-marks-alike "),
        "{found:?}"
    );
}

/// A wedge can stand anywhere between where it does on new wire and on wire worn to its stop.
#[test]
fn a_closed_fitting_on_worn_wire_can_hold_it_at_any_depth_between() {
    let mixups = find(&shared("height", "", TO_9_5));
    let read = |stand_out: f64| {
        let closed = Closed {
            body: "B-1",
            conductor: "thick",
            stand_out: Length::from_mm(stand_out),
            tolerance: Length::from_mm(0.5),
            state: LineLoad::Seated,
        };
        let answer = inside(&mixups, &closed).unwrap();
        answer.inside[..answer.agreeing].iter().map(|inside| inside.part.number.clone()).collect::<Vec<_>>()
    };
    assert_eq!(read(7.3), ["W-14"]);
    assert_eq!(read(-7.0), ["W-14", "W-13"], "the worst first");
    assert_eq!(read(-27.9), ["W-14"]);
    assert!(read(-30.0).is_empty() && read(9.0).is_empty());
    let right = closed_with(mixups.body("B-1").unwrap(), "thick").swap_remove(0);
    assert!(right.right && right.seated.unwrap().least == Some(right.seated.unwrap().most));
}

/// Bearing on the width, which wear leaves as it is, nothing changes.
#[test]
fn a_wedge_on_the_width_of_the_wire_does_not_see_wear() {
    let mixups = find(&shared("width", "", TO_9_5));
    assert!(mixups.cases().all(|case| case.worn.is_none()));
    assert!(case(&mixups, "W-14", "F-thick").visible);
}

/// 14.56 mm of wedge in a travel of 60 mm: what is proven on new wire and holds nothing on worn wire is no second right part.
#[test]
fn what_is_proven_on_new_wire_has_to_hold_on_worn_wire() {
    let proof = "proven_on: [{ conductor: thick, body: B-1, holding_load_kN: 40, report: R-1 }]\n";
    let records = |stop: &str| shared("height", proof, &TO_9_5.replace("9.5", stop));
    let holds = find(&records("9.5"));
    assert!(case(&holds, "W-14", "F-thick").proven, "27.9 mm deep at the last");
    // (27 − 14.56 − 6.0)/tan 6° = 61.3 mm, more than the travel.
    let slips = find(&records("6.0"));
    let found = case(&slips, "W-14", "F-thick");
    assert!(!found.proven && found.danger);
    assert_eq!(found.summary, Summary::HoldsNothing);
    close(found.worn.map(|worn| worn.height), 6.0);
}

/// What would remove the danger, tried in the records: on wire of every height, and not on new wire alone.
#[test]
fn a_way_out_holds_on_worn_wire_too() {
    let before = shared("height", "", TO_9_5);
    let mixups = find(&before);
    let fixes = design_fixes(&before, &mixups);
    let json = design_fixes_to_json(&mixups, &fixes);
    let changes = json["ways_out"].as_array().unwrap().iter().map(|way| &way["change"]);
    let of_wedge = changes.filter(|to| to["part"] == "W-14" && to["field"] == "geometry.wedge.thickness_mm");
    let tried: Vec<f64> = of_wedge.map(|to| to["becomes"].as_f64().unwrap()).collect();
    assert!(!tried.is_empty());
    for thickness in tried {
        let after = find(&records("height", "", TO_9_5, thickness));
        assert!(!case(&after, "W-14", "F-thick").hidden, "{thickness}");
    }
}

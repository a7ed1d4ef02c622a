//! From a closed fitting to the gripping parts that can be in it.

use super::{BODY, catalogue, cone, demo, fitting, strand};
use fittingcards::mixups::{Closed, ClosedAnswer, LineLoad, PossibleInside, find, inside, inside_to_json};
use fittingcards::units::Length;
use std::sync::Arc;

fn closed(stand_out: f64) -> Closed<'static> {
    let (body, conductor) = ("ST-4101", "messenger-95");
    let (stand_out, tolerance) = (Length::from_mm(stand_out), Length::from_mm(0.5));
    Closed { body, conductor, stand_out, tolerance, state: LineLoad::Seated }
}

fn fitting_it(answer: &ClosedAnswer) -> &[PossibleInside] {
    &answer.inside[..answer.agreeing]
}

#[test]
fn a_low_stand_out_points_at_the_wrong_cone() {
    let mixups = find(demo());
    let found = inside(&mixups, &closed(0.5)).unwrap();
    assert!(!fitting_it(&found)[0].right);
    let ruled_out = &found.inside[found.agreeing..];
    assert!(ruled_out.iter().any(|part| part.right && part.part.number == "ST-4111"));
}

#[test]
fn a_right_stand_out_does_not_rule_out_the_hidden_one() {
    let mixups = find(demo());
    let found = inside(&mixups, &closed(4.2)).unwrap();
    let fits: Vec<&str> = fitting_it(&found).iter().map(|part| part.part.number.as_str()).collect();
    assert!(fits.contains(&"ST-4111") && fits.contains(&"ST-4131"), "{fits:?}");
    let json = inside_to_json(&found, &closed(4.2));
    let interval = json["inside"][0]["interval_mm"].as_array().unwrap();
    assert!(interval[0].as_f64() <= interval[1].as_f64());
}

/// Right cone of the demo: 6.0 − 0.3/(2·tan 5°) = 4.29 mm, ± 0.15/(2·tan 5°) = 0.86 mm by the tolerances of bore and
/// conductor, drawn in by at most the stated 2.0 mm: down to 1.43 mm.
#[test]
fn line_tension_draws_a_part_in_no_further_than_is_stated() {
    let mixups = find(demo());
    let fits = |stand_out: f64| {
        let answer = inside(&mixups, &Closed { state: LineLoad::Tensioned, ..closed(stand_out) }).unwrap();
        fitting_it(&answer).iter().any(|part| part.right)
    };
    assert!(fits(1.0), "within 0.5 mm of the reading");
    assert!(!fits(0.9));
}

/// The demo's windows are 3.0 to 5.5 mm seated, 2.0 to 5.0 mm tensioned: drawn in by up to 3.5 mm where nothing is stated.
#[test]
fn line_tension_draws_a_part_in_until_its_slits_are_shut() {
    let mut catalogue = demo().clone();
    for fitting in catalogue.fittings.values_mut() {
        if let Some(stand_out) = &mut Arc::make_mut(fitting).stand_out {
            stand_out.draw_in_max = None;
        }
    }
    let mixups = find(&catalogue);
    let fits = |stand_out: f64, state: LineLoad| {
        let answer = inside(&mixups, &Closed { state, ..closed(stand_out) }).unwrap();
        fitting_it(&answer).iter().any(|part| part.right)
    };
    // Right cone: 6.0 − 0.3/(2·tan 5°) = 4.29 mm ± 0.29; slits shut at 6.0 − 0.955/(2·tan 5°) = 0.54 mm.
    assert!(fits(4.2, LineLoad::Seated) && !fits(2.0, LineLoad::Seated));
    assert!(fits(2.0, LineLoad::Tensioned) && fits(2.0, LineLoad::Unknown));
    assert!(fits(0.1, LineLoad::Tensioned), "0.5 mm deeper than slits allow, within the reading");
    assert!(!fits(-0.1, LineLoad::Tensioned));
}

#[test]
fn where_nothing_fits_nobody_is_sent_to_open_it() {
    let mixups = find(demo());
    let far = closed(40.0);
    let json = inside_to_json(&inside(&mixups, &far).unwrap(), &far);
    let remark = json["remarks"][0].as_str().unwrap();
    assert!(
        remark.contains("keep clear") && remark.contains("puller first") && remark.contains("Do not open")
    );
}

#[test]
fn what_can_not_be_answered_says_what_there_is() {
    let mixups = find(demo());
    let no_body = Closed { body: "X-1", ..closed(1.0) };
    assert!(inside(&mixups, &no_body).unwrap_err().to_string().contains("X-1"));
    let no_wire = Closed { conductor: "rope-8", ..closed(1.0) };
    assert!(inside(&mixups, &no_wire).unwrap_err().to_string().contains("messenger-95"));
    assert!(inside(&mixups, &closed(f64::NAN)).is_err());
}

/// What is measured under a screw is another length: no part is ruled out by it, and the right one never stands alone.
#[test]
fn a_gap_under_a_screw_rules_nothing_out() {
    let window = "stand_out: { from: screw-gap, seated_mm: { min: 20, max: 25 } }\n";
    let parts = BODY.to_owned() + &cone("C-1", 14.3, "") + &cone("C-2", 12.8, "");
    let fittings = fitting("F-1", "w-140", "C-1", window) + &fitting("F-2", "w-125", "C-2", window);
    let records =
        catalogue(&(strand("w-140", 2.8, "bronze-2") + &strand("w-125", 2.5, "bronze-1")), &parts, &fittings);
    let mixups = find(&records);
    for read in [0.5, 4.3, 22.0] {
        let closed = Closed { body: "B-1", conductor: "w-125", ..closed(read) };
        let found = inside(&mixups, &closed).unwrap();
        let parts: Vec<&str> = fitting_it(&found).iter().map(|inside| inside.part.number.as_str()).collect();
        assert_eq!(parts, ["C-1", "C-2"], "at {read} mm");
        assert!(found.remark().contains("it can be a wrong part"));
    }
}

/// ST-4130 by its record: seated 6.5 to 9.0 mm, tensioned 5.5 to 8.5 mm. A right part that stands otherwise is no go, whatever
/// a reading may be off by.
#[test]
fn a_right_part_outside_its_window_is_no_go() {
    let mixups = find(demo());
    let remarks = |mm: f64, state: LineLoad| {
        let closed =
            Closed { conductor: "messenger-150", state, stand_out: Length::from_mm(mm), ..closed(0.0) };
        let answer = inside(&mixups, &closed).unwrap();
        assert!(fitting_it(&answer).iter().any(|part| part.right), "{mm} {state:?}");
        let said = inside_to_json(&answer, &closed)["remarks"].to_string();
        assert_eq!(said.contains("no go. Stop, do not loosen"), !answer.remarks.is_empty(), "{said}");
        !answer.remarks.is_empty()
    };
    for (mm, state, is_no_go) in [
        (8.5, LineLoad::Tensioned, false),
        (5.5, LineLoad::Tensioned, false),
        (5.4, LineLoad::Tensioned, true),
        (4.5, LineLoad::Tensioned, true),
        (6.5, LineLoad::Seated, false),
        (6.45, LineLoad::Seated, true),
        (6.45, LineLoad::Unknown, false),
        (5.4, LineLoad::Unknown, true),
    ] {
        assert_eq!(remarks(mm, state), is_no_go, "{mm} {state:?}");
    }
}

/// The right part of a fitting that is not to be used is no all-clear.
#[test]
fn a_right_part_of_a_fitting_out_of_use_says_so() {
    for (more, said) in [
        ("status: on-hold\n", "its fitting is on hold: stop until told"),
        (
            "status: withdrawn\nin_service: stop-now\n",
            "fittings of this kind in the line are to be stopped now",
        ),
        ("", ""),
    ] {
        let parts = BODY.to_owned() + &cone("C-1", 14.3, "");
        let catalogue = catalogue(&strand("a", 2.80, "bronze-2"), &parts, &fitting("F-1", "a", "C-1", more));
        let conductor = &catalogue.fittings["F-1"].conductors[0].id;
        let mixups = find(&catalogue);
        let right = mixups.bodies[0].cases.iter().find(|case| case.comes.right).unwrap();
        let stand_out = right.comes.outcome.stand_out.unwrap();
        let closed = Closed { body: &mixups.bodies[0].body.number, conductor, stand_out, ..closed(0.0) };
        let answer = inside(&mixups, &closed).unwrap();
        let remarks = answer.remarks.iter().copied().collect::<Vec<_>>().join("; ");
        assert!(remarks.contains(said), "{more}: {remarks}");
        assert_eq!(more.is_empty(), !remarks.contains("its fitting is"), "{more}: {remarks}");
    }
}

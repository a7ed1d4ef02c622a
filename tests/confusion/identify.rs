//! From readings to conductors.

use super::{catalogue, demo, strand};
use fittingcards::mixups::{Identified, Readings, Scratch, Shape, identify};
use fittingcards::section::Magnetic;
use fittingcards::units::Length;

fn readings(diameters: &[f64]) -> Readings {
    Readings { diameters: diameters.iter().map(|mm| Length::from_mm(*mm)).collect(), ..Readings::default() }
}

fn ids(found: &Identified) -> Vec<&str> {
    found.candidates.iter().map(|candidate| candidate.conductor.id.as_str()).collect()
}

#[test]
fn copper_and_bronze_of_one_size_remain_and_say_so() {
    let found = identify(demo(), &readings(&[14.0])).unwrap();
    assert_eq!(ids(&found), ["messenger-120", "messenger-cu-120"]);
    for candidate in &found.candidates {
        assert!(!candidate.fittings.is_empty());
        assert_eq!(candidate.tell_apart.len(), 1);
        assert!(candidate.tell_apart[0].contains("can't be settled by hand"), "{:?}", candidate.tell_apart);
    }
}

#[test]
fn the_nearest_comes_first_and_counts_tell_it_apart() {
    let wires = strand("a", 2.80, "bronze-2")
        + "---\nid: b\nname: b\nduty: feeder\nmaterial: bronze-2\n\
           construction: { stranded: { wires: 37, wire_diameter_mm: 2.01 } }\n";
    let catalogue = catalogue(&wires, "", "");
    let found = identify(&catalogue, &readings(&[14.05, 14.09])).unwrap();
    assert_eq!(ids(&found), ["b", "a"]);
    assert_eq!(
        found.candidates[1].tell_apart[0].split("; ").next().unwrap(),
        "from b: wires in the outer layer: 12, not 18"
    );
    let counted = Readings { outer_wires: Some(12), ..readings(&[14.05]) };
    assert_eq!(ids(&identify(&catalogue, &counted).unwrap()), ["a"]);
    let json = identify(&catalogue, &readings(&[14.1])).unwrap().to_json();
    assert_eq!(json["candidates"][1]["difference_mm"], 0.1);
}

#[test]
fn magnet_scratch_and_shape_exclude() {
    let catalogue = demo();
    let narrowed = |more: Readings| identify(catalogue, &more).unwrap().candidates.len();
    let by = readings(&[14.0]);
    assert_eq!(narrowed(Readings { scratch: Some(Scratch::Copper), ..by.clone() }), 2);
    assert_eq!(narrowed(Readings { scratch: Some(Scratch::Grey), ..by.clone() }), 0);
    assert_eq!(narrowed(Readings { shape: Some(Shape::Grooved), ..by.clone() }), 0);
    assert_eq!(narrowed(Readings { magnetic: Some(Magnetic::Yes), ..by }), 0);
}

#[test]
fn a_worn_contact_wire_is_known_by_its_width() {
    let catalogue = demo();
    let wire = &catalogue.conductors["contact-120"];
    let width = wire.section.overall_diameter.mm();
    let found = identify(catalogue, &readings(&[width, width - 2.5])).unwrap();
    assert!(ids(&found).contains(&"contact-120"));
    assert_eq!(found.remarks.len(), 1, "{:?}", found.remarks);
}

/// One reading, and nobody said what it looks like: a contact wire that is worn so far is not forgotten. Between new (12.85
/// mm) and half of that; not where it is said to be round, nor with a second reading.
#[test]
fn one_reading_without_a_shape_tells_of_worn_contact_wires() {
    let told = |readings: &Readings| {
        let found = identify(demo(), readings).unwrap();
        let worn = found.remarks.iter().filter(|remark| remark.starts_with("if it is grooved, it can be"));
        worn.cloned().collect::<Vec<String>>()
    };
    let wires = |sizes: &[f64]| told(&readings(sizes));
    assert!(wires(&[10.0]).iter().any(|said| said.contains("Contact wire 120")), "{:?}", wires(&[10.0]));
    assert_eq!(wires(&[10.0]).len(), 2, "both contact wires of the demo");
    assert_eq!(wires(&[12.3]).len(), 1, "thicker than the smaller one was");
    for none in [&[14.0][..], &[5.0], &[10.0, 10.1]] {
        assert_eq!(wires(none), [""; 0], "{none:?}");
    }
    let round = Readings { shape: Some(Shape::Round), ..readings(&[10.0]) };
    assert_eq!(told(&round), [""; 0]);
}

/// The stop height of contact-120 is 9.2 mm by its record; a wire that is worn further is that wire all the same.
#[test]
fn a_wire_worn_past_its_stop_is_told_to_stop() {
    let grooved = |sizes: &[f64]| Readings { shape: Some(Shape::Grooved), ..readings(sizes) };
    for sizes in [&[8.8][..], &[12.85, 8.8]] {
        let found = identify(demo(), &grooved(sizes)).unwrap();
        let past = found.candidates.iter().find(|candidate| candidate.conductor.id == "contact-120").unwrap();
        assert!(
            past.remarks.iter().all(|said| said.contains("past its stop height: stop")),
            "{:?}",
            past.remarks
        );
    }
    assert!(!ids(&identify(demo(), &grooved(&[5.5])).unwrap()).contains(&"contact-120"), "less than half");
}

/// A grooved wire is one piece, whatever its diameter.
#[test]
fn counted_wires_rule_out_what_has_none() {
    for counted in [
        Readings { wires: Some(19), ..readings(&[12.85]) },
        Readings { outer_wires: Some(12), ..readings(&[12.85]) },
    ] {
        assert!(!ids(&identify(demo(), &counted).unwrap()).contains(&"contact-120"), "{counted:?}");
    }
    let one = Readings { wires: Some(1), ..readings(&[12.85]) };
    assert!(ids(&identify(demo(), &one).unwrap()).contains(&"contact-120"));
}

/// The mean of 9.0 and 16.0 mm is 12.5 mm, which is the diameter of messenger-95 and of neither reading.
#[test]
fn readings_far_apart_are_no_conductor_of_their_mean() {
    let found = identify(demo(), &readings(&[9.0, 16.0])).unwrap();
    assert!(found.candidates.is_empty(), "{:?}", ids(&found));
    assert_eq!(found.remarks.len(), 2, "{:?}", found.remarks);
    assert!(
        ids(&identify(demo(), &readings(&[12.0, 13.0])).unwrap()).contains(&"messenger-95"),
        "a crushed end"
    );
}

#[test]
fn nothing_that_agrees_is_said_plainly() {
    let found = identify(demo(), &readings(&[77.0])).unwrap();
    assert!(found.candidates.is_empty());
    assert!(found.to_json()["remarks"][0].as_str().unwrap().contains("stop"));
}

#[test]
fn readings_beyond_reason_are_refused() {
    let demo = demo();
    for bad in
        [vec![], vec![0.0], vec![-4.0], vec![f64::NAN], vec![f64::INFINITY], vec![1e6], vec![1.0, 2.0, 3.0]]
    {
        assert!(identify(demo, &readings(&bad)).is_err(), "{bad:?}");
    }
    let zero = Readings { wires: Some(0), ..readings(&[14.0]) };
    assert!(identify(demo, &zero).is_err());
    let negative = Readings { tolerance: Length::from_mm(-1.0), ..readings(&[14.0]) };
    assert!(identify(demo, &negative).is_err());
}

/// A tube is round where its end is not seen. A bar has two sides, and nobody reads the circle round it.
#[test]
fn tubes_and_bars_are_found_by_what_a_caliper_reads() {
    let record = |id: &str, construction: &str| {
        format!(
            "id: {id}\nname: {id}\nduty: feeder\nmaterial: copper-hard-drawn\nconstruction: {construction}\n"
        )
    };
    let profiles = record("pipe", "{ tube: { outside_diameter_mm: 50, wall_mm: 5 } }")
        + "---\n"
        + &record("flat", "{ bar: { width_mm: 40, thickness_mm: 10, corner_radius_mm: 1 } }");
    let catalogue = catalogue(&profiles, "", "");
    let found = |diameters: &[f64], shape| {
        ids(&identify(&catalogue, &Readings { shape, ..readings(diameters) }).unwrap()).join(" ")
    };
    assert_eq!(found(&[50.0], Some(Shape::Round)), "pipe");
    assert_eq!(found(&[50.0], Some(Shape::Tube)), "pipe");
    assert_eq!(found(&[50.0], Some(Shape::Bar)), "");
    for sides in [&[40.05, 10.0][..], &[10.0, 39.95], &[40.0], &[10.0]] {
        assert_eq!(found(sides, None), "flat", "{sides:?}");
    }
    for sides in [&[41.23][..], &[40.0, 40.0], &[10.0, 10.0], &[40.0, 12.0]] {
        assert_eq!(found(sides, None), "", "{sides:?}");
    }
    let one = identify(&catalogue, &readings(&[40.02])).unwrap().to_json();
    assert_eq!(one["candidates"][0]["difference_mm"], 0.02, "{one}");
    assert!(one.to_string().contains("measure its thickness too"), "{one}");
}

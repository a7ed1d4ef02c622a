//! The rules at their limits, in their order, and with measurements missing.

use super::*;
use crate::units::{Angle, Length, Range};

fn mm(value: f64) -> Length {
    Length::from_mm(value)
}

fn cone(bore: f64) -> Collet {
    Collet {
        bore: Some(mm(bore)),
        slits: Some(3),
        slit_width: Some(mm(1.0)),
        half_angle: Some(Angle::from_degrees(5.0)),
        stand_out_at_bore: Some(mm(6.0)),
        ..Collet::default()
    }
}

fn on(cone: &Collet, across: f64, tolerance: f64) -> Outcome {
    let held = HeldConductor::solid(mm(across)).with_tolerances(Some(mm(tolerance)), None);
    collet(cone, None, &held, GripLimits::default())
}

fn verdict(cone: &Collet, across: f64, tolerance: f64) -> Verdict {
    on(cone, across, tolerance).verdict
}

#[test]
fn collet_from_too_tight_to_too_loose() {
    // Closure 0.955 mm, reserve 0.3 mm: grips from a clearance of 0 to 0.655 mm.
    assert_eq!(verdict(&cone(13.92), 14.0, 0.0), Verdict::WillNotEnter);
    assert_eq!(verdict(&cone(13.94), 14.0, 0.0), Verdict::StandsProud);
    assert_eq!(verdict(&cone(14.0), 14.0, 0.0), Verdict::Grips);
    assert_eq!(verdict(&cone(14.65), 14.0, 0.0), Verdict::Grips);
    assert_eq!(verdict(&cone(14.66), 14.0, 0.0), Verdict::Marginal);
    assert_eq!(verdict(&cone(14.95), 14.0, 0.0), Verdict::Marginal);
    assert_eq!(verdict(&cone(14.96), 14.0, 0.0), Verdict::ClosesWithoutGripping);
}

#[test]
fn tolerances_make_marginal() {
    assert_eq!(verdict(&cone(14.3), 14.0, 0.3), Verdict::Grips);
    assert_eq!(verdict(&cone(14.3), 14.0, 0.31), Verdict::Marginal);
    assert_eq!(verdict(&cone(13.9), 14.0, 0.1), Verdict::Marginal);
    let loose = Collet { bore_tolerance: Some(mm(0.05)), ..cone(15.0) };
    assert_eq!(verdict(&loose, 14.0, 0.0), Verdict::Marginal);
    assert_eq!(verdict(&cone(15.0), 14.0, 0.0), Verdict::ClosesWithoutGripping);
}

#[test]
fn loose_jaws_always_go_in() {
    let jaws = Collet { pieces: Some(2), ..cone(12.0) };
    assert_eq!(verdict(&jaws, 14.0, 0.0), Verdict::StandsProud);
}

#[test]
fn tip_contact_comes_before_what_the_bore_does() {
    let body = Body { half_angle: Some(Angle::from_degrees(5.3)), ..Body::default() };
    let judged = |bore: f64| {
        collet(&cone(bore), Some(&body), &HeldConductor::solid(mm(14.0)), GripLimits::default()).verdict
    };
    assert_eq!(judged(14.3), Verdict::TipContact);
    assert_eq!(judged(13.0), Verdict::WillNotEnter);
}

#[test]
fn stand_out_stops_where_the_slits_are_shut() {
    let tight = on(&cone(12.5), 12.5, 0.0).stand_out.unwrap();
    let shut = on(&cone(14.0), 12.5, 0.0);
    assert_eq!(format!("{:.2}", (tight - shut.stand_out.unwrap()).mm()), "5.46");
    assert_eq!(shut.clearance, Some(mm(1.5)));
    assert_eq!(format!("{:.3}", shut.closure.unwrap().mm()), "0.955");
    let interval = on(&cone(14.3), 14.0, 0.1).stand_out_interval.unwrap();
    let give = 0.1 / (2.0 * 5.0_f64.to_radians().tan());
    assert!((interval.width().mm() - 2.0 * give).abs() < 1e-9);
}

#[test]
fn what_a_collet_lacks_is_named_and_stops_the_rules() {
    assert_eq!(on(&Collet::default(), 14.0, 0.0).missing, ["geometry.collet.bore_mm"]);
    let bare = Collet { slits: None, slit_width: None, ..cone(14.3) };
    let outcome = on(&bare, 14.0, 0.0);
    assert_eq!(outcome.missing, ["geometry.collet.slits", "geometry.collet.slit_width_mm"]);
    assert_eq!((outcome.stand_out, outcome.clearance.is_some()), (None, true));
    // What needs no slits is decided without them.
    assert_eq!(on(&Collet { bore: Some(mm(13.95)), ..bare }, 14.0, 0.0).verdict, Verdict::StandsProud);
}

fn strand(wire: f64) -> HeldConductor {
    let layer = |wires: u32, ring: f64| crate::section::Layer {
        wires,
        pitch_radius: mm(ring * wire),
        wire_diameter: mm(wire),
        role: crate::section::LayerRole::Outer,
    };
    let make = Make::Layers(vec![layer(1, 0.0), layer(6, 1.0), layer(12, 2.0)]);
    HeldConductor { make, ..HeldConductor::solid(mm(5.0 * wire)) }
}

fn spreading(hole: f64) -> SpreadingCone {
    SpreadingCone {
        large_diameter: Some(mm(17.0)),
        half_angle: Some(Angle::from_degrees(8.0)),
        hole_diameter: Some(mm(hole)),
        ..SpreadingCone::default()
    }
}

fn socket(large: f64) -> Socket {
    Socket {
        large_diameter: Some(mm(large)),
        half_angle: Some(Angle::from_degrees(8.0)),
        throat_diameter: Some(mm(14.5)),
        travel: Some(mm(8.0)),
        ..Socket::default()
    }
}

#[test]
fn spreading_cone_rule_by_rule() {
    let held = strand(2.8);
    let judged = |cone: &SpreadingCone, socket: &Socket| spreading_cone(cone, Some(socket), &held);
    assert_eq!(
        judged(&spreading(8.6), &Socket { throat_diameter: Some(mm(13.9)), ..socket(24.6) }).verdict,
        Verdict::WillNotEnter
    );
    assert_eq!(judged(&spreading(2.7), &socket(24.6)).verdict, Verdict::WillNotEnter);
    let blunt = Socket { half_angle: Some(Angle::from_degrees(9.0)), ..socket(24.6) };
    assert_eq!(judged(&spreading(8.6), &blunt).verdict, Verdict::TipContact);
    assert_eq!(judged(&spreading(14.0), &socket(24.6)).verdict, Verdict::ClosesWithoutGripping);
    assert_eq!(judged(&spreading(8.6), &socket(25.2)).verdict, Verdict::ClosesWithoutGripping);
    assert_eq!(judged(&spreading(8.6), &socket(22.0)).verdict, Verdict::StandsProud);
    let slit = SpreadingCone { slits: Some(2), slit_width: Some(mm(0.2)), ..spreading(8.6) };
    assert_eq!(judged(&slit, &socket(24.0)).verdict, Verdict::CoreNotHeld);
    let right = judged(&spreading(8.6), &socket(24.0));
    assert_eq!((right.verdict, right.wires_through_hole), (Verdict::Grips, Some(7)));
    assert!(
        (right.depth.unwrap().mm() - (3.5 - 2.8 / 8_f64.to_radians().cos()) / 8_f64.to_radians().tan()).abs()
            < 1e-9
    );
    assert_eq!(right.stand_out, right.depth.map(|depth| -depth));
}

#[test]
fn spreading_cone_names_what_it_lacks() {
    let held = strand(2.8);
    let bare = spreading_cone(&SpreadingCone::default(), None, &held);
    assert_eq!(
        bare.missing,
        ["geometry.spreading_cone.hole_diameter_mm", "geometry.socket.throat_diameter_mm"]
    );
    let no_travel = spreading_cone(&spreading(8.6), Some(&Socket { travel: None, ..socket(24.0) }), &held);
    assert_eq!(no_travel.missing, ["geometry.socket.travel_mm"]);
    assert!(no_travel.depth.is_some() && no_travel.stand_out.is_none());
    let rope = HeldConductor { make: Make::StrandedRope, ..HeldConductor::solid(mm(8.0)) };
    assert_eq!(spreading_cone(&spreading(8.6), Some(&socket(24.0)), &rope).verdict, Verdict::Unknown);
}

#[test]
fn wedge_takes_the_side_that_it_bears_on() {
    let wire = HeldConductor {
        make: Make::Grooved { height: mm(10.0), width: mm(12.9) },
        ..HeldConductor::solid(mm(12.9))
    };
    let six = Some(Angle::from_degrees(6.0));
    let part = Wedge { thickness: Some(mm(13.4)), taper: six, length: Some(mm(80.0)) };
    let body = |bears_on| WedgeBody {
        mouth: Some(mm(27.0)),
        taper: six,
        travel: Some(mm(12.0)),
        bears_on,
        length: None,
    };
    let judged = |bears_on| wedge(&part, Some(&body(bears_on)), &wire);
    assert_eq!(judged(Some(BearsOn::Width)).verdict, Verdict::Grips);
    assert_eq!(judged(Some(BearsOn::Height)).verdict, Verdict::ClosesWithoutGripping);
    assert_eq!(judged(None).missing, ["geometry.wedge_body.bears_on"]);
}

#[test]
fn worn_wire_keeps_its_width_until_its_middle() {
    let wire = HeldConductor {
        make: Make::Grooved { height: mm(12.0), width: mm(12.0) },
        ..HeldConductor::solid(mm(12.0))
    };
    let worn = |remaining: f64| wire.worn_to(mm(remaining)).map(|held| held.make);
    assert_eq!(worn(9.0), Some(Make::Grooved { height: mm(9.0), width: mm(12.0) }));
    let Some(Make::Grooved { width, .. }) = worn(3.0) else { panic!() };
    assert!((width.mm() - 2.0 * 27.0_f64.sqrt()).abs() < 1e-9);
    assert_eq!(worn(12.0), None);
    assert_eq!(HeldConductor::solid(mm(8.0)).worn_to(mm(4.0)), None);
}

#[test]
fn screwed_grips_are_for_ropes_of_several_strands() {
    let grip = RopeGrip { rope: Some(Range::between(mm(7.5), mm(8.5))), spacing: None };
    let rope = |across: f64, make: Make| {
        rope_grip(&grip, &HeldConductor { make, ..HeldConductor::solid(mm(across)) }).verdict
    };
    assert_eq!(rope(8.0, Make::StrandedRope), Verdict::Grips);
    assert_eq!(rope(8.0, Make::SingleStrandRope), Verdict::Marginal);
    assert_eq!(rope(7.0, Make::StrandedRope), Verdict::ClosesWithoutGripping);
    assert_eq!(rope(9.0, Make::StrandedRope), Verdict::StandsProud);
}

#[test]
fn every_measurement_that_a_rule_waits_for_is_in_the_table_with_words() {
    let rules = [
        include_str!("collet.rs"),
        include_str!("pressed.rs"),
        include_str!("rope.rs"),
        include_str!("spreading_cone.rs"),
        include_str!("wedge.rs"),
    ];
    let paths = rules.iter().flat_map(|text| text.split('"')).filter(|text| text.starts_with("geometry."));
    for path in paths {
        assert!(measurement(path).is_some_and(|measurement| measurement.wanted.is_some()), "{path}");
    }
    assert_eq!(measurement("geometry.collet.groove_mm"), None);
}

#[test]
fn a_part_tells_its_measurements_by_key_and_takes_others() {
    let cone = Geometry::Collet(cone(14.0));
    assert_eq!(cone.measured("bore_mm"), Some(Measured::Length(mm(14.0))));
    assert_eq!(cone.measured("pieces"), None);
    let adjusted = cone.adjusted("bore_mm", 13.5).adjusted("slits", 4.0);
    assert_eq!(adjusted.measured("bore_mm"), Some(Measured::Length(mm(13.5))));
    assert_eq!(adjusted.measured("slits"), Some(Measured::Count(4)));
    let tube = Geometry::Sleeve(Ferrule { die: Some("8".into()), ..Ferrule::default() });
    assert_eq!(tube.adjusted("die", 9.0), tube);
    assert_eq!(tube.key(), "sleeve");
}

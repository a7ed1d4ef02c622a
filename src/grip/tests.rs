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
    // Closure 0.955 mm, reserve 0.3 mm: grips from a clearance of 0 to 0.655 mm; goes in by force as long
    // as no slit opens by more than its own width.
    assert_eq!(verdict(&cone(13.04), 14.0, 0.0), Verdict::WillNotEnter);
    assert_eq!(verdict(&cone(13.05), 14.0, 0.0), Verdict::StandsProud);
    assert_eq!(verdict(&cone(13.94), 14.0, 0.0), Verdict::StandsProud);
    assert!(on(&cone(13.94), 14.0, 0.0).forced && !on(&cone(14.0), 14.0, 0.0).forced);
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
    let wide = Collet { slit_width_tolerance: Some(mm(0.05)), ..cone(15.0) };
    assert_eq!(verdict(&wide, 14.0, 0.0), Verdict::Marginal);
    assert_eq!(verdict(&cone(15.0), 14.0, 0.0), Verdict::ClosesWithoutGripping);
}

#[test]
fn loose_jaws_always_go_in() {
    let jaws = on(&Collet { pieces: Some(2), ..cone(12.0) }, 14.0, 0.0);
    assert_eq!((jaws.verdict, jaws.forced), (Verdict::StandsProud, false));
}

#[test]
fn a_cone_without_slits_can_be_forced_by_half_a_percent() {
    let whole = |bore: f64| Collet { slits: Some(0), slit_width: None, ..cone(bore) };
    assert_eq!(verdict(&whole(13.92), 14.0, 0.0), Verdict::WillNotEnter);
    assert_eq!(verdict(&whole(13.94), 14.0, 0.0), Verdict::StandsProud);
    assert_eq!(verdict(&whole(14.01), 14.0, 0.0), Verdict::ClosesWithoutGripping);
    let unstated = Collet { slits: None, slit_width: None, ..cone(13.92) };
    assert_eq!(on(&unstated, 14.0, 0.0).missing, ["geometry.collet.slits", "geometry.collet.slit_width_mm"]);
}

#[test]
fn tip_contact_comes_before_what_the_bore_does() {
    let body = Body { half_angle: Some(Angle::from_degrees(5.3)), ..Body::default() };
    let judged = |bore: f64| {
        collet(&cone(bore), Some(&body), &HeldConductor::solid(mm(14.0)), GripLimits::default()).verdict
    };
    assert_eq!(judged(14.3), Verdict::TipContact);
    assert_eq!(judged(13.0), Verdict::WillNotEnter);
    assert_eq!(judged(13.5), Verdict::TipContact);
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
    let construction = HeldConstruction::Layers(vec![layer(1, 0.0), layer(6, 1.0), layer(12, 2.0)]);
    HeldConductor { construction, ..HeldConductor::solid(mm(5.0 * wire)) }
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
    let judged =
        |cone: &SpreadingCone, socket: &Socket| spreading_cone(cone, Some(socket), &held).swap_remove(0);
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

/// First principles: what enters only if the sizes are off to its good can't be counted on to hold.
#[test]
fn what_enters_a_socket_only_within_its_tolerance_does_not_grip_for_sure() {
    let narrow = Socket { throat_diameter: Some(mm(13.9)), ..socket(24.0) };
    let judged = |tolerance: f64| {
        let held = strand(2.8).with_tolerances(Some(mm(tolerance)), None);
        spreading_cone(&spreading(8.6), Some(&narrow), &held).swap_remove(0).verdict
    };
    assert_eq!(judged(0.05), Verdict::WillNotEnter);
    assert_eq!(judged(0.2), Verdict::Marginal);
    // 14.0 ± 0.1 mm through a throat of 14.2 mm: for sure, unless the throat may be 0.2 mm narrower.
    let through = |throat: f64, tight: f64| {
        let held = strand(2.8).with_tolerances(Some(mm(0.1)), None);
        let (throat_diameter, throat_diameter_tolerance) = (Some(mm(throat)), Some(mm(tight)));
        let narrow = Socket { throat_diameter, throat_diameter_tolerance, ..socket(24.0) };
        spreading_cone(&spreading(8.6), Some(&narrow), &held).swap_remove(0).verdict
    };
    assert_eq!(through(14.2, 0.0), Verdict::Grips);
    assert_eq!(through(14.2, 0.2), Verdict::Marginal);
    assert_eq!(through(14.05, 0.0), Verdict::Marginal);
}

/// How far a part stands out hangs on both tapers: where one is not known, nothing rules the part out.
#[test]
fn an_unknown_taper_leaves_the_stand_out_unknown() {
    let six = Some(Angle::from_degrees(6.0));
    let part = Wedge { thickness: Some(mm(14.0)), taper: six, length: Some(mm(80.0)), ..Wedge::default() };
    let body =
        WedgeBody { mouth: Some(mm(27.0)), taper: six, travel: Some(mm(12.0)), ..WedgeBody::default() };
    let stand_out =
        |part: &Wedge, body: &WedgeBody| wedge(part, Some(body), &HeldConductor::solid(mm(12.0))).stand_out;
    assert!(stand_out(&part, &body).is_some());
    assert_eq!(stand_out(&part, &WedgeBody { taper: None, ..body.clone() }), None);
    assert_eq!(stand_out(&Wedge { taper: None, ..part.clone() }, &body), None);
    let held = strand(2.8);
    for unknown in [Socket { half_angle: None, ..socket(24.0) }, socket(24.0)] {
        let outcome = spreading_cone(&spreading(8.6), Some(&unknown), &held).swap_remove(0);
        assert_eq!(outcome.stand_out_interval.is_some(), unknown.half_angle.is_some());
    }
}

#[test]
fn spreading_cone_names_what_it_lacks() {
    let held = strand(2.8);
    let bare = spreading_cone(&SpreadingCone::default(), None, &held).swap_remove(0);
    assert_eq!(
        bare.missing,
        ["geometry.spreading_cone.hole_diameter_mm", "geometry.socket.throat_diameter_mm"]
    );
    let untravelled = Socket { travel: None, ..socket(24.0) };
    let no_travel = spreading_cone(&spreading(8.6), Some(&untravelled), &held).swap_remove(0);
    assert_eq!(no_travel.missing, ["geometry.socket.travel_mm"]);
    assert!(no_travel.depth.is_some() && no_travel.stand_out.is_none());
    let rope =
        HeldConductor { construction: HeldConstruction::StrandedRope, ..HeldConductor::solid(mm(8.0)) };
    assert_eq!(spreading_cone(&spreading(8.6), Some(&socket(24.0)), &rope)[0].verdict, Verdict::Unknown);
}

#[test]
fn larger_sets_of_inner_wires_are_looked_at_too() {
    // Wires of 2.8 mm: sets of 2.8, 8.4 and 14.0 mm. A hole of 8.3 mm takes the centre; seven wires go in
    // within 0.1 mm of tolerance, or where two slits of 1.0 mm are prised open by up to 0.64 mm.
    let held = strand(2.8);
    let sets = |cone: &SpreadingCone| -> Vec<(u32, bool)> {
        let all = spreading_cone(cone, Some(&socket(24.0)), &held);
        all.iter().map(|one| (one.wires_through_hole.unwrap(), one.forced)).collect()
    };
    assert_eq!(sets(&spreading(8.3)), [(1, false)]);
    let loose = SpreadingCone { hole_diameter_tolerance: Some(mm(0.1)), ..spreading(8.3) };
    assert_eq!(sets(&loose), [(1, false), (7, false)]);
    let slit = SpreadingCone { slits: Some(2), slit_width: Some(mm(1.0)), ..spreading(8.3) };
    assert_eq!(sets(&slit), [(1, false), (7, true)]);
    assert_eq!(sets(&SpreadingCone { hole_diameter: Some(mm(7.7)), ..slit }), [(1, false)]);
}

#[test]
fn a_set_that_goes_in_within_tolerance_alone_never_grips() {
    let held = strand(2.8);
    let judged = |cone: SpreadingCone| spreading_cone(&cone, Some(&socket(24.0)), &held);
    let loose = judged(SpreadingCone { hole_diameter_tolerance: Some(mm(0.1)), ..spreading(8.3) });
    assert_eq!(loose[1].verdict, Verdict::Marginal);
    assert_eq!(judged(spreading(8.4))[0].verdict, Verdict::Grips);
    // Where a hole of 8.45 mm was made 0.1 mm narrower, seven wires, 8.4 mm across, do not go through it.
    let within = |hole| SpreadingCone { hole_diameter_tolerance: Some(mm(0.1)), ..spreading(hole) };
    assert_eq!(judged(within(8.45))[0].verdict, Verdict::Marginal);
    assert_eq!(judged(within(8.5))[0].verdict, Verdict::Grips);
}

#[test]
fn depths_within_tolerance_of_a_border_are_marginal() {
    // Depth 3.5 mm less one layer across the flank: z = 4.78 mm of 8 mm travel on flanks of 8°.
    let held = strand(2.8);
    let judged = |socket: &Socket| spreading_cone(&spreading(8.6), Some(socket), &held)[0].verdict;
    assert_eq!(judged(&socket(24.0)), Verdict::Grips);
    let loose = Socket { large_diameter_tolerance: Some(mm(1.4)), ..socket(24.0) };
    assert_eq!(judged(&loose), Verdict::Marginal);
    let worn = Socket { travel_tolerance: Some(mm(4.0)), ..socket(24.0) };
    assert_eq!(judged(&worn), Verdict::Marginal);
}

#[test]
fn friction_decides_how_steep_a_taper_may_be() {
    // By hand: arctan 0.30 = 16.699°, arctan 0.12 = 6.843°.
    let usual = Friction { wire: 0.30, seat: 0.12 };
    assert!(usual.draws_in(Angle::from_degrees(9.85)) && !usual.draws_in(Angle::from_degrees(9.87)));
    assert!(!Friction { wire: 0.1, seat: 0.12 }.draws_in(Angle::from_degrees(1.0)));
}

#[test]
fn wedge_takes_the_side_that_it_bears_on() {
    let wire = HeldConductor {
        construction: HeldConstruction::Grooved { height: mm(10.0), width: mm(12.9) },
        ..HeldConductor::solid(mm(12.9))
    };
    let six = Some(Angle::from_degrees(6.0));
    let part = Wedge { thickness: Some(mm(13.4)), taper: six, length: Some(mm(80.0)), ..Wedge::default() };
    let body = |bears_on| WedgeBody {
        mouth: Some(mm(27.0)),
        taper: six,
        travel: Some(mm(12.0)),
        bears_on,
        ..WedgeBody::default()
    };
    let judged = |bears_on| wedge(&part, Some(&body(bears_on)), &wire);
    assert_eq!(judged(Some(BearsOn::Width)).verdict, Verdict::Grips);
    assert_eq!(judged(Some(BearsOn::Height)).verdict, Verdict::ClosesWithoutGripping);
    assert_eq!(judged(None).missing, ["geometry.wedge_body.bears_on"]);
    // A bar of 12 × 5 mm is 13 mm from corner to corner, and lies on none of them.
    let bar = HeldConductor { construction: HeldConstruction::Bar, ..HeldConductor::solid(mm(13.0)) };
    let flat = wedge(&part, Some(&body(Some(BearsOn::Width))), &bar);
    assert_eq!((flat.verdict, &flat.missing[..]), (Verdict::Unknown, &[][..]));
}

/// What is open less what the closing part closes: of a collet its slits, 3 × 1.0 / π; of a wedge and a spreading cone its
/// travel times the taper. A hole that takes all wires is open round them.
#[test]
fn the_gap_is_what_closing_leaves_open() {
    let close = |outcome: &Outcome, wanted: f64| {
        let gap = outcome.gap.unwrap().mm();
        assert!((gap - wanted).abs() < 1e-4, "{gap} is not {wanted}");
    };
    close(&on(&cone(16.0), 14.0, 0.0), 2.0 - 0.95493);
    assert_eq!(on(&cone(14.5), 14.0, 0.0).gap, None);

    let six = Some(Angle::from_degrees(6.0));
    let part = Wedge { thickness: Some(mm(13.4)), taper: six, length: Some(mm(80.0)), ..Wedge::default() };
    let body =
        WedgeBody { mouth: Some(mm(27.0)), taper: six, travel: Some(mm(12.0)), ..WedgeBody::default() };
    close(&wedge(&part, Some(&body), &HeldConductor::solid(mm(10.0))), 3.6 - 12.0 * 0.105_104);
    assert_eq!(wedge(&part, Some(&body), &HeldConductor::solid(mm(12.9))).gap, None);

    let held = strand(2.8);
    let driven = |hole, large| spreading_cone(&spreading(hole), Some(&socket(large)), &held).swap_remove(0);
    // Half of 25.2 − 17.0 mm, less a layer of 2.8 mm across the flank of 8°.
    close(&driven(8.6, 25.2), 4.1 - 2.8 / 0.990_268 - 8.0 * 0.140_541);
    close(&driven(14.4, 24.6), 0.4);
    assert_eq!(driven(8.6, 24.0).gap, None);
}

#[test]
fn worn_wire_keeps_its_width_until_its_middle() {
    let wire = HeldConductor {
        construction: HeldConstruction::Grooved { height: mm(12.0), width: mm(12.0) },
        ..HeldConductor::solid(mm(12.0))
    };
    let worn = |remaining: f64| wire.worn_to(mm(remaining)).map(|held| held.construction);
    assert_eq!(worn(9.0), Some(HeldConstruction::Grooved { height: mm(9.0), width: mm(12.0) }));
    let Some(HeldConstruction::Grooved { width, .. }) = worn(3.0) else { panic!() };
    assert!((width.mm() - 2.0 * 27.0_f64.sqrt()).abs() < 1e-9);
    assert_eq!(worn(12.0), None);
    assert_eq!(HeldConductor::solid(mm(8.0)).worn_to(mm(4.0)), None);
}

#[test]
fn screwed_grips_are_for_ropes_of_several_strands() {
    let grip = RopeGrip { rope: Some(Range::between(mm(7.5), mm(8.5))), ..RopeGrip::default() };
    let rope = |across: f64, construction: HeldConstruction| {
        rope_grip(&grip, &HeldConductor { construction, ..HeldConductor::solid(mm(across)) }).verdict
    };
    assert_eq!(rope(8.0, HeldConstruction::StrandedRope), Verdict::Grips);
    assert_eq!(rope(8.0, HeldConstruction::SingleStrandRope), Verdict::Marginal);
    assert_eq!(rope(7.0, HeldConstruction::StrandedRope), Verdict::ClosesWithoutGripping);
    assert_eq!(rope(9.0, HeldConstruction::StrandedRope), Verdict::StandsProud);
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

/// By hand: n·w/π is how far the bore closes, so half of the circumference is half of the bore.
#[test]
fn slits_may_close_half_of_the_bore_at_most() {
    for (bore, slits) in [(14.3, 3), (7.7, 2), (3.0, 4)] {
        let cut = |width: f64| Collet { slits: Some(slits), slit_width: Some(mm(width)), ..cone(bore) };
        let of = |width: f64| Slits::of(&Geometry::Collet(cut(width))).unwrap();
        let widest = of(1.0).widest().mm();
        assert!((collet_closure(&cut(widest)).unwrap().mm() - bore / 2.0).abs() < 1e-9);
        assert!(of(widest - 0.001).leave_metal() && !of(widest + 0.001).leave_metal());
    }
    let whole = Geometry::Collet(Collet { slits: Some(0), ..cone(14.3) });
    assert!(Slits::of(&whole).unwrap().leave_metal());
}

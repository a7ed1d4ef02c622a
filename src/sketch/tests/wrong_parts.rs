//! A wrong part beside the right one: gap, slits and stand-outs as worked out by hand, ends at true size.

use super::chance::fitting_at_random;
use super::sample::{
    collet, collet_body, conductor, fitting, fonts, limits, limits_of, mm, part, socket_dead_end,
    spreading_cone, stranded,
};
use crate::catalogue::{Family, Fitting, Limits, Part, Role};
use crate::grip::{Outcome, Verdict};
use crate::sketch::appearance::Tone;
use crate::sketch::assembly::contact::Contact;
use crate::sketch::assembly::setup::Setup;
use crate::sketch::outline::Outline;
use crate::sketch::plane::{Point, at};
use crate::sketch::{Drawing, Options, WrongPart, end_view, side_by_side};
use std::sync::Arc;

/// A dead-end of a wire of 12.5 mm whose own cone has a bore of 12.8 mm.
fn dead_end() -> Fitting {
    fitting(
        "Collet dead-end",
        Family::ConeDeadEnd,
        vec![conductor("Messenger wire 95", "bronze-1", stranded(19, 2.50))],
        vec![
            part("1", Role::Body, "aluminium-bronze", Some(collet_body(5.0, 40.0, 70.0))),
            part("3", Role::Cone, "bronze-soft", Some(collet(12.8, 5.0, 60.0, 6.0))),
        ],
    )
}

fn cone(bore: f64) -> Arc<Part> {
    part("9", Role::Cone, "bronze-soft", Some(collet(bore, 5.0, 60.0, 6.0)))
}

/// What the cone does there, judged as its own would be.
fn outcome(fitting: &Fitting, cone: &Arc<Part>, limits: &Limits) -> Outcome {
    let mut built = fitting.clone();
    built.items[1].part = cone.clone();
    Setup::of(&built, limits).outcome.expect("a gripping part")
}

fn wrong<'a>(
    fitting: &'a Fitting,
    part: &'a Part,
    outcome: &'a Outcome,
    words: [&'a str; 2],
) -> WrongPart<'a> {
    WrongPart { part, conductor: fitting.conductor(), outcome, words, worn_to: None }
}

fn drawn(bore: f64) -> Drawing {
    let (fitting, cone, limits, fonts) = (dead_end(), cone(bore), limits(), fonts());
    let outcome = outcome(&fitting, &cone, &limits);
    let room = Options::new(&fonts, mm(97.0), mm(33.0));
    side_by_side(
        &fitting,
        &limits,
        &wrong(&fitting, &cone, &outcome, ["right part", "closes, holds nothing"]),
        &room,
    )
}

/// Three slits of 1.0 mm close a bore by 3 × 1.0 / π = 0.95 mm: of 14.3 − 12.5 = 1.8 mm, 0.85 mm are left.
#[test]
fn the_gap_is_what_shut_slits_leave() {
    let (fitting, cone, limits) = (dead_end(), cone(14.3), limits());
    let outcome = outcome(&fitting, &cone, &limits);
    let contact = Contact::of(&Setup::with(&fitting, &cone, &outcome)).expect("a contact");
    let (top, foot, name) = contact.gap.expect("a gap");
    assert!((foot - top - (1.8 - 3.0 / std::f64::consts::PI)).abs() < 0.001, "{}", foot - top);
    assert_eq!(name, "gap");
    let drawing = drawn(14.3);
    let gap = drawing.dimensions.iter().find(|dimension| dimension.name == "gap").expect("its size");
    assert_eq!(gap.text, "0.8\u{a0}mm");
    let scale: f64 = drawing.scale.strip_suffix(":1").expect("enlarged").parse().expect("a number");
    assert!(scale >= 5.0, "{}", drawing.scale);
}

#[test]
fn shut_slits_are_drawn_shut_and_others_open() {
    let (fitting, limits) = (dead_end(), limits());
    let width = |bore: f64| {
        let cone = cone(bore);
        let contact = Contact::of(&Setup::with(&fitting, &cone, &outcome(&fitting, &cone, &limits)));
        let slit = contact.expect("a contact").surfaces.swap_remove(2).ring;
        slit[1].x - slit[0].x
    };
    assert!(width(14.3) < 1e-9);
    // Closed by 0.3 mm, each of three slits has lost π × 0.3 / 3 of its 1.0 mm.
    assert!((width(12.8) - (1.0 - std::f64::consts::PI * 0.1)).abs() < 1e-6, "{}", width(12.8));
}

/// The flank of 5° sinks by half the closure / tan 5°: 0.3 mm by 1.71 mm, 0.955 mm by 5.46 mm.
#[test]
fn stand_outs_of_both_are_printed() {
    let outs: Vec<String> =
        drawn(14.3).dimensions.into_iter().filter(|d| d.name == "stand-out").map(|d| d.text).collect();
    assert_eq!(outs, ["4.3\u{a0}mm", "0.5\u{a0}mm"]);
}

#[test]
fn where_nothing_differs_it_is_said() {
    let drawing = drawn(12.8);
    assert!(drawing.body.contains("Nothing differs to see") && drawing.dimensions.is_empty());
    assert!(!drawn(14.3).body.contains("Nothing differs"));
    // What will not go in differs, even where no size of it can be drawn.
    assert!(!drawn(9.0).body.contains("Nothing differs"));
}

/// Where nobody sees less than 4 mm on site, 6.0 and 4.3 mm look alike, and both are printed all the same.
#[test]
fn where_nothing_differs_that_is_seen_on_site_it_is_said() {
    let (fitting, cone, fonts) = (dead_end(), cone(13.4), fonts());
    let drawn = |visible: &str| {
        let limits = limits_of(&format!("limits: {{ visible_stand_out_mm: {visible} }}"));
        let outcome = outcome(&fitting, &cone, &limits);
        let room = Options::new(&fonts, mm(97.0), mm(33.0));
        side_by_side(
            &fitting,
            &limits,
            &wrong(&fitting, &cone, &outcome, ["right part", "fits, looks right, not proven"]),
            &room,
        )
    };
    let (blunt, keen) = (drawn("4"), drawn("0.5"));
    assert!(blunt.body.contains("Nothing differs to see") && !keen.body.contains("Nothing differs"));
    assert_eq!((blunt.dimensions.len(), keen.dimensions.len()), (2, 2));
}

/// The right and the wrong spreading cone in a dead-end of a wire of 19 × 2.50 mm; the wrong one's large end and hole.
fn spread(large: f64, hole: f64) -> (Contact, Contact) {
    let (fitting, limits) = (socket_dead_end(), limits());
    let cone = part("9", Role::Cone, "brass", Some(spreading_cone(large, 8.0, 24.0, hole)));
    let mut built = fitting.clone();
    built.items[3].part = cone.clone();
    let outcome = Setup::of(&built, &limits).outcome.expect("a gripping part");
    Contact::pair(&Setup::of(&fitting, &limits), &Setup::with(&fitting, &cone, &outcome)).expect("both")
}

/// All 19 wires, 12.5 mm across, lie in a hole of 12.7 mm: 0.2 mm are left, the whole of it above them.
#[test]
fn wires_that_all_go_through_a_hole_lie_loose_in_it() {
    let (_, wrong) = spread(22.4, 12.7);
    let (top, foot, _) = wrong.gap.expect("a gap");
    assert!((foot - top - 0.2).abs() < 1e-6 && (top + 6.35).abs() < 1e-6, "{top} {foot}");
    assert!(shown(&wrong, wrong.focus.x, foot + 0.1) == Shown::Wire);
    assert!(shown(&wrong, wrong.focus.x, top - 0.1) == Shown::Cone);
}

/// 12 wires of 2.50 mm lie on the right cone where the wrong one lies on the socket's wall: at the middle of its view, a half
/// wire inside that wall, there is wire on the right one, and metal of the cone on the wrong one.
#[test]
fn the_same_place_shows_wires_on_the_right_cone_and_none_on_a_wrong_one() {
    let (right, wrong) = spread(22.4, 12.7);
    assert_eq!(right.focus.x, wrong.focus.x);
    // The wall's radius there: 23.1 / 2 at the face, less what 8° take off on the way in.
    let wall = 23.1 / 2.0 + wrong.focus.x * 8f64.to_radians().tan();
    assert_eq!(shown(&right, right.focus.x, -wall + 1.2), Shown::Wire);
    assert_eq!(shown(&wrong, wrong.focus.x, -wall + 0.5), Shown::Cone);
    for contact in [&right, &wrong] {
        assert_eq!(shown(contact, contact.focus.x, -wall - 0.3), Shown::Seat);
    }
}

/// Seven wires, 7.5 mm across, in a hole of 8.9 mm: its two slits of 1.0 mm close 2 × 1.0 / π = 0.64 mm of the 1.4 mm.
#[test]
fn a_hole_is_closed_as_far_as_its_slits_go() {
    let (_, wrong) = spread(16.4, 8.9);
    let (top, foot, _) = wrong.gap.expect("a gap");
    assert!((foot - top - (1.4 - 2.0 / std::f64::consts::PI)).abs() < 1e-6, "{}", foot - top);
}

#[derive(Debug, PartialEq, Eq)]
enum Shown {
    Wire,
    Cone,
    Seat,
    Nothing,
}

/// What is on top at a place.
fn shown(contact: &Contact, x: f64, y: f64) -> Shown {
    let holds = |ring: &Vec<Point>| Outline::new(ring.clone()).contains(at(x, y));
    match contact.surfaces.iter().rev().find(|surface| holds(&surface.ring)) {
        Some(surface) if surface.grips => Shown::Cone,
        Some(surface) if surface.tone == Tone::Paper => Shown::Seat,
        Some(surface) if matches!(surface.tone, Tone::Metal(..)) => Shown::Wire,
        _ => Shown::Nothing,
    }
}

/// The large end is as wide as the seat, 40.0 mm, and 6.0 mm × tan 5° × 2 = 1.05 mm more where it stands out.
#[test]
fn ends_are_at_true_size() {
    let (fonts, fitting) = (fonts(), dead_end());
    let room = |high: f64| Options::new(&fonts, mm(60.0), mm(high));
    let end = |high: f64| end_view(&fitting.items[0].part, &cone(14.3), &room(high)).expect("an end");
    for (drawing, height) in [(end(60.0), 41.05), (end(30.0), 20.52)] {
        assert_eq!(drawing.scale, "1:1");
        let over = (drawing.width.mm() - 41.05, drawing.height.mm() - height);
        // Half an outline on each side, and a hair of air; axes run past the end.
        assert!((0.0..4.0).contains(&over.0) && (0.0..1.5).contains(&over.1), "{over:?}");
    }
    assert!(end_view(&fitting.items[0].part, &cone(14.3), &room(10.0)).is_none(), "never smaller");
}

/// On the thicker of two conductors, 13.4 mm, a bore of 14.8 mm leaves 1.4 − 0.955 = 0.445 mm; on the thinner one, which the
/// fitting names first, it would leave 0.9 mm more. Its own bore of 13.7 mm stands out 6.0 − 0.3 / (2 tan 5°) = 4.3 mm.
#[test]
fn a_wrong_part_is_drawn_on_the_conductor_that_it_is_wrong_on() {
    let mut fitting = dead_end();
    fitting.conductors.push(conductor("Messenger wire 110", "bronze-1", stranded(19, 2.68)));
    let (cone, limits, fonts) = (cone(14.8), limits(), fonts());
    fitting.items[1].part = part("3", Role::Cone, "bronze-soft", Some(collet(13.7, 5.0, 60.0, 6.0)));
    let mut thicker = fitting.clone();
    thicker.conductors.remove(0);
    let outcome = outcome(&thicker, &cone, &limits);
    let words = ["right part", "closes, holds nothing"];
    let on_thicker =
        WrongPart { conductor: &fitting.conductors[1], ..wrong(&fitting, &cone, &outcome, words) };
    let drawing = side_by_side(&fitting, &limits, &on_thicker, &Options::new(&fonts, mm(97.0), mm(33.0)));
    let printed: Vec<&str> = drawing.dimensions.iter().map(|dimension| dimension.text.as_str()).collect();
    assert_eq!(printed, ["4.3\u{a0}mm", "0.4\u{a0}mm", "0.5\u{a0}mm"]);
    assert!(drawing.body.contains("On Messenger wire 110."), "{}", drawing.body);
    assert!(drawing.description.contains("On Messenger wire 110."), "{}", drawing.description);
}

/// What is worked out and what is drawn to scale are two ways to the same gap: they differ by less than a tenth of a
/// millimetre, where all sizes are stated and the part closes without gripping.
#[test]
fn the_gap_that_is_worked_out_is_the_one_that_is_drawn() {
    let limits = limits();
    let mut compared = 0;
    for (mut fitting, other) in
        (0..700).map(|number| (fitting_at_random(number), fitting_at_random(number + 7)))
    {
        let gripping = |fitting: &Fitting| fitting.items.iter().position(|item| item.part.role.grips());
        let Some((own, wrong)) = gripping(&fitting).zip(gripping(&other)) else { continue };
        fitting.items[own].part = other.items[wrong].part.clone();
        let setup = Setup::of(&fitting, &limits);
        let closes =
            setup.outcome.as_ref().filter(|outcome| outcome.verdict == Verdict::ClosesWithoutGripping);
        let Some(gap) = closes.and_then(|outcome| outcome.gap) else { continue };
        let drawn = Contact::of(&setup).and_then(|contact| contact.gap);
        if let Some((top, foot, "gap")) = drawn {
            compared += 1;
            assert!((foot - top - gap.mm()).abs() < 0.1, "{}: {} and {}", fitting.name, foot - top, gap.mm());
        } else {
            assert!(gap.mm() < 0.06, "{}: {} is not drawn", fitting.name, gap.mm());
        }
    }
    assert!(compared > 20, "{compared}");
}

//! A rule that is laid on a drawing reads what the records say.

use super::sample::{fonts, limits, mm, part, socket_dead_end, wedge_dead_end};
use super::seen::Seen;
use crate::catalogue::{Fitting, Role};
use crate::grip::{Body, Geometry};
use crate::sketch::assembly::setup::Setup;
use crate::sketch::assembly::{Pose, compose, figure};
use crate::sketch::options::{Detail, Options};
use crate::sketch::plane::{EMPTY, Point, Rect, at};
use crate::sketch::scale::Scale;
use crate::sketch::scene::{Purpose, Scene};

/// Steps in which a rule is read, in millimetres.
const STEP: f64 = 0.01;

/// A finished fitting at true size.
fn at_true_size(fitting: &Fitting) -> Scene {
    let fonts = fonts();
    let options = Options { detail: Detail::Bare, ..Options::new(&fonts, mm(400.0), mm(200.0)) };
    let setup = Setup::of(fitting, &limits());
    let figure = figure(&setup, Pose::default());
    assert!(!figure.proportions().assumed, "the drawing states its scale");
    compose(&setup, &*figure, Pose::default(), &options, Scale(1.0)).draft.scene
}

fn bounds_of(scene: &Scene, part: usize) -> Rect {
    scene.areas_of(part).fold(EMPTY, |sum, area| sum.union(area.bounds()))
}

fn wires(scene: &Scene) -> impl Iterator<Item = Rect> {
    let wires = scene.elements.iter().filter(|element| element.purpose == Purpose::Wire);
    wires.map(|element| element.primitive.bounds())
}

/// How far a part is seen without a gap to the right of a place, and to the left of it.
fn seen_round(scene: &Scene, part: usize, place: Point) -> (f64, f64) {
    let seen = Seen::of(scene);
    let is_part = |x: f64| seen.at(at(x, place.y)) == Some(Some(part));
    assert!(is_part(place.x), "item {} is not seen at {place:?}", part + 1);
    let far = |way: f64| (1..).map(|step| f64::from(step) * STEP).find(|off| !is_part(place.x + way * off));
    (far(1.0).expect("an end"), far(-1.0).expect("an end"))
}

/// By its sizes the wedge lies (27 − 12.34 − 13.924) / tan 6° = 7.0 mm below the face.
#[test]
fn a_wedge_lies_as_deep_below_the_face_as_its_record_says() {
    let bolted = wedge_dead_end();
    let mut pinned = wedge_dead_end();
    pinned.items[1].part = part("2", Role::Pin, "stainless-1.4401", None);
    for fitting in [bolted, pinned] {
        let scene = at_true_size(&fitting);
        // Along the sloping wall, just outside the mouth of 27 mm.
        let (end, wall) = (bounds_of(&scene, 2).x1, -27.5);
        let (depth, before) = seen_round(&scene, 0, at(end, wall));
        assert!((depth - 7.0).abs() < 0.05, "the face is {depth} mm behind the wedge");
        assert!((5.5..=8.5).contains(&depth));
        assert!((before + depth - 95.0).abs() < 0.05, "the body is {} mm long", before + depth);
    }
}

#[test]
fn a_keeper_bolt_lies_on_no_wire() {
    for spanner in [10.0, 18.0, 24.0] {
        let mut fitting = wedge_dead_end();
        fitting.tightening[0].spanner = Some(mm(spanner));
        let scene = at_true_size(&fitting);
        let bolt: Vec<Rect> = scene.areas_of(1).map(|area| area.bounds()).collect();
        assert_eq!(bolt.len(), 2, "shank and head");
        // The bolt is as thick as its thread says, its head as wide as its spanner.
        assert!((bolt[0].height() - 12.0).abs() < 0.01, "{}", bolt[0].height());
        assert!((bolt[1].height() - spanner.max(1.3 * 12.0)).abs() < 0.01, "{}", bolt[1].height());
        for (bolt, wire) in bolt.iter().flat_map(|bolt| wires(&scene).map(move |wire| (bolt, wire))) {
            let common = bolt.intersect(wire);
            assert!(common.width() * common.height() < 0.01, "{bolt:?} in the wire {wire:?}");
        }
    }
}

/// The body of the sample is 95 mm long and the wire goes 70 mm into it.
#[test]
fn a_socket_s_body_is_as_long_as_its_record_says_and_the_wire_ends_where_its_insertion_says() {
    for (length, insertion) in [(95.0, 70.0), (95.0, 90.0), (95.0, 120.0), (64.0, 70.0), (50.0, 60.0)] {
        let mut fitting = socket_dead_end();
        let body = Geometry::Body(Body {
            large_diameter: Some(mm(52.0)),
            length: Some(mm(length)),
            ..Body::default()
        });
        fitting.items[0].part = part("1", Role::Body, "aluminium-bronze", Some(body));
        fitting.insertion = Some(mm(insertion));
        let scene = at_true_size(&fitting);
        let body = bounds_of(&scene, 0);
        assert!((body.width() - length).abs() < 0.01, "{} mm long, not {length}", body.width());
        let end = wires(&scene).fold(f64::NEG_INFINITY, |most, wire| most.max(wire.x1));
        assert!((end - body.x0 - insertion).abs() < 0.01, "{} mm in, not {insertion}", end - body.x0);
    }
}

#[test]
fn a_body_that_is_shorter_than_its_socket_states_no_scale() {
    let mut fitting = socket_dead_end();
    let body =
        Geometry::Body(Body { large_diameter: Some(mm(52.0)), length: Some(mm(30.0)), ..Body::default() });
    fitting.items[0].part = part("1", Role::Body, "aluminium-bronze", Some(body));
    let setup = Setup::of(&fitting, &limits());
    assert!(figure(&setup, Pose::default()).proportions().assumed);
}

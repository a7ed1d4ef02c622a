//! The outermost edge of a section whose wires are too fine for an outline each.

use super::cut_surfaces::CutSurface;
use crate::sketch::plane::{Point, Vec2, at};
use crate::sketch::scene::Primitive;
use std::f64::consts::TAU;

/// Places round a wire that are looked at.
const PLACES: u32 = 24;
/// How much larger than it is a wire hides those of layers further in: what is seen through the gap between two is no edge.
const HIDES: f64 = 1.2;

/// Less than this in front of a place is the place itself, in millimetres.
const LEAST: f64 = 1e-6;

/// The pieces of the circles that are seen from outside, so that no line lies between wires.
pub(super) fn outer_edge(surfaces: &[CutSurface]) -> Vec<Vec<Point>> {
    let circles = surfaces.iter().filter_map(|surface| match surface.primitive {
        Primitive::Circle(centre, radius) => Some((centre, radius)),
        _ => None,
    });
    let circles: Vec<(Point, f64)> = circles.collect();
    let middle = at(0.0, 0.0);
    let pieces = circles.iter().flat_map(|&(centre, radius)| {
        let outward = (centre - middle).atan2();
        let seen = |step: u32| {
            let turn = outward + TAU * (f64::from(step) / f64::from(PLACES) - 0.5);
            let place = centre + Vec2::from_angle(turn) * radius;
            // A wire hides its own far side, too.
            let hidden = circles.iter().any(|&(by, reach)| {
                let further_out = by.distance(middle) > centre.distance(middle) + radius;
                hides(by, if further_out { HIDES * reach } else { reach }, place - middle)
            });
            (!hidden).then_some(place)
        };
        runs((0..=PLACES).map(seen))
    });
    pieces.collect()
}

/// Whether a circle lies on the way from a place straight outward.
fn hides(centre: Point, radius: f64, place: Vec2) -> bool {
    let way = place.normalize();
    let along = centre.to_vec2().dot(way);
    let across = centre.to_vec2().cross(way).abs();
    across < radius && along + (radius * radius - across * across).sqrt() > place.length() + LEAST
}

/// Runs of places one after another, of two and more.
fn runs(places: impl Iterator<Item = Option<Point>>) -> Vec<Vec<Point>> {
    let places: Vec<Option<Point>> = places.collect();
    let runs = places.split(Option::is_none).map(|run| run.iter().flatten().copied().collect::<Vec<_>>());
    runs.filter(|run| run.len() > 1).collect()
}

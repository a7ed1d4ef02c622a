//! The outline of a contact wire, with the small grooves in its head whose number tells its metal.

use crate::section::{Grooved, Segment, profile};
use crate::sketch::outline::{arc, circle};
use crate::sketch::plane::{Point, at};
use std::f64::consts::{FRAC_PI_2, TAU};

/// How far a chord may lie off its arc, in millimetres of the object.
pub(super) const SAG: f64 = 0.004;

/// Radius of an identification groove in millimetres.
const RADIUS: f64 = 0.55;
/// How far its middle lies below the head's surface.
const SUNK: f64 = 0.05;
/// From one groove to the next, in radians about the wire's middle (their place from memory: EN 50149 has them in the
/// upper lobe).
const APART: f64 = 0.36;

/// The outline of a grooved wire, y downward; a plain circle where the grooves can't be laid out.
pub(super) fn grooved_outline(grooved: &Grooved) -> Vec<Point> {
    match profile(grooved) {
        Ok(profile) => profile.segments.iter().flat_map(flattened).collect(),
        Err(_) => circle(at(0.0, 0.0), grooved.height.mm() / 2.0, SAG),
    }
}

fn flattened(segment: &Segment) -> Vec<Point> {
    match segment {
        Segment::Line { start, .. } => vec![page(*start)],
        Segment::Arc { centre, radius, start, end, .. } => {
            let centre = page(*centre);
            let mut points = arc(centre, radius.mm(), -start.radians(), -end.radians(), SAG);
            points.pop();
            points
        }
    }
}

/// Section coordinates run upward, the page's downward.
pub(super) fn page(point: crate::section::Point) -> Point {
    at(point.x.mm(), -point.y.mm())
}

/// The outline of a new wire with so many grooves in its head, y downward; without those that its head has no room for.
/// Wear takes the lower side, so a worn wire has them for as long as its head is left.
pub(super) fn with_identification_grooves(grooved: &Grooved, count: u32) -> Vec<Point> {
    let Some(profile) = profile(grooved).ok().filter(|_| count > 0) else { return grooved_outline(grooved) };
    let radius = grooved.height.mm() / 2.0;
    let points = profile.segments.iter().flat_map(|segment| match head(segment, radius) {
        Some(ends) => notched(radius, ends, count),
        None => flattened(segment),
    });
    points.collect()
}

/// The ends of the arc over the top of the head, in radians; none of any other segment.
fn head(segment: &Segment, wire: f64) -> Option<(f64, f64)> {
    let Segment::Arc { radius, start, end, .. } = segment else { return None };
    let ends = (start.radians(), end.radians());
    ((radius.mm() - wire).abs() < 1e-9 && ends.0 < FRAC_PI_2 && ends.0 > -FRAC_PI_2).then_some(ends)
}

/// The arc with its grooves, from right to left; without its last point, which the next segment begins with.
fn notched(wire: f64, (start, end): (f64, f64), count: u32) -> Vec<Point> {
    let middle = wire - SUNK;
    // Half the angle that a groove takes of the arc, from the wire's middle and from its own.
    let half =
        ((middle * middle + wire * wire - RADIUS * RADIUS) / (2.0 * middle * wire)).clamp(-1.0, 1.0).acos();
    let own = (wire * half.sin()).atan2(wire * half.cos() - middle);
    let along = |from: f64, to: f64| arc(at(0.0, 0.0), wire, -from, -to, SAG);
    let mut points = Vec::new();
    let mut from = start;
    for nth in 0..count {
        let turn = FRAC_PI_2 + (f64::from(nth) - f64::from(count - 1) / 2.0) * APART;
        if turn - half <= from || turn + half >= end {
            continue;
        }
        points.extend(along(from, turn - half));
        let centre = at(middle * turn.cos(), -middle * turn.sin());
        points.extend(arc(centre, RADIUS, own - turn, TAU - own - turn, SAG));
        from = turn + half;
    }
    points.extend(along(from, end));
    points.pop();
    points
}

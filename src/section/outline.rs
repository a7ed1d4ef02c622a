//! Outlines of exact arcs and lines: their area, their centroid, and what a straight cut leaves.

use crate::units::{Angle, Area, Length};
use std::f64::consts::{PI, TAU};

/// A point of a section: x to the right, y upward.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Point {
    /// To the right of the origin.
    pub x: Length,
    /// Above the origin.
    pub y: Length,
}

impl Point {
    pub(super) const fn from_mm(x: f64, y: f64) -> Self {
        Self { x: Length::from_mm(x), y: Length::from_mm(y) }
    }
}

/// Which way round an arc goes, seen with y upward.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Direction {
    /// Angles grow.
    Counterclockwise,
    /// Angles fall.
    Clockwise,
}

/// One piece of an outline.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Segment {
    /// A straight piece.
    Line {
        /// Where it begins.
        start: Point,
        /// Where it ends.
        end: Point,
    },
    /// A piece of a circle.
    Arc {
        /// The circle's centre.
        centre: Point,
        /// The circle's radius.
        radius: Length,
        /// Angle of its beginning, from the x axis.
        start: Angle,
        /// Angle of its end; more than `start` for a counterclockwise arc, less for a clockwise one.
        end: Angle,
        /// Which way round it goes.
        direction: Direction,
    },
}

impl Segment {
    /// Where it begins.
    #[must_use]
    pub fn start(&self) -> Point {
        match self {
            Self::Line { start, .. } => *start,
            Self::Arc { centre, radius, start, .. } => on_circle(*centre, *radius, *start),
        }
    }

    /// Where it ends.
    #[must_use]
    pub fn end(&self) -> Point {
        match self {
            Self::Line { end, .. } => *end,
            Self::Arc { centre, radius, end, .. } => on_circle(*centre, *radius, *end),
        }
    }

    pub(super) fn line(start: Point, end: Point) -> Self {
        Self::Line { start, end }
    }

    /// The arc from one angle to another, in radians; it turns the way the angles go.
    pub(super) fn arc(centre: Point, radius: Length, start: f64, end: f64) -> Self {
        let direction = if end >= start { Direction::Counterclockwise } else { Direction::Clockwise };
        Self::Arc {
            centre,
            radius,
            start: Angle::from_radians(start),
            end: Angle::from_radians(end),
            direction,
        }
    }
}

fn on_circle(centre: Point, radius: Length, angle: Angle) -> Point {
    Point { x: centre.x + radius * angle.cos(), y: centre.y + radius * angle.sin() }
}

/// Area within a closed outline that runs counterclockwise, by Green's theorem.
pub(super) fn area(segments: &[Segment]) -> Area {
    Area::from_mm2(segments.iter().map(half_cross).sum())
}

/// Centroid of what a closed outline encloses, by Green's theorem.
pub(super) fn centroid(segments: &[Segment]) -> Point {
    let area = area(segments).mm2();
    let (x, y) = segments.iter().map(moments).fold((0.0, 0.0), |sum, one| (sum.0 + one.0, sum.1 + one.1));
    Point::from_mm(x / area, y / area)
}

/// ½∫(x dy − y dx) along a segment.
fn half_cross(segment: &Segment) -> f64 {
    match segment {
        Segment::Line { start, end } => (start.x.mm() * end.y.mm() - end.x.mm() * start.y.mm()) / 2.0,
        Segment::Arc { centre, radius, start, end, .. } => {
            let (a, b, r) = (start.radians(), end.radians(), radius.mm());
            let across = centre.x.mm() * (b.sin() - a.sin()) - centre.y.mm() * (b.cos() - a.cos());
            (r * r * (b - a) + r * across) / 2.0
        }
    }
}

/// ½∫x² dy and −½∫y² dx along a segment.
fn moments(segment: &Segment) -> (f64, f64) {
    match segment {
        Segment::Line { start, end } => {
            let (x0, y0, x1, y1) = (start.x.mm(), start.y.mm(), end.x.mm(), end.y.mm());
            let x = (y1 - y0) * (x0 * x0 + x0 * x1 + x1 * x1) / 6.0;
            let y = -(x1 - x0) * (y0 * y0 + y0 * y1 + y1 * y1) / 6.0;
            (x, y)
        }
        Segment::Arc { centre, radius, start, end, .. } => {
            let (a, b, r) = (start.radians(), end.radians(), radius.mm());
            let (cx, cy) = (centre.x.mm(), centre.y.mm());
            let squares = |f: fn(f64) -> f64| f(b) - f(a);
            let x = cx * cx * squares(f64::sin)
                + 2.0 * cx * r * squares(|t| t / 2.0 + (2.0 * t).sin() / 4.0)
                + r * r * squares(|t| t.sin() - t.sin().powi(3) / 3.0);
            let y = cy * cy * squares(|t| -t.cos())
                + 2.0 * cy * r * squares(|t| t / 2.0 - (2.0 * t).sin() / 4.0)
                + r * r * squares(|t| t.cos().powi(3) / 3.0 - t.cos());
            (r * x / 2.0, r * y / 2.0)
        }
    }
}

/// The outline of what lies above the height `y`, closed along the cut.
///
/// Holds for outlines that every horizontal line cuts at most twice, as those of contact wires do.
pub(super) fn above(segments: &[Segment], y: Length) -> Vec<Segment> {
    let mut kept: Vec<Segment> = segments.iter().flat_map(|segment| parts_above(segment, y.mm())).collect();
    // Begin after the gap, so that one closing line finishes the outline.
    let gap = (0..kept.len()).find(|index| {
        let next = kept[(index + 1) % kept.len()].start();
        distance(kept[*index].end(), next) > 1e-9
    });
    if let Some(index) = gap {
        kept.rotate_left(index + 1);
        let (end, start) = (kept[kept.len() - 1].end(), kept[0].start());
        kept.push(Segment::line(end, start));
    }
    kept
}

fn distance(a: Point, b: Point) -> f64 {
    (a.x - b.x).mm().hypot((a.y - b.y).mm())
}

fn parts_above(segment: &Segment, y: f64) -> Vec<Segment> {
    match segment {
        Segment::Line { start, end } => line_above(*start, *end, y).into_iter().collect(),
        Segment::Arc { centre, radius, start, end, .. } => {
            let sine = (y - centre.y.mm()) / radius.mm();
            if sine <= -1.0 {
                return vec![*segment]; // the line lies below the whole circle, or only touches it
            }
            let mut angles = vec![start.radians()];
            angles.extend(crossings(sine, start.radians(), end.radians()));
            angles.push(end.radians());
            let middle_is_above = |from: f64, to: f64| f64::midpoint(from, to).sin() > sine;
            let pairs =
                angles.windows(2).filter(|pair| pair[0] != pair[1] && middle_is_above(pair[0], pair[1]));
            pairs.map(|pair| Segment::arc(*centre, *radius, pair[0], pair[1])).collect()
        }
    }
}

fn line_above(start: Point, end: Point, y: f64) -> Option<Segment> {
    let (from, to) = (start.y.mm() - y, end.y.mm() - y);
    let crossing = || {
        let part = from / (from - to);
        Point::from_mm(start.x.mm() + (end.x - start.x).mm() * part, y)
    };
    match (from > 0.0, to > 0.0) {
        (true, true) => Some(Segment::line(start, end)),
        (true, false) => Some(Segment::line(start, crossing())),
        (false, true) => Some(Segment::line(crossing(), end)),
        (false, false) => None,
    }
}

/// Angles strictly between `start` and `end` where the sine has a value, in the order of travel.
fn crossings(sine: f64, start: f64, end: f64) -> Vec<f64> {
    if sine.abs() >= 1.0 {
        return Vec::new();
    }
    let (low, high) = (start.min(end), start.max(end));
    let mut found: Vec<f64> = [sine.asin(), PI - sine.asin()]
        .into_iter()
        .flat_map(|angle| (-2..=2).map(move |turn| angle + f64::from(turn) * TAU))
        .filter(|angle| *angle > low && *angle < high)
        .collect();
    found.sort_by(f64::total_cmp);
    if end < start {
        found.reverse();
    }
    found
}

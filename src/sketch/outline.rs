//! Closed outlines, with holes: what they hold, where lines cut them.

use super::plane::{Affine, Line, Point, Rect, Vec2};
use kurbo::{BezPath, PathEl, PathSeg, Shape as _};

/// A closed outline: one ring, or several of which every second one inside is a hole.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Outline(BezPath);

impl Outline {
    /// One ring.
    pub fn new(points: Vec<Point>) -> Self {
        Self(BezPath::new()).with_hole(points)
    }

    /// From pairs of x and y.
    pub fn of(points: &[(f64, f64)]) -> Self {
        Self::new(points.iter().copied().map(Point::from).collect())
    }

    /// An upright rectangle.
    pub fn rectangle(rect: Rect) -> Self {
        Self(rect.to_path(0.0))
    }

    /// A round hole, or any other ring that is cut out.
    #[must_use]
    pub fn with_hole(mut self, hole: Vec<Point>) -> Self {
        let mut points = hole.into_iter();
        if let Some(first) = points.next() {
            self.0.move_to(first);
            points.for_each(|point| self.0.line_to(point));
            self.0.close_path();
        }
        self
    }

    /// The corners of every ring.
    pub fn rings(&self) -> impl Iterator<Item = Vec<Point>> + '_ {
        let rings = self.0.elements().split(|element| *element == PathEl::ClosePath);
        rings
            .map(|ring| ring.iter().filter_map(PathEl::end_point).collect::<Vec<_>>())
            .filter(|ring| !ring.is_empty())
    }

    /// Every side as the segment between two corners.
    pub fn sides(&self) -> impl Iterator<Item = Line> + '_ {
        self.0.segments().filter_map(|side| if let PathSeg::Line(line) = side { Some(line) } else { None })
    }

    pub fn bounds(&self) -> Rect {
        self.0.bounding_box()
    }

    pub fn is_finite(&self) -> bool {
        self.0.is_finite()
    }

    /// Whether a point lies in it, holes left out.
    pub fn contains(&self, point: Point) -> bool {
        self.0.winding(point) % 2 != 0
    }

    #[must_use]
    pub fn mapped(&self, map: Affine) -> Self {
        Self(map * &self.0)
    }
}

/// Points round a circle, ends of the arc included, so close that the chord is off by no more than `sag`.
pub(crate) fn arc(centre: Point, radius: f64, from: f64, to: f64, sag: f64) -> Vec<Point> {
    let step = 2.0 * (1.0 - (sag / radius).min(1.0)).acos();
    let steps = ((to - from).abs() / step.max(0.02)).ceil().max(2.0) as usize;
    (0..=steps)
        .map(|index| centre + Vec2::from_angle(from + (to - from) * index as f64 / steps as f64) * radius)
        .collect()
}

/// Points round a whole circle.
pub(crate) fn circle(centre: Point, radius: f64, sag: f64) -> Vec<Point> {
    let mut points = arc(centre, radius, 0.0, std::f64::consts::TAU, sag);
    points.pop();
    points
}

/// The part of a ring where `keep` isn't negative.
pub(crate) fn clipped(ring: &[Point], keep: impl Fn(Point) -> f64) -> Vec<Point> {
    let mut kept = Vec::new();
    for (&from, &to) in ring.iter().zip(ring.iter().cycle().skip(1)) {
        let (a, b) = (keep(from), keep(to));
        if a >= 0.0 {
            kept.push(from);
        }
        if (a > 0.0 && b < 0.0) || (a < 0.0 && b > 0.0) {
            kept.push(from.lerp(to, a / (a - b)));
        }
    }
    kept
}

/// The part of a ring within an upright box.
pub(crate) fn boxed(ring: &[Point], rect: Rect) -> Vec<Point> {
    let ring = clipped(ring, |point| point.x - rect.x0);
    let ring = clipped(&ring, |point| rect.x1 - point.x);
    let ring = clipped(&ring, |point| point.y - rect.y0);
    clipped(&ring, |point| rect.y1 - point.y)
}

//! Closed outlines, with holes: what they hold, where lines cut them.

use super::point::{Point, Rect, at};

/// A closed outline: one ring, or several of which every second one inside is a hole.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Outline {
    pub rings: Vec<Vec<Point>>,
}

impl Outline {
    /// One ring.
    pub fn new(points: Vec<Point>) -> Self {
        Self { rings: vec![points] }
    }

    /// From pairs of x and y.
    pub fn of(points: &[(f64, f64)]) -> Self {
        Self::new(points.iter().map(|&(x, y)| at(x, y)).collect())
    }

    /// An upright rectangle.
    pub fn rectangle(rect: Rect) -> Self {
        Self::new(rect.corners().to_vec())
    }

    /// A round hole, or any other ring that is cut out.
    #[must_use]
    pub fn with_hole(mut self, hole: Vec<Point>) -> Self {
        self.rings.push(hole);
        self
    }

    /// Every side as the segment between two corners.
    pub fn sides(&self) -> impl Iterator<Item = (Point, Point)> + '_ {
        self.rings
            .iter()
            .flat_map(|ring| ring.iter().zip(ring.iter().cycle().skip(1)).map(|(&from, &to)| (from, to)))
    }

    pub fn bounds(&self) -> Rect {
        Rect::around(self.rings.iter().flatten().copied())
    }

    /// Whether a point lies in it, holes left out.
    pub fn contains(&self, point: Point) -> bool {
        let crossings = self.sides().filter(|&(from, to)| {
            (from.y > point.y) != (to.y > point.y)
                && point.x < from.x + (to.x - from.x) * (point.y - from.y) / (to.y - from.y)
        });
        crossings.count() % 2 == 1
    }

    /// Every point put through `map`.
    #[must_use]
    pub fn mapped(&self, map: impl Fn(Point) -> Point) -> Self {
        Self { rings: self.rings.iter().map(|ring| ring.iter().map(|&point| map(point)).collect()).collect() }
    }
}

/// Points round a circle, ends of the arc included, so close that the chord is off by no more than `sag`.
pub(crate) fn arc(centre: Point, radius: f64, from: f64, to: f64, sag: f64) -> Vec<Point> {
    let step = 2.0 * (1.0 - (sag / radius).min(1.0)).acos();
    let steps = ((to - from).abs() / step.max(0.02)).ceil().max(2.0) as usize;
    (0..=steps)
        .map(|index| centre + Point::polar(radius, from + (to - from) * index as f64 / steps as f64))
        .collect()
}

/// Points round a whole circle.
pub(crate) fn circle(centre: Point, radius: f64, sag: f64) -> Vec<Point> {
    let mut points = arc(centre, radius, 0.0, std::f64::consts::TAU, sag);
    points.pop();
    points
}

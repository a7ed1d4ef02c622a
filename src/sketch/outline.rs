//! Closed outlines, with holes: what they hold, where lines cut them.

use super::plane::{Affine, Line, Point, Rect, Vec2, around};
use kurbo::{BezPath, PathEl, PathSeg, Shape as _};

/// A closed outline: one ring, or several of which every second one inside is a hole.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Outline {
    path: BezPath,
    /// Asked for far more often than an outline is made.
    bounds: Rect,
}

impl Outline {
    /// One ring.
    pub fn new(points: Vec<Point>) -> Self {
        Self::of_path(BezPath::new()).with_hole(points)
    }

    /// From pairs of x and y.
    pub fn of(points: &[(f64, f64)]) -> Self {
        Self::new(points.iter().copied().map(Point::from).collect())
    }

    /// An upright rectangle.
    pub fn rectangle(rect: Rect) -> Self {
        Self::of_path(rect.to_path(0.0))
    }

    /// Of straight sides alone.
    fn of_path(path: BezPath) -> Self {
        let mut corners = path.elements().iter().filter_map(PathEl::end_point).peekable();
        let bounds = if corners.peek().is_some() { around(corners) } else { Rect::ZERO };
        Self { path, bounds }
    }

    /// A round hole, or any other ring that is cut out.
    #[must_use]
    pub fn with_hole(mut self, hole: Vec<Point>) -> Self {
        let mut points = hole.into_iter();
        if let Some(first) = points.next() {
            self.path.move_to(first);
            points.for_each(|point| self.path.line_to(point));
            self.path.close_path();
        }
        Self::of_path(self.path)
    }

    /// The corners of every ring.
    pub fn rings(&self) -> impl Iterator<Item = Vec<Point>> + '_ {
        let rings = self.path.elements().split(|element| *element == PathEl::ClosePath);
        rings
            .map(|ring| ring.iter().filter_map(PathEl::end_point).collect::<Vec<_>>())
            .filter(|ring| !ring.is_empty())
    }

    /// Every side as the segment between two corners.
    pub fn sides(&self) -> impl Iterator<Item = Line> + '_ {
        self.path.segments().filter_map(|side| if let PathSeg::Line(line) = side { Some(line) } else { None })
    }

    pub fn bounds(&self) -> Rect {
        self.bounds
    }

    pub fn is_finite(&self) -> bool {
        self.path.is_finite()
    }

    /// Whether a point lies in it, holes left out.
    pub fn contains(&self, point: Point) -> bool {
        // The library's winding number takes long: it looks for the extrema of every side.
        let Rect { x0, y0, x1, y1 } = self.bounds;
        let left = |Line { p0, p1 }: &Line| {
            (p0.y <= point.y) != (p1.y <= point.y)
                && p0.x + (p1.x - p0.x) * ((point.y - p0.y) / (p1.y - p0.y)) <= point.x
        };
        let near = (x0..=x1).contains(&point.x) && (y0..=y1).contains(&point.y);
        near && self.sides().filter(left).count() % 2 != 0
    }

    #[must_use]
    pub fn mapped(&self, map: Affine) -> Self {
        Self::of_path(map * &self.path)
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

#[cfg(test)]
mod tests {
    use super::*;

    /// Against the winding number that kurbo finds, over and round a ring with a hole, corners and sides among the points.
    #[test]
    fn a_point_lies_in_an_outline_where_its_winding_number_is_odd() {
        let outline = Outline::of(&[(0.0, 0.0), (6.0, 1.0), (5.0, 5.0), (3.0, 2.0), (1.0, 6.0)])
            .with_hole(vec![Point::new(0.75, 1.0), Point::new(2.0, 1.25), Point::new(1.25, 3.0)]);
        let mut inside = 0;
        for point in
            (-4..=28).flat_map(|x| (-4..=28).map(move |y| Point::new(f64::from(x) / 4.0, f64::from(y) / 4.0)))
        {
            assert_eq!(outline.contains(point), outline.path.winding(point) % 2 != 0, "{point:?}");
            inside += usize::from(outline.contains(point));
        }
        assert!((100..300).contains(&inside), "{inside}");
    }

    #[test]
    fn the_box_round_an_outline_is_that_of_its_corners() {
        let outline = Outline::rectangle(Rect::new(1.0, 2.0, 4.0, 3.0)).mapped(Affine::translate((1.0, 0.0)));
        assert_eq!(outline.bounds(), outline.path.bounding_box());
        assert_eq!(outline.bounds(), Rect::new(2.0, 2.0, 5.0, 3.0));
        assert_eq!(Outline::of(&[]).bounds(), BezPath::new().bounding_box());
    }
}

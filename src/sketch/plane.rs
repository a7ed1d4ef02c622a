//! What drawings need of the plane beside the library: x to the right, y down, in millimetres.

pub(crate) use kurbo::{Affine, Line, Point, Rect, Vec2};

/// A box that holds nothing and grows by what joins it.
pub(crate) const EMPTY: Rect = Rect::new(f64::INFINITY, f64::INFINITY, f64::NEG_INFINITY, f64::NEG_INFINITY);

/// A point.
pub(crate) const fn at(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

/// The same direction, one millimetre long; the direction of x where there is none.
pub(crate) fn unit(way: Vec2) -> Vec2 {
    if way.length() > 0.0 { way.normalize() } else { Vec2::new(1.0, 0.0) }
}

/// The box round some points.
pub(crate) fn around(points: impl IntoIterator<Item = Point>) -> Rect {
    points.into_iter().fold(EMPTY, |sum, point| sum.union_pt(point))
}

/// The box, larger on every side.
pub(crate) fn grown(rect: Rect, by: f64) -> Rect {
    rect.inflate(by, by)
}

pub(crate) fn corners(rect: Rect) -> [Point; 4] {
    [at(rect.x0, rect.y0), at(rect.x1, rect.y0), at(rect.x1, rect.y1), at(rect.x0, rect.y1)]
}

/// The number from `least` to `most` that is nearest; `most` where the two have changed places, as they may on
/// parts whose sizes do not go together.
pub(crate) fn within(value: f64, least: f64, most: f64) -> f64 {
    value.max(least).min(most)
}

/// Whether two segments meet.
pub(crate) fn segments_meet(a: Line, b: Line) -> bool {
    let side = |line: Line, point: Point| (line.p1 - line.p0).cross(point - line.p0);
    let apart = |p: f64, q: f64| (p > 0.0 && q > 0.0) || (p < 0.0 && q < 0.0);
    let boxes = |line: Line| Rect::from_points(line.p0, line.p1);
    boxes(a).overlaps(boxes(b))
        && !apart(side(a, b.p0), side(a, b.p1))
        && !apart(side(b, a.p0), side(b, a.p1))
}

/// Whether a segment comes into a box.
pub(crate) fn enters(line: Line, rect: Rect) -> bool {
    // Most lines are nowhere near it.
    if !Rect::from_points(line.p0, line.p1).overlaps(rect) {
        return false;
    }
    let [a, b, c, d] = corners(rect);
    let holds = |point| rect.contains(point);
    holds(line.p0)
        || holds(line.p1)
        || segments_meet(line, Line::new(a, c))
        || segments_meet(line, Line::new(b, d))
}

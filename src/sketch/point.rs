//! Points, directions and boxes in the plane: x to the right, y down, in millimetres.

use std::ops::{Add, Mul, Neg, Sub};

/// A point, or the way from one point to another.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Point {
    pub x: f64,
    pub y: f64,
}

/// A point.
pub(crate) const fn at(x: f64, y: f64) -> Point {
    Point { x, y }
}

impl Point {
    /// From the origin in a direction, angles turning from x towards y.
    pub fn polar(radius: f64, angle: f64) -> Self {
        at(radius * angle.cos(), radius * angle.sin())
    }

    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y
    }

    pub fn cross(self, other: Self) -> f64 {
        self.x * other.y - self.y * other.x
    }

    pub fn is_finite(self) -> bool {
        self.x.is_finite() && self.y.is_finite()
    }

    pub fn length(self) -> f64 {
        self.x.hypot(self.y)
    }

    pub fn distance(self, other: Self) -> f64 {
        (other - self).length()
    }

    /// The same direction, one millimetre long; the direction of x where there is none.
    pub fn unit(self) -> Self {
        let length = self.length();
        if length > 0.0 { self * (1.0 / length) } else { at(1.0, 0.0) }
    }

    /// A quarter turn from x towards y.
    pub fn normal(self) -> Self {
        at(-self.y, self.x)
    }

    /// The mirror image across the axis y = 0.
    pub fn mirrored(self) -> Self {
        at(self.x, -self.y)
    }

    /// Between this point (0) and another (1).
    pub fn towards(self, other: Self, share: f64) -> Self {
        self + (other - self) * share
    }

    /// Distance from the segment between two points.
    pub fn distance_from(self, from: Self, to: Self) -> f64 {
        let way = to - from;
        let share =
            if way.dot(way) > 0.0 { ((self - from).dot(way) / way.dot(way)).clamp(0.0, 1.0) } else { 0.0 };
        self.distance(from.towards(to, share))
    }
}

impl Add for Point {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        at(self.x + other.x, self.y + other.y)
    }
}

impl Sub for Point {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        at(self.x - other.x, self.y - other.y)
    }
}

impl Mul<f64> for Point {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        at(self.x * factor, self.y * factor)
    }
}

impl Neg for Point {
    type Output = Self;
    fn neg(self) -> Self {
        at(-self.x, -self.y)
    }
}

/// Whether two segments meet.
pub(crate) fn segments_meet(a: (Point, Point), b: (Point, Point)) -> bool {
    let side = |line: (Point, Point), point: Point| (line.1 - line.0).cross(point - line.0);
    let apart = |p: f64, q: f64| (p > 0.0 && q > 0.0) || (p < 0.0 && q < 0.0);
    let boxes = Rect::around([a.0, a.1]).touches(Rect::around([b.0, b.1]));
    boxes && !apart(side(a, b.0), side(a, b.1)) && !apart(side(b, a.0), side(b, a.1))
}

/// An upright box.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Rect {
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
}

impl Rect {
    /// A box that holds nothing and grows by what joins it.
    pub const EMPTY: Self =
        Self { left: f64::INFINITY, top: f64::INFINITY, right: f64::NEG_INFINITY, bottom: f64::NEG_INFINITY };

    pub fn new(left: f64, top: f64, right: f64, bottom: f64) -> Self {
        Self { left, top, right, bottom }
    }

    /// The box round some points.
    pub fn around(points: impl IntoIterator<Item = Point>) -> Self {
        points.into_iter().fold(Self::EMPTY, |sum, p| sum.join(Self::new(p.x, p.y, p.x, p.y)))
    }

    pub fn join(self, other: Self) -> Self {
        Self {
            left: self.left.min(other.left),
            top: self.top.min(other.top),
            right: self.right.max(other.right),
            bottom: self.bottom.max(other.bottom),
        }
    }

    pub fn grown(self, by: f64) -> Self {
        Self::new(self.left - by, self.top - by, self.right + by, self.bottom + by)
    }

    pub fn width(self) -> f64 {
        self.right - self.left
    }

    pub fn height(self) -> f64 {
        self.bottom - self.top
    }

    pub fn centre(self) -> Point {
        at((self.left + self.right) / 2.0, (self.top + self.bottom) / 2.0)
    }

    pub fn contains(self, point: Point) -> bool {
        point.x >= self.left && point.x <= self.right && point.y >= self.top && point.y <= self.bottom
    }

    /// Whether two boxes share a point.
    pub fn touches(self, other: Self) -> bool {
        self.left <= other.right
            && other.left <= self.right
            && self.top <= other.bottom
            && other.top <= self.bottom
    }

    pub fn corners(self) -> [Point; 4] {
        [
            at(self.left, self.top),
            at(self.right, self.top),
            at(self.right, self.bottom),
            at(self.left, self.bottom),
        ]
    }

    /// Whether a segment comes into the box.
    pub fn meets_segment(self, from: Point, to: Point) -> bool {
        let [a, b, c, d] = self.corners();
        self.contains(from)
            || self.contains(to)
            || segments_meet((from, to), (a, c))
            || segments_meet((from, to), (b, d))
    }
}

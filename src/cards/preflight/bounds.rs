//! Boxes on a face, in millimetres from the corner of the cut.

/// A box: left, top, right, bottom.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Bounds {
    pub left: f64,
    pub top: f64,
    pub right: f64,
    pub bottom: f64,
}

impl Bounds {
    /// A box of a tree, which is measured from the corner of the bleed.
    pub fn of(ink: usvg::Rect, bleed: f64) -> Self {
        Self {
            left: f64::from(ink.left()) - bleed,
            top: f64::from(ink.top()) - bleed,
            right: f64::from(ink.right()) - bleed,
            bottom: f64::from(ink.bottom()) - bleed,
        }
    }

    /// How far this box runs out of another; at most 0 where it lies inside.
    pub fn outside(self, other: Self) -> f64 {
        self.over(other).into_iter().fold(f64::NEG_INFINITY, f64::max)
    }

    /// How far this box runs out of another on its left, top, right and bottom.
    pub fn over(self, other: Self) -> [f64; 4] {
        [other.left - self.left, other.top - self.top, self.right - other.right, self.bottom - other.bottom]
    }

    /// How far two boxes lie over each other; at most 0 where they don't.
    pub fn overlap(self, other: Self) -> f64 {
        let common = self.common(other);
        common.width().min(common.height())
    }

    /// What two boxes have in common; turned inside out where they have nothing.
    pub fn common(self, other: Self) -> Self {
        Self {
            left: self.left.max(other.left),
            top: self.top.max(other.top),
            right: self.right.min(other.right),
            bottom: self.bottom.min(other.bottom),
        }
    }

    pub fn grown(self, by: f64) -> Self {
        Self { left: self.left - by, top: self.top - by, right: self.right + by, bottom: self.bottom + by }
    }

    pub fn width(self) -> f64 {
        self.right - self.left
    }

    pub fn height(self) -> f64 {
        self.bottom - self.top
    }

    pub fn holds(self, (x, y): (f64, f64)) -> bool {
        (self.left..=self.right).contains(&x) && (self.top..=self.bottom).contains(&y)
    }
}

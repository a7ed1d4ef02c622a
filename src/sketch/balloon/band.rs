//! The row or column that balloons stand in.

use crate::sketch::plane::{Point, Rect, at};

/// The side of the drawing that balloons stand on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Band {
    /// A row above it.
    Above,
    /// A column to its right.
    Right,
    /// A row below it.
    Below,
    /// A column to its left.
    Left,
}

impl Band {
    /// All of them, in the order of their numbers, those first that are read most easily.
    pub const ALL: [Self; 4] = [Self::Above, Self::Right, Self::Below, Self::Left];

    /// Whether it is a row.
    pub fn is_level(self) -> bool {
        matches!(self, Self::Above | Self::Below)
    }

    /// Where the band lies that stands off so far from a box.
    pub fn level(self, base: Rect, off: f64) -> f64 {
        match self {
            Self::Above => base.y0 - off,
            Self::Right => base.x1 + off,
            Self::Below => base.y1 + off,
            Self::Left => base.x0 - off,
        }
    }

    /// Where a box starts and ends along the band.
    pub fn extent(self, of: Rect) -> (f64, f64) {
        if self.is_level() { (of.x0, of.x1) } else { (of.y0, of.y1) }
    }
}

/// What turns the band's own coordinates into the page's.
#[derive(Debug, Clone, Copy)]
pub(super) struct Frame {
    pub band: Band,
    /// Where the balloons' centres lie across the band.
    pub level: f64,
}

impl Frame {
    pub fn along(self, point: Point) -> f64 {
        if self.band.is_level() { point.x } else { point.y }
    }

    pub fn across(self, point: Point) -> f64 {
        if self.band.is_level() { point.y } else { point.x }
    }

    pub fn place(self, along: f64) -> Point {
        if self.band.is_level() { at(along, self.level) } else { at(self.level, along) }
    }
}

//! The row or column that balloons stand in.

use crate::sketch::plane::{Point, at};

/// The side of the drawing that balloons stand on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Band {
    /// A row above it.
    Above,
    /// A column to its right.
    Right,
}

/// What turns the band's own coordinates into the page's.
#[derive(Clone, Copy)]
pub(super) struct Frame {
    pub band: Band,
    /// Where the balloons' centres lie across the band.
    pub level: f64,
}

impl Frame {
    pub fn along(self, point: Point) -> f64 {
        if self.band == Band::Above { point.x } else { point.y }
    }

    pub fn place(self, along: f64) -> Point {
        if self.band == Band::Above { at(along, self.level) } else { at(self.level, along) }
    }
}

//! Size and orientation of a face: those that cards have, and those of what is printed beside them.

use crate::catalogue::{CardFormat, Orientation};
use crate::units::Length;

/// Size and orientation of a face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shape {
    /// What its size is called, such as "A5".
    pub size: &'static str,
    /// Which way up it is read.
    pub orientation: Orientation,
    /// Width and height of the trimmed face.
    pub trim: (Length, Length),
}

/// A5 (ISO 216), upright: what is filled in by hand.
pub const A5: Shape = Shape {
    size: "A5",
    orientation: Orientation::Portrait,
    trim: (Length::from_mm(148.0), Length::from_mm(210.0)),
};

impl Shape {
    /// Whether it is wider than high.
    #[must_use]
    pub fn lies(self) -> bool {
        self.orientation == Orientation::Landscape
    }
}

impl From<CardFormat> for Shape {
    fn from(format: CardFormat) -> Self {
        Self { size: format.size.word(), orientation: format.orientation, trim: format.trim() }
    }
}

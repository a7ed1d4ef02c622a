//! The bore of a pressed tube.

use crate::units::Length;

/// The bore of a pressed tube before it is pressed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Bore {
    /// Round: the diameter.
    Round(Length),
    /// Oval, for two legs of a rope side by side.
    Oval {
        /// The lesser size: across one leg.
        width: Length,
        /// The greater size: across both legs.
        height: Length,
    },
}

impl Bore {
    /// What lies across one leg: the diameter, or the width of an oval.
    #[must_use]
    pub fn width(self) -> Length {
        match self {
            Self::Round(width) | Self::Oval { width, .. } => width,
        }
    }
}

//! A mark on a gripping part and its fitting.

use super::ColourCode;

/// Paint, text and notches that tell look-alikes apart.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Mark {
    /// The paint.
    pub colour: ColourCode,
    /// The text on it.
    pub text: String,
    /// Number of notches.
    pub notches: u32,
}

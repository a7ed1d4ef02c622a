//! What is looked at closely where a gripping part meets conductor and seat.

use crate::sketch::appearance::Tone;
use crate::sketch::plane::Point;

/// What is seen close up, in millimetres of the object, back to front.
pub(crate) struct Contact {
    pub surfaces: Vec<Surface>,
    /// What is in the middle of the view: the gap, where there is one.
    pub focus: Point,
    /// How much height is worth seeing.
    pub reach: f64,
    /// Heights of the edges of the gap, and what is said of it; nothing where the surfaces touch.
    pub gap: Option<(f64, f64, &'static str)>,
    /// Edges that the right part has there.
    pub edge: Vec<Point>,
    pub unsound: bool,
}

/// A surface with its tone; gripping parts have the heaviest outline.
pub(crate) struct Surface {
    pub ring: Vec<Point>,
    pub tone: Tone,
    pub grips: bool,
    /// How it is hatched where it is cut.
    pub hatch: Option<usize>,
}

/// Smaller gaps than this are none.
pub(super) const LEAST_GAP: f64 = 0.05;

impl Surface {
    /// Of what is neither hatched nor grips: wires, what is open, ink.
    pub(super) fn plain(ring: Vec<Point>, tone: Tone) -> Self {
        Self { ring, tone, grips: false, hatch: None }
    }

    /// A cut surface of the gripping part.
    pub(super) fn gripping(ring: Vec<Point>, tone: Tone) -> Self {
        Self { ring, tone, grips: true, hatch: Some(1) }
    }

    /// A cut surface of what it sits in.
    pub(super) fn seat(ring: Vec<Point>) -> Self {
        Self { ring, tone: Tone::Paper, grips: false, hatch: Some(0) }
    }

    /// An edge of the gripping part round what is open.
    pub(super) fn opening(ring: Vec<Point>, tone: Tone) -> Self {
        Self { ring, tone, grips: true, hatch: None }
    }
}

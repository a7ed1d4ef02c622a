//! How a face is set.

use super::tightness::Tightness;

/// How a description is set.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Setting {
    pub tightness: Tightness,
    /// Which of its forms.
    pub form: usize,
    /// The height of the drawing that the program settles; none where it is left out.
    pub drawing: Option<f64>,
    /// The part of the width that the first of two columns has.
    pub share: f64,
    /// How each child of the face keeps out of the punched corner.
    pub clear: Vec<Clear>,
    /// How high the face is; as high as it comes without one.
    pub height: Option<f64>,
}

/// How an element keeps out of the punched corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Clear {
    /// It does not reach it.
    Already,
    /// It is narrower.
    Beside,
    /// It stands so much lower.
    Below(f64),
}

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

impl Mark {
    /// The mark in words, as a crew reads it.
    ///
    /// ```
    /// use fittingcards::colour::{ColourCode, Mark};
    /// let mark = Mark { colour: ColourCode::VT, text: "K2".into(), notches: 2 };
    /// assert_eq!(mark.words(), "violet K2, 2 notches");
    /// ```
    #[must_use]
    pub fn words(&self) -> String {
        let paint = [self.colour.word(), &self.text].join(" ");
        match self.notches {
            0 => format!("{}, no notch", paint.trim_end()),
            1 => format!("{}, 1 notch", paint.trim_end()),
            many => format!("{}, {many} notches", paint.trim_end()),
        }
    }
}

//! How a text is set: the cut of the letters and their size.

use crate::units::Length;

/// A cut of the built-in letters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "the names say it")]
pub enum Cut {
    Regular,
    Bold,
    Condensed,
    CondensedBold,
}

impl Cut {
    /// The family that the cut belongs to.
    #[must_use]
    pub fn family(self) -> &'static str {
        match self {
            Self::Regular | Self::Bold => "DejaVu Sans",
            Self::Condensed | Self::CondensedBold => "DejaVu Sans Condensed",
        }
    }

    /// The weight as CSS counts it.
    #[must_use]
    pub fn weight(self) -> u16 {
        match self {
            Self::Regular | Self::Condensed => 400,
            Self::Bold | Self::CondensedBold => 700,
        }
    }

    /// The cut by the word that layouts use for it.
    ///
    /// ```
    /// use fittingcards::typeset::Cut;
    /// assert_eq!(Cut::from_word("condensed-bold"), Some(Cut::CondensedBold));
    /// ```
    #[must_use]
    pub fn from_word(word: &str) -> Option<Self> {
        match word {
            "regular" => Some(Self::Regular),
            "bold" => Some(Self::Bold),
            "condensed" => Some(Self::Condensed),
            "condensed-bold" => Some(Self::CondensedBold),
            _ => None,
        }
    }
}

/// A cut at a size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Style {
    /// The cut of the letters.
    pub cut: Cut,
    /// The size of the type, which is the height of its em square.
    pub size: Length,
}

impl Style {
    /// A cut at a size in typographic points.
    ///
    /// ```
    /// use fittingcards::typeset::{Cut, Style};
    /// assert!((Style::points(Cut::Bold, 18.0).size.mm() - 6.35).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn points(cut: Cut, points: f64) -> Self {
        Self { cut, size: Length::from_pt(points) }
    }
}

//! How a text is set: the style of the letters and their size.

use crate::units::Length;
use serde::Deserialize;

/// A style of the built-in letters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[expect(missing_docs, reason = "the names say it")]
pub enum FontStyle {
    Regular,
    Bold,
    #[default]
    Condensed,
    CondensedBold,
    /// Condensed, with figures and their units in bold.
    CondensedValues,
}

impl FontStyle {
    /// the family that the style belongs to.
    #[must_use]
    pub fn family(self) -> &'static str {
        match self {
            Self::Regular | Self::Bold => "DejaVu Sans",
            Self::Condensed | Self::CondensedBold | Self::CondensedValues => "DejaVu Sans Condensed",
        }
    }

    /// The style of its figures and their units.
    pub(super) fn of_values(self) -> Self {
        if self == Self::CondensedValues { Self::CondensedBold } else { self }
    }

    /// The weight as CSS counts it.
    #[must_use]
    pub fn weight(self) -> u16 {
        match self {
            Self::Regular | Self::Condensed | Self::CondensedValues => 400,
            Self::Bold | Self::CondensedBold => 700,
        }
    }
}

/// A font style at a size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Style {
    /// The style of the letters.
    pub font_style: FontStyle,
    /// The size of the type, which is the height of its em square.
    pub size: Length,
}

impl Style {
    /// A font style at a size in typographic points.
    ///
    /// ```
    /// use fittingcards::typeset::{FontStyle, Style};
    /// assert!((Style::points(FontStyle::Bold, 18.0).size.mm() - 6.35).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn points(font_style: FontStyle, points: f64) -> Self {
        Self { font_style, size: Length::from_pt(points) }
    }
}

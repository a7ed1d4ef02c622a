//! Classes of type: what a text is for settles how small it may become.

use serde::Deserialize;

/// What a text on a card is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum TypeClass {
    /// The stamp of the gripping part: the first thing seen.
    Stamp,
    /// The text of the mark.
    Mark,
    /// Stamps side by side, on the card of a body.
    Stamps,
    /// The name of the card.
    Title,
    /// What is measured or read, and what is right.
    Check,
    /// What is done, one after the other.
    Step,
    /// Everything that is read once.
    #[default]
    Body,
    /// Number, edition, notices.
    Foot,
}

impl TypeClass {
    /// The word that layouts and the style use for it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Stamp => "stamp",
            Self::Mark => "mark",
            Self::Stamps => "stamps",
            Self::Title => "title",
            Self::Check => "check",
            Self::Step => "step",
            Self::Body => "body",
            Self::Foot => "foot",
        }
    }

    /// The least from one base line to the next, in type sizes, at which lines are followed with a finger (common
    /// practice, no source).
    #[must_use]
    pub fn least_leading(self) -> f64 {
        if self == Self::Step { 1.15 } else { 1.0 }
    }

    /// The smallest type in points for a text that must stand in one line and is longer than any line that the card has
    /// for it: a long stamp is still read as surely as a check is (common practice, no source).
    #[must_use]
    pub fn least_in_one_line(self) -> f64 {
        match self {
            Self::Stamp => 10.0,
            Self::Stamps | Self::Check => 8.5,
            _ => self.least_legible(),
        }
    }

    /// The smallest type in points that is legible for what the class is for, at arm's length in bad light; no
    /// style goes under it (common practice, no source). That of the foot is the catalogue's `smallest_type_pt`.
    #[must_use]
    pub fn least_legible(self) -> f64 {
        match self {
            Self::Stamp => 18.0,
            Self::Mark => 14.0,
            Self::Stamps | Self::Check => 10.0,
            Self::Title => 9.0,
            Self::Step | Self::Body => 8.5,
            Self::Foot => 0.0,
        }
    }
}

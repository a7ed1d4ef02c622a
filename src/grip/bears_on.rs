//! The side that a wedge bears on.

/// The side of a grooved wire that lies across the wedge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "the names say it")]
pub enum BearsOn {
    Width,
    Height,
}

impl BearsOn {
    /// The word that records and JSON carry.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Width => "width",
            Self::Height => "height",
        }
    }
}

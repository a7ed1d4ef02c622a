//! Signs that are drawn, one meaning each.

use serde::{Deserialize, Serialize};

/// What a drawn sign says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Deserialize, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Sign {
    /// The right part.
    #[default]
    Right,
    /// Another part that is proven here too.
    Proven,
    /// Wrong, and not seen once closed.
    Hidden,
    /// Wrong, and seen by its mark only.
    Marked,
    /// Wrong, and it shows.
    Wrong,
    /// Can't be built.
    Apart,
    /// Must not be used.
    Barred,
    /// Not known: treat as wrong.
    Unknown,
}

impl Sign {
    /// What it means, in words.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        match self {
            Self::Right => "right part",
            Self::Proven => "proven here too",
            Self::Hidden => "not seen once closed",
            Self::Marked => "seen by its mark only",
            Self::Wrong => "wrong, it shows",
            Self::Barred => "do not use",
            Self::Apart => "will not go in",
            Self::Unknown => "not known: treat as wrong",
        }
    }
}

//! Signs that are drawn, one meaning each.

/// What a drawn sign says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Sign {
    /// The right part.
    Right,
    /// Another part that is proven here too.
    Proven,
    /// Wrong, and not seen once closed.
    Hidden,
    /// Wrong, and it shows.
    Wrong,
    /// Must not be used.
    Barred,
    /// Can't be built.
    Apart,
    /// Not known: treat as wrong.
    Unknown,
}

impl Sign {
    /// All of them.
    pub const ALL: [Self; 7] =
        [Self::Right, Self::Proven, Self::Hidden, Self::Wrong, Self::Barred, Self::Apart, Self::Unknown];

    /// What it means, in words.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        match self {
            Self::Right => "right part",
            Self::Proven => "proven too",
            Self::Hidden => "wrong, not seen",
            Self::Wrong => "wrong, it shows",
            Self::Barred => "do not use",
            Self::Apart => "cannot be built",
            Self::Unknown => "not known",
        }
    }

    /// The word that layouts use for it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Right => "right",
            Self::Proven => "proven",
            Self::Hidden => "hidden",
            Self::Wrong => "wrong",
            Self::Barred => "barred",
            Self::Apart => "apart",
            Self::Unknown => "unknown",
        }
    }
}

//! The kinds of record that have a sheet.

/// A kind of record that has a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum SheetKind {
    /// Pieces of fittings.
    Parts,
    /// What fittings hold.
    Conductors,
    /// Assemblies.
    Fittings,
}

impl SheetKind {
    /// Every one of them.
    pub const ALL: [Self; 3] = [Self::Parts, Self::Conductors, Self::Fittings];

    /// The folder of its records, which is also what its sheet is called.
    #[must_use]
    pub fn folder(self) -> &'static str {
        match self {
            Self::Parts => "parts",
            Self::Conductors => "conductors",
            Self::Fittings => "fittings",
        }
    }

    /// The kind of this name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|kind| kind.folder().eq_ignore_ascii_case(name.trim()))
    }

    /// The key that a record is known by.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Conductors => "id",
            Self::Parts | Self::Fittings => "number",
        }
    }
}

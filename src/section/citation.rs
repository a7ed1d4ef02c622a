//! Where a figure comes from.

/// A standard, its edition, the table in it, and what else is to be said; all optional.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Citation {
    /// The standard or document, such as "EN 50182".
    pub standard: String,
    /// Its edition or year.
    pub edition: String,
    /// The table or clause.
    pub table: String,
    /// Anything else, such as "from memory".
    pub note: String,
}

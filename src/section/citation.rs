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

impl std::fmt::Display for Citation {
    /// Standard and edition, table, note; nothing where nothing is known.
    fn fmt(&self, formatter: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let standard = match (self.standard.as_str(), self.edition.as_str()) {
            (standard, "") => standard.to_owned(),
            (standard, edition) => format!("{standard}:{edition}"),
        };
        let parts = [standard.as_str(), &self.table, &self.note];
        let said: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
        formatter.write_str(&said.join(", "))
    }
}

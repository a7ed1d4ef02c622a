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
        formatter.write_str(&self.standard)?;
        let mut said = !self.standard.is_empty();
        for (mark, part) in [(":", &self.edition), (", ", &self.table), (", ", &self.note)] {
            if !part.is_empty() {
                formatter.write_str(if said { mark } else { "" })?;
                formatter.write_str(part)?;
                said = true;
            }
        }
        Ok(())
    }
}

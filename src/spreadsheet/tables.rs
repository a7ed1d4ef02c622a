//! Tables that were read, and what a spreadsheet holds their cells for.

use super::kind::SheetKind;
use crate::records::Cell;
use crate::source::FilePath;
use std::collections::BTreeMap;

/// A table of records, with what its cells are.
#[derive(Debug, Clone)]
pub struct ReadTable {
    /// The kind of its records.
    pub kind: SheetKind,
    /// The file, or the sheet of it, as messages name it.
    pub file: FilePath,
    /// The names of the columns.
    pub head: Vec<Cell>,
    /// The rows below.
    pub rows: Vec<Vec<ReadCell>>,
    /// Whether numbers may have a comma before their decimals: where semicolons or tabs part the cells.
    pub decimal_commas: bool,
    /// The records that the table was written from, each with the hash of its cells; nothing where it does not say.
    pub exported: Option<BTreeMap<String, String>>,
}

/// A cell of a table.
#[derive(Debug, Clone)]
pub struct ReadCell {
    /// What stands in it, and where.
    pub cell: Cell,
    /// What the spreadsheet holds it for.
    pub held: Held,
}

/// What a spreadsheet holds a cell for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Held {
    /// A text: its figures are meant as they are written.
    Text,
    /// A number, true or false: 14.0 is 14 there.
    Figure,
    /// A number that is shown as a percentage: 0.25 for 25 %.
    Percent,
    /// A day or a time, which may have been typed as 3-4.
    Day,
    /// Nothing is said, as in CSV: the letters are those that somebody wrote.
    Letters,
}

impl ReadCell {
    /// The same with a point before decimals.
    pub(super) fn with_point(&self) -> Self {
        let mut read = self.clone();
        if !read.cell.text.contains('.') {
            read.cell.text = read.cell.text.replacen(',', ".", 1);
        }
        read
    }
}

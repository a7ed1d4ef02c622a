//! What a row changes of its record.

use super::cells::{CellValue, as_written_out};
use super::figures::{are_one_number, number};
use super::tables::{Held, ReadCell};
use crate::source::{FilePath, Place};

/// What a row changes of a record.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RecordChange {
    /// The number or id of the record.
    pub record: String,
    /// The file that it stands in, or will.
    pub file: FilePath,
    /// Whether it is new.
    pub is_new: bool,
    /// Its keys that change, in the order of the columns.
    pub keys: Vec<KeyChange>,
}

/// What a cell changes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KeyChange {
    /// The column.
    pub column: String,
    /// What the record says; nothing where it does not have the key.
    pub was: Option<String>,
    /// What it will say; nothing where the key is taken out.
    pub is: Option<String>,
    /// The cell.
    pub cell: Place,
}

impl RecordChange {
    /// The change of a column, or of one below it; else the first.
    pub(super) fn key(&self, column: &str) -> Option<&KeyChange> {
        let is_below = |key: &&KeyChange| key.column.starts_with(&format!("{column}."));
        let own = self.keys.iter().find(|key| key.column == column);
        own.or_else(|| self.keys.iter().find(is_below)).or(self.keys.first())
    }
}

impl KeyChange {
    /// The change in words, such as `bore_mm: 14.3 becomes 14.4`.
    #[must_use]
    pub fn words(&self) -> String {
        let Self { column, was, is, .. } = self;
        match (was, is) {
            (Some(was), Some(is)) => format!("{column}: {was} becomes {is}"),
            (None, Some(is)) => format!("{column}: {is} is added"),
            (Some(was), None) => format!("{column}: {was} is taken out"),
            (None, None) => column.clone(),
        }
    }
}

/// What a cell makes of a value: `None` where they say the same, else what it will be.
///
/// A spreadsheet writes 14.0 as 14: where the values are equal, the digits of the record stay, unless the spreadsheet
/// holds the cell for a text. `list` is the path of a list that stands in one cell.
pub(super) fn changed(
    current: Option<&CellValue>,
    read: &ReadCell,
    list: Option<&str>,
) -> Option<Option<String>> {
    let text = read.cell.text.replace("\r\n", "\n");
    let text = list.map(|path| as_written_out(path, &text)).unwrap_or(text);
    let is = (!text.is_empty()).then_some(text);
    let is_same = match (current, &is) {
        (None, None) => true,
        (Some(current), None) => current.text.is_empty(),
        (None, Some(_)) => false,
        (Some(current), Some(text)) => says_the_same(current, text, read.held),
    };
    (!is_same).then_some(is)
}

fn says_the_same(current: &CellValue, text: &str, held: Held) -> bool {
    let is_equal = match held {
        Held::Text | Held::Day => false,
        // The spreadsheet has no more digits than these.
        Held::Figure | Held::Percent => are_one_number(&current.text, text),
        Held::Letters => number(&current.text).is_some_and(|was| number(text) == Some(was)),
    };
    current.text.trim() == text.trim()
        || current.is_truth && current.text.eq_ignore_ascii_case(text)
        || is_equal
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::records::Cell;

    fn differs(was: &str, is: &str, held: Held) -> bool {
        let current = CellValue { text: was.to_owned(), number: None, is_truth: was == "true" };
        let cell = Cell { text: is.to_owned(), line: 2, column: 1 };
        changed(Some(&current), &ReadCell { cell, held }, None).is_some()
    }

    #[test]
    fn equal_numbers_are_no_change_unless_they_are_meant_as_texts() {
        for (was, is) in
            [("14.0", "14"), ("0.50", ".5"), ("1e3", "1000"), ("true", "TRUE"), ("", ""), ("a ", "a")]
        {
            assert!(!differs(was, is, Held::Letters), "{was} {is}");
        }
        for (was, is, held) in [
            ("14.0", "14", Held::Text),
            ("14.0", "14.1", Held::Letters),
            ("14.0", "", Held::Letters),
            ("nan", "NaN", Held::Letters),
            ("a", "A", Held::Letters),
            ("5.3999999999999995", "5.4", Held::Letters),
        ] {
            assert!(differs(was, is, held), "{was} {is}");
        }
        assert!(!differs("5.3999999999999995", "5.4", Held::Figure));
    }
}

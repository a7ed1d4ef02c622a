//! What an XLSX file says of the records that it was written from, in a sheet of its own that nobody sees: of each record
//! a hash of its cells. So `import` tells what somebody has changed in the sheet from what has changed in the records.

use super::cells::as_written_out;
use super::columns::{Columns, Sort};
use super::figures::{number, rounded};
use super::kind::SheetKind;
use std::collections::BTreeMap;

/// The name of the sheet.
pub(super) const EXPORTED_SHEET: &str = "as exported";

/// The names of its columns.
pub(super) const EXPORTED_HEAD: [&str; 3] = ["kind", "record", "hash of its cells"];

/// How many digits of a hash are kept.
const DIGITS: usize = 16;

/// The hashes of the records by their kinds and their numbers or ids.
#[derive(Debug, Clone, Default)]
pub(super) struct Exported(BTreeMap<SheetKind, BTreeMap<String, String>>);

impl Exported {
    /// What stands in the rows of the sheet. A row that is no longer whole says nothing of its record.
    pub(super) fn read(rows: impl Iterator<Item = Vec<String>>) -> Self {
        let mut exported = Self::default();
        for row in rows {
            let [kind, record, hash] = row.as_slice() else { continue };
            if let Some(kind) = SheetKind::named(kind) {
                exported.0.entry(kind).or_default().insert(record.clone(), hash.clone());
            }
        }
        exported
    }

    /// The records of a kind.
    pub(super) fn of(&self, kind: SheetKind) -> BTreeMap<String, String> {
        self.0.get(&kind).cloned().unwrap_or_default()
    }
}

/// The hash of cells, by the names of their columns in whatever order; one that is empty is as good as none.
pub(super) fn hash_of<'c>(cells: impl Iterator<Item = (&'c str, &'c str)>, columns: &Columns) -> String {
    let named = cells.map(|(column, text)| (column, plainly(column, text, columns)));
    let named: BTreeMap<&str, String> = named.filter(|(_, text)| !text.is_empty()).collect();
    let mut hasher = blake3::Hasher::new();
    for (column, text) in named {
        for piece in [column, &text] {
            hasher.update(&(piece.len() as u64).to_le_bytes()).update(piece.as_bytes());
        }
    }
    hasher.finalize().to_hex().as_str()[..DIGITS].to_owned()
}

/// A cell as any spreadsheet gives it back that nobody has changed it in.
fn plainly(column: &str, text: &str, columns: &Columns) -> String {
    let text = text.trim().replace("\r\n", "\n");
    match columns.sort(column) {
        _ if columns.is_list(column) => as_written_out(column, &text),
        Sort::Number => number(&text).map_or(text, |number| rounded(number).to_string()),
        Sort::Truth => text.to_ascii_lowercase(),
        _ => text,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hash(cells: &[(&str, &str)]) -> String {
        hash_of(cells.iter().copied(), &Columns::of(SheetKind::Parts))
    }

    /// A spreadsheet drops zeros at the end of numbers, and columns are moved and added: no change of a record.
    #[test]
    fn what_a_spreadsheet_does_to_a_row_leaves_its_hash() {
        let was = [("number", "C-1"), ("stamp", "14.0"), ("geometry.collet.bore_mm", "14.30")];
        let is =
            [("geometry.collet.bore_mm", "14.3"), ("drawing", " "), ("stamp", "14.0"), ("number", "C-1")];
        assert_eq!(hash(&was), hash(&is));
        assert_eq!(hash(&was).len(), DIGITS);
        for other in [
            [("number", "C-1"), ("stamp", "14"), ("geometry.collet.bore_mm", "14.30")],
            [("number", "C-1"), ("stamp", "14.0"), ("geometry.collet.bore_mm", "14.31")],
            [("number", "C-1"), ("drawing", "14.0"), ("geometry.collet.bore_mm", "14.30")],
        ] {
            assert_ne!(hash(&was), hash(&other), "{other:?}");
        }
    }
}

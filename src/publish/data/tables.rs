//! Parts, conductors and fittings as tables, for spreadsheets: what `import` takes back.

use crate::records::written_table;
use crate::spreadsheet::Sheet;

/// The bytes of a CSV.
pub(super) fn table(sheet: &Sheet) -> Result<Vec<u8>, csv::Error> {
    let head: Vec<&str> = sheet.head.iter().map(String::as_str).collect();
    written_table(&head, &sheet.texts())
}

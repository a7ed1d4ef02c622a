//! Parts, conductors and fittings as tables, for spreadsheets: what `import` takes back.

use crate::records::written_table;
use crate::spreadsheet::Sheet;

/// A CSV for each kind, with its path.
pub(super) fn separate(sheets: &[Sheet]) -> Result<Vec<(String, Vec<u8>)>, (String, csv::Error)> {
    let table = |sheet: &Sheet| {
        let path = format!("data/{}.csv", sheet.kind.folder());
        let head: Vec<&str> = sheet.head.iter().map(String::as_str).collect();
        match written_table(&head, &sheet.texts()) {
            Ok(table) => Ok((path, table)),
            Err(error) => Err((path, error)),
        }
    };
    sheets.iter().map(table).collect()
}

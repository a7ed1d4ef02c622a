//! Tables of text for spreadsheets.

use super::cell::harmless;

/// The bytes of a CSV: a head and rows below it, no cell of which a spreadsheet runs.
///
/// # Errors
/// Never with rows that are as long as the head: those can be written into memory.
pub fn written_table(head: &[&str], rows: &[Vec<String>]) -> Result<Vec<u8>, csv::Error> {
    let mut writer = csv::Writer::from_writer(Vec::new());
    writer.write_record(head)?;
    for row in rows {
        let row: Vec<_> = row.iter().map(|text| harmless(text)).collect();
        writer.write_record(row.iter().map(AsRef::as_ref))?;
    }
    writer.into_inner().map_err(|error| csv::Error::from(error.into_error()))
}

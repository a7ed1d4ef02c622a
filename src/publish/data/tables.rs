//! Parts, conductors and fittings as tables, for spreadsheets: what `import` takes back.

use crate::publish::options::Fault;
use crate::publish::staging::Staging;
use crate::records::written_table;
use crate::source::{World, WorldError};
use crate::spreadsheet::{sheets, workbook};
use jiff::civil::Date;

/// Writes a CSV for each kind, and one XLSX file with a sheet each.
pub(in crate::publish) fn write_tables(
    world: &dyn World,
    date: Option<Date>,
    staging: &Staging,
) -> Result<(), Fault> {
    let sheets = sheets(world)?;
    for sheet in &sheets {
        let path = format!("data/{}.csv", sheet.kind.folder());
        let head: Vec<&str> = sheet.head.iter().map(String::as_str).collect();
        let table = written_table(&head, &sheet.texts()).map_err(|error| unwritable(&path, &error))?;
        staging.write(&path, &table)?;
    }
    let path = "data/records.xlsx";
    let bytes = workbook(&sheets, date).map_err(|error| unwritable(path, &error))?;
    Ok(staging.write(path, &bytes)?)
}

fn unwritable(path: &str, error: &dyn std::fmt::Display) -> Fault {
    Fault::Machine(WorldError { path: path.to_owned(), reason: error.to_string() })
}

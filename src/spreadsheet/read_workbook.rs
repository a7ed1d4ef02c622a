//! Tables from an XLSX file, cell by cell.

use super::as_exported::{EXPORTED_SHEET, Exported};
use super::figures::rounded;
use super::kind::SheetKind;
use super::tables::{Held, ReadCell, ReadTable};
use super::unpacked::unpacks_to_more_than;
use crate::diagnostics::{Finding, Findings, shortened};
use crate::records::Cell;
use crate::source::{FilePath, Place};
use calamine::{DataRef, Dimensions, ExcelDateTime, Reader, Style, Xlsx, XlsxError};
use std::collections::{BTreeMap, BTreeSet};
use std::io::Cursor;

/// How much an XLSX file may unpack to: tables come to ten or twenty times their packed size, so this leaves room.
const MOST_UNPACKED: u64 = 128 * 1024 * 1024;
/// How many cells are read of a sheet.
const MOST_CELLS: usize = 5_000_000;

/// The tables of a workbook, a sheet a kind.
pub(super) fn of_workbook(name: &str, bytes: &[u8], findings: &mut Findings) -> Vec<ReadTable> {
    let whole = || Place::whole(FilePath::catalogue(name));
    let unreadable = |error: XlsxError| {
        Finding::error("not-a-spreadsheet", whole(), "this is no XLSX file that can be read")
            .found(shortened(&error.to_string()))
            .help("open it in a spreadsheet and save it as XLSX again, or as CSV")
    };
    if unpacks_to_more_than(bytes, MOST_UNPACKED) {
        let finding =
            Finding::error("too-large", whole(), "this file unpacks to far more than a table of records");
        let expected = format!("at most {MOST_UNPACKED} bytes (128 MiB) when unpacked");
        findings.push(finding.expected(expected).help(
            "ask who made it; open it in a spreadsheet, take out pictures and empty rows, and save it as CSV",
        ));
        return Vec::new();
    }
    let mut workbook = match Xlsx::new(Cursor::new(bytes)) {
        Ok(workbook) => workbook,
        Err(error) => {
            findings.push(unreadable(error));
            return Vec::new();
        }
    };
    let exported = match exported(&mut workbook) {
        Ok(exported) => exported,
        Err(error) => {
            findings.push(unreadable(error));
            return Vec::new();
        }
    };
    let mut tables = Vec::new();
    for sheet in workbook.sheet_names().into_iter().filter(|sheet| sheet != EXPORTED_SHEET) {
        let Some(kind) = SheetKind::named(&sheet) else {
            let message = format!("the sheet `{}` is passed over", shortened(&sheet));
            let help = "sheets that are read are called parts, conductors and fittings";
            findings.push(Finding::warning("not-a-spreadsheet", whole(), message).help(help));
            continue;
        };
        let file = FilePath::catalogue(&format!("{name}, sheet {}", kind.folder()));
        let cells = cells_of(&mut workbook, &sheet, &file, findings);
        match cells.and_then(|cells| Ok((merged(&mut workbook, &sheet, &file, &cells)?, cells))) {
            Ok((merged, cells)) => {
                findings.extend(merged);
                let exported = exported.as_ref().map(|exported| exported.of(kind));
                tables.push(ReadTable { exported, ..of_cells(kind, file, cells) });
            }
            Err(error) => findings.push(unreadable(error)),
        }
    }
    if tables.is_empty() && !findings.has_errors() {
        let message = "this file has no sheet of records";
        let finding = Finding::error("not-a-spreadsheet", whole(), message);
        findings.push(finding.help("call its sheets parts, conductors or fittings"));
    }
    tables
}

/// What the workbook says of the records that it was written from; nothing where it does not.
fn exported(workbook: &mut Xlsx<Cursor<&[u8]>>) -> Result<Option<Exported>, XlsxError> {
    if !workbook.sheet_names().iter().any(|sheet| sheet == EXPORTED_SHEET) {
        return Ok(None);
    }
    let mut rows: BTreeMap<u32, BTreeMap<u32, String>> = BTreeMap::new();
    let mut reader = workbook.worksheet_cells_reader(EXPORTED_SHEET)?;
    let mut count = 0;
    while let Some(cell) = reader.next_cell()?.filter(|_| count < MOST_CELLS) {
        count += 1;
        let (row, column) = cell.get_position();
        if let Some((text, _)) = text_of(cell.get_value(), None) {
            rows.entry(row).or_default().insert(column, text);
        }
    }
    Ok(Some(Exported::read(rows.into_values().map(|cells| cells.into_values().collect()))))
}

type Cells = BTreeMap<u32, BTreeMap<u32, ReadCell>>;

/// The cells of a sheet, row by row; one by one, since a single cell far down would otherwise ask for all above it.
fn cells_of(
    workbook: &mut Xlsx<Cursor<&[u8]>>,
    sheet: &str,
    file: &FilePath,
    findings: &mut Findings,
) -> Result<Cells, XlsxError> {
    let mut cells = Cells::new();
    let formulas = formulas(workbook, sheet)?;
    let mut reader = workbook.worksheet_cells_reader(sheet)?;
    let mut count = 0;
    while let Some((cell, style)) = reader.next_cell_with_style_id()? {
        let (row, column) = cell.get_position();
        let is_formula = formulas.contains(&(row, column));
        let (line, column) = from_one((row, column));
        count += 1;
        if count > MOST_CELLS {
            let message = "there are too many cells, from here on they are not read";
            let place = Place::at(file.clone(), line, column);
            findings.push(Finding::error("too-many-records", place, message).help("split the file"));
            break;
        }
        if let DataRef::Error(fault) = cell.get_value() {
            let message = "this cell holds a fault of the spreadsheet, not a value";
            let finding = Finding::error("not-a-spreadsheet", Place::at(file.clone(), line, column), message);
            findings.push(finding.found(fault.to_string()).help("put the formula right, or write the value"));
            continue;
        }
        let style = reader.styles().get(style);
        if let Some((text, held)) =
            text_of(cell.get_value(), style).filter(|(text, _)| !text.trim().is_empty())
        {
            let cell = Cell { text: text.trim().replace("\r\n", "\n"), line, column };
            cells.entry(line).or_default().insert(column, ReadCell { cell, held });
        } else if is_formula {
            let message = "this cell holds a formula, and shows nothing";
            let finding = Finding::error("not-a-spreadsheet", Place::at(file.clone(), line, column), message);
            findings.push(finding.help(
                "open the file in a spreadsheet and save it there, or write the value; to take one out, clear the cell",
            ));
        }
    }
    Ok(cells)
}

/// Merged cells below the head. The first of them has the value of all, the others are empty, and an empty cell takes a
/// value out.
fn merged(
    workbook: &mut Xlsx<Cursor<&[u8]>>,
    sheet: &str,
    file: &FilePath,
    cells: &Cells,
) -> Result<Option<Finding>, XlsxError> {
    let head = cells.keys().next().copied().unwrap_or_default();
    let regions = workbook.merge_cells_by_sheet_name(sheet)?;
    let below = regions.into_iter().filter(|region| region.end.0.saturating_add(1) > head);
    let Some(Dimensions { start, end }) = below.min_by_key(|region| region.start) else { return Ok(None) };
    let ((line, column), (last, last_column)) = (from_one(start), from_one(end));
    let message = "cells are merged here: all but the first would count as cleared";
    let finding = Finding::error("not-a-spreadsheet", Place::at(file.clone(), line, column), message);
    let found = format!("rows {line} to {last}, columns {column} to {last_column}");
    Ok(Some(finding.found(found).help("split all merged cells of the sheet, and fill in each of them")))
}

/// A place counted from 1.
fn from_one((row, column): (u32, u32)) -> (u32, u32) {
    (row.saturating_add(1), column.saturating_add(1))
}

/// The places of the formulas of a sheet. One that some program wrote without a result looks like an empty cell, and an
/// empty cell takes a value out.
fn formulas(workbook: &mut Xlsx<Cursor<&[u8]>>, sheet: &str) -> Result<BTreeSet<(u32, u32)>, XlsxError> {
    let mut places = BTreeSet::new();
    let mut reader = workbook.worksheet_cells_reader(sheet)?;
    while let Some(formula) = reader.next_formula()? {
        if places.len() < MOST_CELLS && !formula.get_value().is_empty() {
            places.insert(formula.get_position());
        }
    }
    Ok(places)
}

/// What a cell shows, and what the spreadsheet holds it for.
fn text_of(value: &DataRef<'_>, style: Option<&Style>) -> Option<(String, Held)> {
    let figure = if style.is_some_and(shows_percent) { Held::Percent } else { Held::Figure };
    match value {
        DataRef::Int(number) => Some((number.to_string(), figure)),
        DataRef::Float(number) => Some((rounded(*number).to_string(), figure)),
        DataRef::Bool(truth) => Some((truth.to_string(), Held::Figure)),
        DataRef::String(text) => Some((text.clone(), Held::Text)),
        DataRef::SharedString(text) => Some(((*text).to_owned(), Held::Text)),
        DataRef::DateTime(day) => Some((day_of(day), Held::Day)),
        DataRef::DateTimeIso(text) => {
            Some((text.split_once("T00:00:00").map_or(text.as_str(), |(day, _)| day).to_owned(), Held::Day))
        }
        DataRef::DurationIso(text) => Some((text.clone(), Held::Day)),
        DataRef::Error(_) | DataRef::Empty => None,
    }
}

fn day_of(day: &ExcelDateTime) -> String {
    let (year, month, day, ..) = day.to_ymd_hms_milli();
    format!("{year:04}-{month:02}-{day:02}")
}

/// Whether a cell shows a hundred times its number, with a percent sign behind it.
fn shows_percent(style: &Style) -> bool {
    let Some(format) = &style.number_format else { return false };
    // What stands in quotes, or behind a backslash, is shown as it is.
    let outside = format.format_code.split('"').step_by(2);
    outside.into_iter().any(|piece| piece.replace("\\%", "").contains('%'))
}

/// The first row that holds anything is the head; cells that nobody has filled are empty.
fn of_cells(kind: SheetKind, file: FilePath, mut cells: Cells) -> ReadTable {
    let Some((line, first)) = cells.pop_first() else {
        return ReadTable {
            kind,
            file,
            head: Vec::new(),
            rows: Vec::new(),
            decimal_commas: false,
            exported: None,
        };
    };
    let empty =
        |line, column| ReadCell { cell: Cell { text: String::new(), line, column }, held: Held::Letters };
    // A column that nobody has named has a cell in the head too, so that rows are as long as it.
    let named: BTreeMap<u32, ReadCell> = cells
        .values()
        .flat_map(BTreeMap::keys)
        .chain(first.keys())
        .map(|column| (*column, first.get(column).cloned().unwrap_or_else(|| empty(line, *column))))
        .collect();
    let head: Vec<Cell> = named.values().map(|read| read.cell.clone()).collect();
    let rows = cells.iter().map(|(line, cells)| {
        let whole =
            named.keys().map(|column| cells.get(column).cloned().unwrap_or_else(|| empty(*line, *column)));
        whole.collect()
    });
    ReadTable { kind, rows: rows.collect(), file, head, decimal_commas: false, exported: None }
}

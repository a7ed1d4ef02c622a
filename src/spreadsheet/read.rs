//! Tables from the files that a spreadsheet saves.

use super::kind::SheetKind;
use super::unpacked::unpacks_to_more_than;
use crate::diagnostics::{Finding, Findings, shortened};
use crate::records::{Cell, Table, table, utf8};
use crate::source::{FilePath, Place};
use calamine::{DataRef, Reader, Xlsx, XlsxError};
use std::collections::{BTreeMap, BTreeSet};
use std::io::Cursor;
use std::path::Path;

/// How large a file may be.
const LARGEST: usize = 16 * 1024 * 1024;
/// How much an XLSX file may unpack to: tables come to ten or twenty times their packed size, so this leaves room.
const MOST_UNPACKED: u64 = 128 * 1024 * 1024;
/// How many cells are read of a sheet.
const MOST_CELLS: usize = 5_000_000;

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
    /// A number, a day, true or false: 14.0 is 14 there, and 3-4 may be a day.
    Figure,
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

/// The tables in a file: CSV, a kind by the file's name unless it is given, or XLSX, a kind a sheet by the sheets' names.
/// What is wrong goes to the findings.
#[must_use]
pub fn read_tables(
    name: &str,
    bytes: &[u8],
    kind: Option<SheetKind>,
    findings: &mut Findings,
) -> Vec<ReadTable> {
    let file = FilePath::catalogue(name);
    let ending = Path::new(name).extension().and_then(|ending| ending.to_str()).unwrap_or_default();
    if bytes.len() > LARGEST {
        let expected = format!("at most {LARGEST} bytes (16 MiB)");
        let finding =
            Finding::error("too-large", Place::whole(file), "this file is too large").expected(expected);
        findings.push(finding.help("take out what does not change: only rows that are there are looked at"));
        return Vec::new();
    }
    match ending.to_ascii_lowercase().as_str() {
        "csv" | "tsv" | "txt" => of_text(file, bytes, kind, findings).into_iter().collect(),
        "xlsx" => of_workbook(name, bytes, findings),
        _ => {
            let message = "this is no table that can be read";
            let finding = Finding::error("not-a-spreadsheet", Place::whole(file), message);
            findings.push(
                finding.expected("a file that ends in .csv or .xlsx").help("save it as one of the two"),
            );
            Vec::new()
        }
    }
}

fn of_text(
    file: FilePath,
    bytes: &[u8],
    kind: Option<SheetKind>,
    findings: &mut Findings,
) -> Option<ReadTable> {
    let stem = Path::new(file.path.as_ref()).file_stem().and_then(|stem| stem.to_str());
    let Some(kind) = kind.or_else(|| SheetKind::named(stem.unwrap_or_default())) else {
        let message = "the name of this file does not say which kind of record is in it";
        let help = "call it parts.csv, conductors.csv or fittings.csv, or say `--kind parts`";
        findings.push(Finding::error("not-a-spreadsheet", Place::whole(file), message).help(help));
        return None;
    };
    let text = utf8(&file, bytes).map_err(|finding| findings.push(*finding)).ok()?;
    let Table { head, rows, decimal_commas } = table(&file, text, findings);
    let read = |cell| ReadCell { cell, held: Held::Letters };
    let rows = rows.into_iter().map(|row| row.into_iter().map(read).collect()).collect();
    Some(ReadTable { kind, file, head, rows, decimal_commas })
}

fn of_workbook(name: &str, bytes: &[u8], findings: &mut Findings) -> Vec<ReadTable> {
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
    let mut tables = Vec::new();
    for sheet in workbook.sheet_names() {
        let Some(kind) = SheetKind::named(&sheet) else {
            let message = format!("the sheet `{}` is passed over", shortened(&sheet));
            let help = "sheets that are read are called parts, conductors and fittings";
            findings.push(Finding::warning("not-a-spreadsheet", whole(), message).help(help));
            continue;
        };
        let file = FilePath::catalogue(&format!("{name}, sheet {}", kind.folder()));
        match cells_of(&mut workbook, &sheet, &file, findings) {
            Ok(cells) => tables.push(of_cells(kind, file, cells)),
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
    while let Some(cell) = reader.next_cell()? {
        let (row, column) = cell.get_position();
        let is_formula = formulas.contains(&(row, column));
        let (line, column) = (row.saturating_add(1), column.saturating_add(1));
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
        if let Some((text, held)) = text_of(cell.get_value()).filter(|(text, _)| !text.trim().is_empty()) {
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
fn text_of(value: &DataRef<'_>) -> Option<(String, Held)> {
    match value {
        DataRef::Int(number) => Some((number.to_string(), Held::Figure)),
        DataRef::Float(number) => Some((number.to_string(), Held::Figure)),
        DataRef::Bool(truth) => Some((truth.to_string(), Held::Figure)),
        DataRef::String(text) | DataRef::DateTimeIso(text) | DataRef::DurationIso(text) => {
            Some((text.clone(), Held::Text))
        }
        DataRef::SharedString(text) => Some(((*text).to_owned(), Held::Text)),
        DataRef::DateTime(day) => {
            let (year, month, day, ..) = day.to_ymd_hms_milli();
            Some((format!("{year:04}-{month:02}-{day:02}"), Held::Figure))
        }
        DataRef::Error(_) | DataRef::Empty => None,
    }
}

/// The first row that holds anything is the head; cells that nobody has filled are empty.
fn of_cells(kind: SheetKind, file: FilePath, mut cells: Cells) -> ReadTable {
    let Some((line, first)) = cells.pop_first() else {
        return ReadTable { kind, file, head: Vec::new(), rows: Vec::new(), decimal_commas: false };
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
    ReadTable { kind, rows: rows.collect(), file, head, decimal_commas: false }
}

//! A fitting in the line as written: a row of a list of installed fittings.

use crate::diagnostics::{Finding, Findings, nearest, shortened};
use crate::records::field::{Key, Need, Read, Reader};
use crate::records::node::{Content, Entry, Node, Scalar, ScalarKind};
use crate::records::record::record;
use crate::records::table::{Cell, Table, table};
use crate::records::text::utf8;
use crate::records::{Count, Day, Mm, Name, Position, Prose, Text};
use crate::source::{FilePath, Place};

/// How large a list may be: 100,000 rows take half of it.
const LARGEST: usize = 16 * 1024 * 1024;

record! {
    /// A fitting in the line: a row of a list of installed fittings, key by key a column.
    InstalledRecord ("an installed fitting") {
        /// Where in the line it is, as everybody finds it again.
        /// Example: `Mast 14/7, track 1`
        place: Name, Required;
        /// The number of the fitting.
        /// Example: `ST-4100`
        fitting: Name, Required;
        /// The number of the gripping part that was read before it was closed.
        /// Default: the fitting's own
        /// Example: `ST-4103`
        gripping_part: Name, Optional;
        /// The stand-out that was measured after tightening. Negative is below the face.
        /// Example: `4.2`
        seated_mm: Position<Mm, 500>, Optional;
        /// The stand-out that was measured after line tension had drawn the gripping part in.
        /// Example: `3.1`
        tensioned_mm: Position<Mm, 500>, Optional;
        /// The day on which it was built.
        /// Example: `2026-09-21`
        built: Day, Optional;
        /// Who built it.
        /// Example: `T. Lund`
        by: Text, Optional;
        /// Who looked at it before it was closed.
        /// Example: `E. Moss`
        witness: Text, Optional;
        /// The number of the slip that was filled in.
        /// Example: `S-0417`
        slip: Text, Optional;
        /// The issue of the card that it was built with.
        /// Default: the issue that was in force on the day on which it was built
        /// Example: `2`
        issue: Count<1, 100_000>, Optional;
        /// What else is to be known.
        /// Example: `Tail cut short.`
        remark: Prose, Optional;
    }
}

/// A row as read.
#[derive(Debug, Clone)]
pub struct InstalledRow {
    /// What it says.
    pub record: InstalledRecord,
    /// Whether every cell is as it should be.
    pub sound: bool,
    /// Where it starts.
    pub place: Place,
}

/// The rows of a list of installed fittings, as a spreadsheet saves it: UTF-8, columns in any order, parted by commas,
/// semicolons or tabs. What is wrong with it goes to the findings; the other rows are given all the same.
///
/// ```
/// use fittingcards::diagnostics::Findings;
/// use fittingcards::records::read_installed;
/// use fittingcards::source::FilePath;
/// let (file, mut findings) = (FilePath::catalogue("installed/a.csv"), Findings::new());
/// let rows = read_installed(&file, b"fitting;place;seated_mm\nF-1;Mast 7;4,2\n", &mut findings);
/// assert!(findings.is_empty());
/// assert_eq!(rows[0].record.seated_mm.as_ref().map(|read| read.value.bare()), Some(4.2));
/// ```
#[must_use]
pub fn read_installed(file: &FilePath, bytes: &[u8], findings: &mut Findings) -> Vec<InstalledRow> {
    let text = match decode(file, bytes) {
        Ok(text) => text,
        Err(finding) => {
            findings.push(*finding);
            return Vec::new();
        }
    };
    let table = table(file, text, findings);
    if table.head.is_empty() {
        findings.push(empty(file));
    }
    if !head_is_whole(&table.head, file, findings) {
        return Vec::new();
    }
    findings.extend(nameless(&table, file));
    let Table { head, rows, decimal_commas } = table;
    rows.into_iter().filter_map(|cells| row(&head, cells, decimal_commas, file, findings)).collect()
}

fn decode<'a>(file: &FilePath, bytes: &'a [u8]) -> Result<&'a str, Box<Finding>> {
    if bytes.len() > LARGEST {
        let finding = Finding::error("too-large", Place::whole(file.clone()), "this list is too large")
            .found(format!("{} bytes", bytes.len()))
            .expected(format!("at most {LARGEST} bytes (16 MiB) for a list of installed fittings"))
            .help("split it into several files in `installed`");
        return Err(Box::new(finding));
    }
    utf8(file, bytes)
}

fn empty(file: &FilePath) -> Finding {
    let columns = InstalledRecord::KEYS.iter().map(|key| key.name).collect::<Vec<_>>().join(",");
    Finding::warning("empty-document", Place::whole(file.clone()), "this list is empty")
        .help(format!("its first line names the columns: {columns}"))
}

/// Tells of columns that are unknown, doubled or missing; whether rows can be read at all.
fn head_is_whole(head: &[Cell], file: &FilePath, findings: &mut Findings) -> bool {
    let Some(first) = head.first() else { return false };
    let known = || InstalledRecord::KEYS.iter().map(|key| key.name);
    for (nth, cell) in head.iter().enumerate() {
        if head[..nth].iter().any(|before| before.text == cell.text && !cell.text.is_empty()) {
            let finding = Finding::error("duplicate-key", cell.place(file), "this column is there twice");
            findings.push(finding.field(cell.text.as_str()).help("keep only one of the two"));
        } else if !known().any(|name| name == cell.text) && !cell.text.is_empty() {
            findings.push(unknown_column(cell, file));
        }
    }
    let missing = |key: &&Key| key.need == Need::Required && !head.iter().any(|cell| cell.text == key.name);
    let missing: Vec<&Key> = InstalledRecord::KEYS.iter().filter(missing).collect();
    for key in &missing {
        let message = format!("there is no column `{}`", key.name);
        let help = format!("write `{}` into the first line, above its cells", key.name);
        findings.push(Finding::error("missing-key", first.place(file), message).field(key.name).help(help));
    }
    missing.is_empty()
}

/// Cells below a head that is empty: they would be passed over.
fn nameless(table: &Table, file: &FilePath) -> Vec<Finding> {
    let columns = table.head.iter().enumerate().filter(|(_, head)| head.text.is_empty());
    let first = columns.filter_map(|(nth, _)| {
        table.rows.iter().filter_map(|row| row.get(nth)).find(|cell| !cell.text.is_empty())
    });
    let finding = |cell: &Cell| {
        Finding::error("unknown-key", cell.place(file), "the column of this cell has no name")
            .found(shortened(&cell.text))
            .help("name it in the first line, or clear its cells")
    };
    first.map(finding).collect()
}

fn unknown_column(cell: &Cell, file: &FilePath) -> Finding {
    let message = format!("an installed fitting has no column `{}`", shortened(&cell.text));
    let names: Vec<&str> = InstalledRecord::KEYS.iter().map(|key| key.name).collect();
    let help = match nearest(&cell.text, names.iter().copied()) {
        Some(name) => format!("did you mean `{name}`?"),
        None => format!("the columns are {}; all else goes into `remark`", names.join(", ")),
    };
    Finding::error("unknown-key", cell.place(file), message).field(shortened(&cell.text)).help(help)
}

fn row(
    head: &[Cell],
    cells: Vec<Cell>,
    decimal_commas: bool,
    file: &FilePath,
    findings: &mut Findings,
) -> Option<InstalledRow> {
    let (line, column) = cells.first().map(|cell| (cell.line, cell.column))?;
    let mut entries: Vec<Entry> = Vec::with_capacity(cells.len());
    let mut named = None;
    for (name, cell) in head.iter().zip(cells) {
        let is_known = InstalledRecord::KEYS.iter().any(|key| key.name == name.text);
        if !is_known || entries.iter().any(|entry| entry.key == name.text) {
            continue;
        }
        if name.text == "place" && !cell.text.is_empty() {
            named = Some(shortened(&cell.text));
        }
        entries.push(entry(&name.text, cell, decimal_commas));
    }
    let node = Node { line, column, content: Content::Map(entries) };
    let mut reader = Reader::new(file, named, findings).in_row();
    let record = InstalledRecord::read(&node, &mut reader)?;
    Some(InstalledRow { record, sound: reader.faults() == 0, place: Place::at(file.clone(), line, column) })
}

fn entry(key: &str, cell: Cell, decimal_commas: bool) -> Entry {
    let Cell { mut text, line, column } = cell;
    let is_number = key.ends_with("_mm");
    if decimal_commas && is_number && !text.contains('.') {
        text = text.replacen(',', ".", 1);
    }
    let kind = match text.as_str() {
        "" => ScalarKind::Empty,
        figures if figures.starts_with(|first: char| first.is_ascii_digit() || "+-.".contains(first)) => {
            figures.parse().map_or(ScalarKind::Text, ScalarKind::Number)
        }
        _ => ScalarKind::Text,
    };
    let scalar = Scalar { written: text, quoted: false, kind };
    Entry {
        key: key.to_owned(),
        line,
        column,
        value: Node { line, column, content: Content::Scalar(scalar) },
    }
}

//! A row against the record that it is of.

use super::as_exported::hash_of;
use super::change::{KeyChange, changed};
use super::columns::{Columns, Sort};
use super::letters::Compared;
use super::standing::Standing;
use super::tables::{ReadCell, ReadTable};
use super::value::Tree;
use crate::diagnostics::{Finding, shortened};

/// How many columns are named of those that differ.
const MOST_NAMED: usize = 5;

/// What a row changes of its record.
#[derive(Default)]
pub(super) struct RowChange {
    /// The changes by the steps of their columns.
    pub(super) tree: Tree,
    /// The changes in the order of the columns.
    pub(super) keys: Vec<KeyChange>,
    /// What is wrong with the cells.
    pub(super) findings: Vec<Finding>,
}

/// What a row changes of its record, cell by cell.
pub(super) fn row_change(
    row: &[ReadCell],
    id: usize,
    table: &ReadTable,
    here: Option<&Standing>,
    columns: &Columns,
) -> RowChange {
    let mut change = RowChange::default();
    for (head, read) in table.head.iter().zip(row).filter(|(head, _)| !head.text.is_empty()) {
        let column = head.text.as_str();
        let current = here.and_then(|here| here.cells.get(column));
        let has_comma = table.decimal_commas && columns.sort(column) == Sort::Number;
        let read = &if has_comma { read.with_point() } else { read.clone() };
        let (record, file) = (row[id].cell.text.as_str(), &table.file);
        let compared = Compared { record, column, read, current, file };
        let Some(is) = changed(current, read, columns.is_list(column).then_some(column)) else {
            change.findings.extend(compared.of_same(columns));
            continue;
        };
        change.findings.extend(is.as_deref().and_then(|is| compared.of_changed(is, columns)));
        change.tree.add(column, is.clone());
        let (was, cell) = (current.map(|cell| cell.text.clone()), read.cell.place(&table.file));
        change.keys.push(KeyChange { column: column.to_owned(), was, is, cell });
    }
    change
}

/// What became of a row and of its record since the table was written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Since {
    /// The record is what it was, or nobody knows.
    SameRecord,
    /// The record is another, and nobody has changed the row.
    OtherRecord,
    /// The record is another, and so is the row.
    OtherBoth,
}

/// What became of a row and of its record since the table was written.
pub(super) fn since_export(
    row: &[ReadCell],
    id: usize,
    table: &ReadTable,
    here: Option<&Standing>,
    columns: &Columns,
) -> Since {
    let Some(exported) = &table.exported else { return Since::SameRecord };
    let was = exported.get(&row[id].cell.text);
    let cells = |here: &Standing| {
        hash_of(here.cells.iter().map(|(name, cell)| (name.as_str(), cell.text.as_str())), columns)
    };
    if was == here.map(cells).as_ref() {
        return Since::SameRecord;
    }
    let named = table.head.iter().zip(row).filter(|(head, _)| !head.text.is_empty());
    let of_row = hash_of(named.map(|(head, read)| (head.text.as_str(), read.cell.text.as_str())), columns);
    if was == Some(&of_row) { Since::OtherRecord } else { Since::OtherBoth }
}

/// A row that would undo what was changed in its record since.
pub(super) fn changed_since(
    row: &[ReadCell],
    id: usize,
    table: &ReadTable,
    here: Option<&Standing>,
    change: &RowChange,
) -> Finding {
    let own = &row[id].cell;
    let was_there = table.exported.as_ref().is_some_and(|exported| exported.contains_key(&own.text));
    let message = match (was_there, here) {
        (true, Some(_)) => "this record was changed since the sheet was written, and its row here was too",
        (true, None) => "this record was taken out since the sheet was written, and its row here was changed",
        (false, _) => "this record was not there yet when the sheet was written",
    };
    let columns: Vec<String> =
        change.keys.iter().take(MOST_NAMED).map(|key| shortened(&key.column)).collect();
    let more = if change.keys.len() > MOST_NAMED { ", …" } else { "" };
    Finding::error("changed-since-export", own.place(&table.file), message)
        .record(own.text.as_str())
        .found(format!("other values in {}{more}", columns.join(", ")))
        .expected("a row of a sheet that was written from the record as it is now")
        .help("run `fittingcards render`, make the change in the new records.xlsx, and import that")
}

//! Records as tables.

use super::cells::{CellValue, cells};
use super::columns::Columns;
use super::kind::SheetKind;
use crate::records::{Node, holds_records, nodes};
use crate::source::{FilePath, Folder, World, WorldError};
use rayon::prelude::*;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Mutex, PoisonError};

/// The table of a kind of record.
#[derive(Debug, Clone)]
pub struct Sheet {
    /// The kind.
    pub kind: SheetKind,
    /// The columns that any of its records has, in the order of the declarations.
    pub head: Vec<String>,
    /// A row a record, in the order of file and line; nothing where a record does not have the key.
    pub rows: Vec<Vec<Option<CellValue>>>,
}

/// The cells of records, gathered file by file from any number of threads.
#[derive(Debug, Default)]
pub struct Gathered(Mutex<BTreeMap<FilePath, Vec<Record>>>);

/// The cells of a record by their columns.
type Record = BTreeMap<String, CellValue>;

impl Gathered {
    /// Takes the records of a file, where it is of a kind that has a sheet.
    pub fn take(&self, file: &FilePath, records: &[Node]) {
        if !SheetKind::ALL.into_iter().any(|kind| is_of(kind, file)) {
            return;
        }
        let records = records.iter().filter(|record| !record.is_empty());
        let records = records.map(|record| cells(record).into_iter().collect()).collect();
        self.0.lock().unwrap_or_else(PoisonError::into_inner).insert(file.clone(), records);
    }

    /// The tables of all kinds that have one.
    #[must_use]
    pub fn sheets(self) -> Vec<Sheet> {
        let mut files = self.0.into_inner().unwrap_or_else(PoisonError::into_inner);
        SheetKind::ALL.into_iter().map(|kind| sheet(kind, &mut files)).collect()
    }
}

/// The tables of all kinds that have one, from the records as they are written.
///
/// # Errors
/// Where the machine can't read the catalogue.
pub fn sheets(world: &dyn World) -> Result<Vec<Sheet>, WorldError> {
    let gathered = Gathered::default();
    for kind in SheetKind::ALL {
        files(world, kind)?.par_iter().for_each(|(file, text)| gathered.take(file, &nodes(text)));
    }
    Ok(gathered.sheets())
}

fn sheet(kind: SheetKind, files: &mut BTreeMap<FilePath, Vec<Record>>) -> Sheet {
    let of_kind = files.iter_mut().filter(|(file, _)| is_of(kind, file));
    let mut records: Vec<Record> = of_kind.flat_map(|(_, records)| std::mem::take(records)).collect();
    let columns = Columns::of(kind);
    let names: BTreeSet<&String> = records.iter().flat_map(BTreeMap::keys).collect();
    let mut head: Vec<String> = names.into_iter().cloned().collect();
    head.sort_by_cached_key(|column| columns.place(column));
    let row = |record: &mut Record| head.iter().map(|column| record.remove(column)).collect();
    Sheet { kind, rows: records.par_iter_mut().map(row).collect(), head }
}

/// The files of a kind of record that can be read as text, in order.
pub(super) fn files(world: &dyn World, kind: SheetKind) -> Result<Vec<(FilePath, String)>, WorldError> {
    let mut files = Vec::new();
    for file in world.files(Folder::Catalogue)?.into_iter().filter(|file| is_of(kind, file)) {
        if let Ok(text) = String::from_utf8(world.read(&file)?.to_vec()) {
            files.push((file, text));
        }
    }
    Ok(files)
}

/// Whether a file holds records of a kind.
fn is_of(kind: SheetKind, file: &FilePath) -> bool {
    holds_records(&file.path, kind.folder())
}

impl Sheet {
    /// The rows as texts, empty where a record does not have the key.
    #[must_use]
    pub fn texts(&self) -> Vec<Vec<String>> {
        let text = |cell: &Option<CellValue>| cell.as_ref().map(|cell| cell.text.clone()).unwrap_or_default();
        self.rows.iter().map(|row| row.iter().map(text).collect()).collect()
    }
}

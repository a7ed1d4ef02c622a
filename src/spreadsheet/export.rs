//! Records as tables.

use super::cells::{CellValue, cells};
use super::columns::Columns;
use super::kind::SheetKind;
use crate::records::nodes;
use crate::source::{FilePath, Folder, World, WorldError};
use rayon::prelude::*;
use std::collections::{BTreeMap, BTreeSet};

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

/// The tables of all kinds that have one, from the records as they are written.
///
/// # Errors
/// Where the machine can't read the catalogue.
pub fn sheets(world: &dyn World) -> Result<Vec<Sheet>, WorldError> {
    SheetKind::ALL.into_iter().map(|kind| sheet(world, kind)).collect()
}

fn sheet(world: &dyn World, kind: SheetKind) -> Result<Sheet, WorldError> {
    let of_file = |(_, text): &(FilePath, String)| -> Vec<BTreeMap<String, CellValue>> {
        nodes(text)
            .iter()
            .filter(|node| !node.is_empty())
            .map(|node| cells(node).into_iter().collect())
            .collect()
    };
    let records: Vec<_> = files(world, kind)?.par_iter().flat_map_iter(of_file).collect();
    let columns = Columns::of(kind);
    let names: BTreeSet<&String> = records.iter().flat_map(BTreeMap::keys).collect();
    let mut head: Vec<String> = names.into_iter().cloned().collect();
    head.sort_by_cached_key(|column| columns.place(column));
    let rows = records.iter().map(|record| head.iter().map(|column| record.get(column).cloned()).collect());
    Ok(Sheet { kind, rows: rows.collect(), head })
}

/// The files of a kind of record that can be read as text, in order.
pub(super) fn files(world: &dyn World, kind: SheetKind) -> Result<Vec<(FilePath, String)>, WorldError> {
    let start = format!("{}/", kind.folder());
    let is_record = |file: &FilePath| {
        let hidden = file.path.split('/').any(|part| part.starts_with('.'));
        file.path.starts_with(&start) && file.path.ends_with(".yaml") && !hidden
    };
    let mut files = Vec::new();
    for file in world.files(Folder::Catalogue)?.into_iter().filter(is_record) {
        if let Ok(text) = String::from_utf8(world.read(&file)?.to_vec()) {
            files.push((file, text));
        }
    }
    Ok(files)
}

impl Sheet {
    /// The rows as texts, empty where a record does not have the key.
    #[must_use]
    pub fn texts(&self) -> Vec<Vec<String>> {
        let text = |cell: &Option<CellValue>| cell.as_ref().map(|cell| cell.text.clone()).unwrap_or_default();
        self.rows.iter().map(|row| row.iter().map(text).collect()).collect()
    }
}

//! The catalogue as the rows would have it, and what is found in it told at the cells.

use super::tables::ReadTable;
use crate::diagnostics::{Finding, Findings, Severity};
use crate::source::{FilePath, Folder, Place, Unread, World, WorldError};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// A world with some files as they would be.
pub(super) struct Edited<'a> {
    pub(super) world: &'a dyn World,
    pub(super) files: BTreeMap<FilePath, Arc<[u8]>>,
}

impl World for Edited<'_> {
    fn files(&self, folder: Folder) -> Result<Vec<FilePath>, WorldError> {
        let mut files: BTreeSet<FilePath> = self.world.files(folder)?.into_iter().collect();
        files.extend(self.files.keys().filter(|file| file.folder == folder).cloned());
        Ok(files.into_iter().collect())
    }

    fn unread(&self, folder: Folder) -> Result<Vec<Unread>, WorldError> {
        self.world.unread(folder)
    }

    fn read(&self, file: &FilePath) -> Result<Arc<[u8]>, WorldError> {
        self.files.get(file).map_or_else(|| self.world.read(file), |bytes| Ok(Arc::clone(bytes)))
    }

    fn source_date_epoch(&self) -> Option<&str> {
        self.world.source_date_epoch()
    }

    fn display(&self, file: &FilePath) -> String {
        self.world.display(file)
    }
}

/// A world in which a table that is read has its own name.
pub struct Named<'a> {
    /// The world.
    pub world: &'a dyn World,
    /// The table's file, as a person reaches it.
    pub table: String,
}

impl World for Named<'_> {
    fn files(&self, folder: Folder) -> Result<Vec<FilePath>, WorldError> {
        self.world.files(folder)
    }

    fn read(&self, file: &FilePath) -> Result<Arc<[u8]>, WorldError> {
        self.world.read(file)
    }

    fn source_date_epoch(&self) -> Option<&str> {
        self.world.source_date_epoch()
    }

    fn display(&self, file: &FilePath) -> String {
        let sheet = file.path.strip_prefix(&self.table);
        match sheet.is_some_and(|rest| rest.is_empty() || rest.starts_with(", sheet ")) {
            true => file.path.to_string(),
            false => self.world.display(file),
        }
    }
}

/// The cells of each record in the tables, by the record and the column; the record's own by its number or id alone.
pub(super) struct CellPlaces(BTreeMap<String, BTreeMap<String, Place>>);

impl CellPlaces {
    pub(super) fn of(tables: &[ReadTable]) -> Self {
        let mut places: BTreeMap<String, BTreeMap<String, Place>> = BTreeMap::new();
        for table in tables {
            let Some(id) = table.head.iter().position(|head| head.text == table.kind.id()) else { continue };
            for row in &table.rows {
                let record = places.entry(row[id].cell.text.clone()).or_default();
                for (head, read) in table.head.iter().zip(row) {
                    record.entry(head.text.clone()).or_insert_with(|| read.cell.place(&table.file));
                }
                record.entry(String::new()).or_insert_with(|| row[id].cell.place(&table.file));
            }
        }
        Self(places)
    }

    /// What is found now and was not found before, each at the cell that it is about; with the errors of records that
    /// have a row, which were there before too.
    pub(super) fn told(
        &self,
        now: &Findings,
        before: &Findings,
        new: &BTreeMap<FilePath, String>,
    ) -> Findings {
        let known: BTreeSet<_> = before.sorted().into_iter().map(essence).collect();
        let mut told = Findings::new();
        for finding in now.sorted() {
            // What a new record does to another is told at its row.
            let by_new = || finding.related.iter().find_map(|related| new.get(&related.place.file));
            let of_new = || self.0.get(by_new()?)?.get("").cloned();
            let cell = self.cell(finding).or_else(of_new);
            let is_new = !known.contains(&essence(finding));
            if is_new || cell.is_some() && finding.severity == Severity::Error {
                told.push(Finding {
                    place: cell.unwrap_or_else(|| finding.place.clone()),
                    ..finding.clone()
                });
            }
        }
        told
    }

    /// The cell of the column that a finding's field stands in; the record's own where there is none.
    fn cell(&self, finding: &Finding) -> Option<Place> {
        let columns = self.0.get(finding.record.as_ref()?)?;
        let field = column(finding.field.as_deref().unwrap_or_default());
        let mut path = field.as_str();
        loop {
            let below = || {
                let start = format!("{path}.");
                columns.iter().find(|(column, _)| !path.is_empty() && column.starts_with(&start))
            };
            if let Some(place) = columns.get(path).or_else(|| below().map(|(_, place)| place)) {
                return Some(place.clone());
            }
            path = path.rfind('.').map_or("", |dot| &path[..dot]);
        }
    }
}

/// What a finding says, wherever it stands.
fn essence(finding: &Finding) -> (&'static str, Option<&str>, Option<&str>, &str) {
    (finding.code, finding.record.as_deref(), finding.field.as_deref(), &finding.message)
}

/// The column of a field: entries of lists are counted from 1.
fn column(field: &str) -> String {
    let step =
        |step: &str| step.parse::<usize>().map_or_else(|_| step.to_owned(), |nth| (nth + 1).to_string());
    field.split('.').map(step).collect::<Vec<_>>().join(".")
}

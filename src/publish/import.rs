//! `import`: rows of a spreadsheet become changes of records.

use super::disk;
use super::options::RenderError;
use super::records_folder::{Change, RecordsFolder};
use crate::diagnostics::Findings;
use crate::source::{World, WorldError};
use crate::spreadsheet::{self, Import, SheetKind, read_tables};
use std::path::{Path, PathBuf};

/// Where changes go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ImportInto<'a> {
    /// Nowhere: only what would be done is said.
    Nothing,
    /// The records of the catalogue in this folder.
    Catalogue(&'a Path),
}

/// What came of it.
#[derive(Debug)]
pub struct ImportReport {
    /// What changes, and what is wrong.
    pub import: Import,
    /// The files that were written.
    pub written: Vec<PathBuf>,
    /// The files of an earlier `import` that was cut off, which were put in place first.
    pub finished: Vec<PathBuf>,
}

/// Changes records as the rows of a file say, all of them or none: nothing is written while a row is wrong.
///
/// # Errors
/// Where something is wrong with the machine, or another `import` is at work; the records stay as they are.
pub fn import(
    world: &dyn World,
    file: &Path,
    kind: Option<SheetKind>,
    into: ImportInto<'_>,
) -> Result<ImportReport, RenderError> {
    let folder = match into {
        ImportInto::Nothing => None,
        ImportInto::Catalogue(catalogue) => Some(RecordsFolder::open(catalogue)?),
    };
    let finished = folder.as_ref().map_or(Ok(Vec::new()), RecordsFolder::finish)?;
    let name = file.display().to_string();
    let Some(bytes) = disk::read(file) else {
        let reason = "there is no such file, or it may not be read".to_owned();
        return Err(RenderError::Machine(WorldError { path: name, reason }));
    };
    let mut findings = Findings::new();
    let tables = read_tables(&name, &bytes, kind, &mut findings);
    let mut import = spreadsheet::import(world, &tables)?;
    import.findings.extend(findings);
    let mut written = Vec::new();
    if let Some(folder) = folder.filter(|_| !import.findings.has_errors()) {
        let changes: Vec<Change<'_>> = import
            .files
            .iter()
            .map(|(file, was, is)| Change { path: &file.path, was: was.as_deref(), is })
            .collect();
        written = folder.put(&changes)?;
    }
    Ok(ImportReport { import, written, finished })
}

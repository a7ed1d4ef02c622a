//! What an `import` that was cut off leaves: the list of its files, and those that have not taken their places yet.

use super::disk::{self, above, at, below, exists, fault};
use crate::records::CUT_OFF;
use crate::source::WorldError;
use std::fs;
use std::path::{Path, PathBuf};

/// A file that is ready to take its place.
pub(super) struct Ready {
    pub(super) place: PathBuf,
    pub(super) new: PathBuf,
    /// What it held before; nothing where the file is new.
    pub(super) old: Option<PathBuf>,
}

/// Where an import lists its files before the first takes its place.
fn list_in(work: &Path) -> PathBuf {
    work.join(Path::new(CUT_OFF).file_name().unwrap_or_default())
}

/// Lists files by their paths below the catalogue, in the order of their numbers, and waits until the disk has them all.
pub(super) fn list<'a>(work: &Path, paths: impl Iterator<Item = &'a str>) -> Result<(), WorldError> {
    let (list, half) = (list_in(work), work.join("half"));
    if exists(&half) {
        at(&half, fs::remove_file(&half))?;
    }
    let paths: Vec<&str> = paths.collect();
    let text = serde_json::Value::from(paths).to_string();
    at(&half, disk::write_new(&half, &text))?;
    at(&list, fs::rename(&half, &list))?;
    at(work, disk::sync_folder(work))
}

/// Whether an import was cut off while it placed its files.
pub(super) fn is_left(work: &Path) -> bool {
    exists(&list_in(work))
}

/// Takes the list away: all files are in place, or none.
pub(super) fn forget(work: &Path) -> Result<(), WorldError> {
    let list = list_in(work);
    if exists(&list) { at(&list, fs::remove_file(&list)) } else { Ok(()) }
}

/// The files of an import that was cut off. None where none was. Each must hold what that import wrote, or what it found.
pub(super) fn left(catalogue: &Path, work: &Path) -> Result<Vec<Ready>, WorldError> {
    let list = list_in(work);
    if !exists(&list) {
        return Ok(Vec::new());
    }
    let bytes = disk::read(&list).unwrap_or_default();
    let paths: Vec<String> = serde_json::from_slice(&bytes).unwrap_or_default();
    if paths.is_empty() || !paths.iter().all(|path| is_within(catalogue, path)) {
        return Err(by_hand(&list, "an `import` was cut off, and its list of files can't be read"));
    }
    paths.iter().enumerate().map(|(nth, path)| of_file(catalogue, work, nth, path)).collect()
}

fn of_file(catalogue: &Path, work: &Path, nth: usize, path: &str) -> Result<Ready, WorldError> {
    let place = below(catalogue, path);
    let (new, old) = (work.join(format!("{nth}.new")), work.join(format!("{nth}.old")));
    let old = exists(&old).then_some(old);
    let held = disk::read(&place);
    let is_as_found = held.is_none() || old.as_ref().is_some_and(|old| disk::read(old) == held);
    if exists(&new) && (!is_as_found || exists(&place) && held.is_none()) {
        return Err(by_hand(&place, "an `import` was cut off, and this file was changed since then"));
    }
    Ok(Ready { place, new, old })
}

/// Whether a path names a record of the catalogue and nothing else: the list lies where anybody may have written it.
fn is_within(catalogue: &Path, path: &str) -> bool {
    let is_plain = |part: &str| !part.is_empty() && !part.starts_with('.') && !part.contains(['\\', ':']);
    let is_folder = |folder: &str| {
        let folder = below(catalogue, folder);
        !exists(&folder) || disk::is(&folder, fs::FileType::is_dir)
    };
    path.ends_with(".yaml") && path.split('/').all(is_plain) && above(path).all(is_folder)
}

fn by_hand(path: &Path, what: &str) -> WorldError {
    fault(
        path,
        format!(
            "{what}: compare the records with their last version, put right what is half done, then remove the \
             folder `.importing`"
        ),
    )
}

//! The files of records on the disk: one `import` at a time, and all files changed or none.

use super::cut_off::{self, Ready};
use super::disk::{self, at, below, exists, fault};
use super::workspace::{LOCK, lock};
use crate::source::WorldError;
use std::fs::{self, File};
use std::path::{Path, PathBuf};

/// A catalogue whose records are being changed, locked.
#[derive(Debug)]
pub(super) struct RecordsFolder {
    catalogue: PathBuf,
    /// Where the lock lies, and the files until all of them are whole; hidden, so that nobody reads them as records.
    work: PathBuf,
    lock: File,
}

/// A file that changes: its path below the catalogue, what it holds, nothing where it is new, and what it will hold.
pub(super) struct Change<'a> {
    pub(super) path: &'a str,
    pub(super) was: Option<&'a str>,
    pub(super) is: &'a str,
}

impl RecordsFolder {
    /// Takes the lock, before anything of the catalogue is read.
    pub(super) fn open(catalogue: &Path) -> Result<Self, WorldError> {
        if !disk::is(catalogue, |kind| kind.is_dir() || kind.is_symlink()) {
            return Err(fault(catalogue, "there is no such folder"));
        }
        let work = catalogue.join(".importing");
        at(&work, fs::create_dir_all(&work))?;
        let lock = lock(&work, "another `import` is at work on these records: wait for it, then look again")?;
        Ok(Self { catalogue: catalogue.to_path_buf(), work, lock })
    }

    /// Puts in place what an earlier `import` that was cut off had not; gives the files of that import.
    pub(super) fn finish(&self) -> Result<Vec<PathBuf>, WorldError> {
        let ready = cut_off::left(&self.catalogue, &self.work)?;
        ready.iter().filter(|file| exists(&file.new)).try_for_each(place)?;
        self.placed(ready)
    }

    /// Puts all files in place: written beside, on the disk, then listed, then given their names one by one. Where one
    /// can't be, those before it get back what they held.
    pub(super) fn put(&self, changes: &[Change<'_>]) -> Result<Vec<PathBuf>, WorldError> {
        let ready: Vec<Ready> = changes
            .iter()
            .enumerate()
            .map(|(nth, change)| self.ready(nth, change))
            .collect::<Result<_, _>>()?;
        cut_off::list(&self.work, changes.iter().map(|change| change.path))?;
        for (nth, file) in ready.iter().enumerate() {
            if let Err(fault) = place(file) {
                // Where a file can't be put back either, the list stays, and the next command says so.
                if ready[..nth].iter().all(|file| put_back(file).is_ok()) {
                    cut_off::forget(&self.work)?;
                }
                return Err(fault);
            }
        }
        self.placed(ready)
    }

    /// All of them are in place, and stay there whatever happens: the list has served.
    fn placed(&self, ready: Vec<Ready>) -> Result<Vec<PathBuf>, WorldError> {
        for file in &ready {
            if let Some(folder) = file.place.parent() {
                at(folder, disk::sync_folder(folder))?;
            }
        }
        cut_off::forget(&self.work)?;
        Ok(ready.into_iter().map(|file| file.place).collect())
    }

    fn ready(&self, nth: usize, change: &Change<'_>) -> Result<Ready, WorldError> {
        let place = below(&self.catalogue, change.path);
        let is_as_read = match change.was {
            Some(was) => disk::read(&place).is_some_and(|bytes| bytes == was.as_bytes()),
            None => !exists(&place),
        };
        if !is_as_read {
            return Err(fault(
                &place,
                "has changed while it was looked at; nothing was written: import again",
            ));
        }
        let new = self.beside(nth, "new", Some(change.is))?;
        let old = self.beside(nth, "old", change.was)?;
        let old = change.was.map(|_| old);
        if let Some(old) = &old {
            let rights = at(&place, fs::metadata(&place))?.permissions();
            for beside in [&new, old] {
                at(beside, fs::set_permissions(beside, rights.clone()))?;
            }
        }
        Ok(Ready { place, new, old })
    }

    /// A file beside the records; what an `import` that was killed before it placed anything has left there goes.
    fn beside(&self, nth: usize, what: &str, text: Option<&str>) -> Result<PathBuf, WorldError> {
        let path = self.work.join(format!("{nth}.{what}"));
        if exists(&path) {
            at(&path, fs::remove_file(&path))?;
        }
        if let Some(text) = text {
            at(&path, disk::write_new(&path, text))?;
        }
        Ok(path)
    }
}

fn place(file: &Ready) -> Result<(), WorldError> {
    at(&file.place, disk::make_room(&file.place).and_then(|()| fs::rename(&file.new, &file.place)))
}

/// Gives a file what it held. What it should have held lies beside again, so that a list that stays can be finished.
fn put_back(file: &Ready) -> std::io::Result<()> {
    fs::rename(&file.place, &file.new)?;
    file.old.as_ref().map_or(Ok(()), |old| fs::rename(old, &file.place))
}

impl Drop for RecordsFolder {
    /// Leaves nothing behind, but what an import that is cut off needs to be finished.
    fn drop(&mut self) {
        let _ = fs::remove_file(self.work.join(LOCK));
        if !cut_off::is_left(&self.work) {
            let _ = fs::remove_dir_all(&self.work);
        }
        let _ = self.lock.unlock();
    }
}

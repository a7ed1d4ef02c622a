//! The files of records on the disk: one `import` at a time, and all files changed or none.

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

/// A file that is ready to take its place.
struct Ready {
    place: PathBuf,
    new: PathBuf,
    /// What is put back where a later file can't take its place.
    old: Option<PathBuf>,
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

    /// Puts all files in place: written beside, on the disk, then given their names one by one. Where one can't be, those
    /// before it get back what they held.
    pub(super) fn put(&self, changes: &[Change<'_>]) -> Result<Vec<PathBuf>, WorldError> {
        let ready: Vec<Ready> = changes
            .iter()
            .enumerate()
            .map(|(nth, change)| self.ready(nth, change))
            .collect::<Result<_, _>>()?;
        for (nth, file) in ready.iter().enumerate() {
            let placed = at(
                &file.place,
                disk::make_room(&file.place).and_then(|()| fs::rename(&file.new, &file.place)),
            );
            if let Err(fault) = placed {
                ready[..nth].iter().for_each(put_back);
                return Err(fault);
            }
        }
        for file in &ready {
            if let Some(folder) = file.place.parent() {
                at(folder, disk::sync_folder(folder))?;
            }
        }
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
        let new = self.beside(nth, "new", change.is)?;
        let old = change.was.map(|was| self.beside(nth, "old", was)).transpose()?;
        if let Some(old) = &old {
            let rights = at(&place, fs::metadata(&place))?.permissions();
            for beside in [&new, old] {
                at(beside, fs::set_permissions(beside, rights.clone()))?;
            }
        }
        Ok(Ready { place, new, old })
    }

    fn beside(&self, nth: usize, what: &str, text: &str) -> Result<PathBuf, WorldError> {
        let path = self.work.join(format!("{nth}.{what}"));
        // What a run that was killed has left.
        if exists(&path) {
            at(&path, fs::remove_file(&path))?;
        }
        at(&path, disk::write_new(&path, text))?;
        Ok(path)
    }
}

/// Gives a file what it held; there is nothing left to do where that fails too.
fn put_back(file: &Ready) {
    let _ = match &file.old {
        Some(old) => fs::rename(old, &file.place),
        None => fs::remove_file(&file.place),
    };
}

impl Drop for RecordsFolder {
    /// Leaves nothing behind.
    fn drop(&mut self) {
        let _ = fs::remove_file(self.work.join(LOCK));
        let _ = fs::remove_dir_all(&self.work);
        let _ = self.lock.unlock();
    }
}

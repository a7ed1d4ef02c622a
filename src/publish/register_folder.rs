//! The register on the disk: one `issue` at a time, and an edition whole or not at all.

use super::disk::{self, at, exists, fault};
use super::workspace::{LOCK, lock};
use crate::source::WorldError;
use std::fs::{self, File};
use std::path::{Path, PathBuf};

/// A catalogue's register, locked.
#[derive(Debug)]
pub(super) struct RegisterFolder {
    /// The register.
    folder: PathBuf,
    /// Where the lock lies, and the edition until it is whole; hidden, so that nobody reads it as a record.
    work: PathBuf,
    /// Folders that were made for it, the innermost first.
    made: Vec<PathBuf>,
    lock: File,
}

impl RegisterFolder {
    /// Takes the lock, before anything of the catalogue is read.
    pub(super) fn open(catalogue: &Path) -> Result<Self, WorldError> {
        if !disk::is(catalogue, |kind| kind.is_dir() || kind.is_symlink()) {
            return Err(fault(catalogue, "there is no such folder"));
        }
        let folder = catalogue.join("register");
        let work = folder.join(".issuing");
        let made = at(&work, disk::make_folder(&work))?;
        let lock =
            lock(&work, "another `issue` is at work on this register: wait for it, then compare again")?;
        Ok(Self { folder, work, made, lock })
    }

    /// Puts an edition in place: written beside, on the disk, then given its name. An earlier one is never replaced.
    pub(super) fn put(&mut self, edition: &str, text: &str) -> Result<PathBuf, WorldError> {
        let (new, place) = (self.work.join("new"), self.folder.join(format!("{edition}.yaml")));
        // What a run that was killed has left.
        if exists(&new) {
            at(&new, fs::remove_file(&new))?;
        }
        at(&new, disk::write_new(&new, text))?;
        if exists(&place) {
            return Err(fault(&place, "is there already; an edition is never written again"));
        }
        at(&place, fs::rename(&new, &place))?;
        self.made.clear();
        at(&self.folder, disk::sync_folder(&self.folder))?;
        if let Some(catalogue) = self.folder.parent() {
            at(catalogue, disk::sync_folder(catalogue))?;
        }
        Ok(place)
    }
}

impl Drop for RegisterFolder {
    /// Leaves nothing behind; folders that were made for an edition that did not come to be go too.
    fn drop(&mut self) {
        for file in ["new", LOCK] {
            let _ = fs::remove_file(self.work.join(file));
        }
        [&self.work].into_iter().chain(&self.made).for_each(|folder| drop(fs::remove_dir(folder)));
        let _ = self.lock.unlock();
    }
}

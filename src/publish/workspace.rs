//! The folder beside the output in which a run makes its files, and the lock that keeps a second run out.

use super::disk::{at, clear, exists, fault};
use crate::source::WorldError;
use std::fs::{self, File, OpenOptions, TryLockError};
use std::io;
use std::path::{Path, PathBuf};

/// The output folder, locked, with a folder to work in.
///
/// That folder lies beside the output and is hidden; where nothing can be written there, or the output is
/// another disk, it lies in the output.
#[derive(Debug)]
pub(super) struct Workspace {
    /// The output folder; perhaps not there yet.
    pub(super) output: PathBuf,
    /// Where this run works.
    pub(super) folder: PathBuf,
    /// Whether that is in the output folder itself.
    pub(super) inside: bool,
    made_output: bool,
    lock: Option<File>,
}

impl Workspace {
    pub(super) fn open(output: &Path) -> Result<Self, WorldError> {
        let output = settled(output)?;
        let (folder, inside, made_output) = place(&output)?;
        let lock = lock(&folder)?;
        Ok(Self { output, folder, inside, made_output, lock: Some(lock) })
    }

    /// Where files are made.
    pub(super) fn new_tree(&self) -> PathBuf {
        self.folder.join("new")
    }

    /// A whole tree that waits to change places with the output, or has done so.
    pub(super) fn next_tree(&self) -> PathBuf {
        self.folder.join("next")
    }

    /// What must still be done to put files in place one by one.
    pub(super) fn journal(&self) -> PathBuf {
        self.folder.join("journal.json")
    }
}

impl Drop for Workspace {
    /// Leaves nothing behind, whether the run came to its end or not. What can't be removed now is
    /// removed by the next run; an unfinished journal stays for it.
    fn drop(&mut self) {
        if !exists(&self.journal()) && !exists(&self.next_tree()) {
            let _ = clear(&self.new_tree());
            let _ = fs::remove_file(self.folder.join("lock"));
            let _ = fs::remove_dir(&self.folder);
        }
        if self.made_output {
            let _ = fs::remove_dir(&self.output);
        }
        drop(self.lock.take());
    }
}

/// The folder itself where a link leads to it, refusing what isn't a folder or can't be written.
fn settled(output: &Path) -> Result<PathBuf, WorldError> {
    match fs::metadata(output) {
        Ok(metadata) if !metadata.is_dir() => Err(fault(output, "is not a folder")),
        Ok(metadata) if metadata.permissions().readonly() => Err(fault(output, "is read-only")),
        Ok(_) => at(output, fs::canonicalize(output)),
        Err(error) if error.kind() == io::ErrorKind::NotFound => at(output, std::path::absolute(output)),
        Err(error) => at(output, Err(error)),
    }
}

/// The folder to work in, whether it is in the output, and whether the output was made for it.
fn place(output: &Path) -> Result<(PathBuf, bool, bool), WorldError> {
    if let Some(folder) = beside(output) {
        let made = folder.parent().map_or(Ok(()), fs::create_dir_all).and_then(|()| make(&folder));
        if made.is_ok() && same_disk(output, &folder) {
            return Ok((folder, false, false));
        }
        if made.is_ok() {
            let _ = fs::remove_dir(&folder);
        }
    }
    let there = exists(output);
    at(output, fs::create_dir_all(output))?;
    let folder = output.join(".fittingcards");
    at(&folder, make(&folder))?;
    Ok((folder, true, !there))
}

fn beside(output: &Path) -> Option<PathBuf> {
    let name = output.file_name()?.to_string_lossy().into_owned();
    Some(output.parent()?.join(format!(".{name}.fittingcards")))
}

fn make(folder: &Path) -> io::Result<()> {
    fs::create_dir_all(folder)
}

#[cfg(unix)]
fn same_disk(output: &Path, folder: &Path) -> bool {
    use std::os::unix::fs::MetadataExt;
    match (fs::metadata(output), fs::metadata(folder)) {
        (Ok(output), Ok(folder)) => output.dev() == folder.dev(),
        _ => true,
    }
}

#[cfg(not(unix))]
fn same_disk(_output: &Path, _folder: &Path) -> bool {
    true
}

/// Takes the lock. A run that has just ended may have removed the file between opening and locking it;
/// then it is made anew.
fn lock(folder: &Path) -> Result<File, WorldError> {
    let path = folder.join("lock");
    for _ in 0..100 {
        let opened = make(folder)
            .and_then(|()| OpenOptions::new().create(true).truncate(false).write(true).open(&path));
        let file = match opened {
            Err(error) if error.kind() == io::ErrorKind::NotFound => continue,
            other => at(&path, other)?,
        };
        match file.try_lock() {
            Ok(()) if still_there(&file, &path) => return Ok(file),
            Ok(()) => {}
            Err(TryLockError::WouldBlock) => return Err(fault(folder, "another run is writing this output")),
            Err(TryLockError::Error(error)) if error.kind() == io::ErrorKind::Unsupported => return Ok(file),
            Err(TryLockError::Error(error)) => return at(&path, Err(error)),
        }
    }
    Err(fault(folder, "other runs keep taking this output"))
}

#[cfg(unix)]
fn still_there(file: &File, path: &Path) -> bool {
    use std::os::unix::fs::MetadataExt;
    match (file.metadata(), fs::metadata(path)) {
        (Ok(held), Ok(named)) => (held.dev(), held.ino()) == (named.dev(), named.ino()),
        _ => false,
    }
}

/// A file that is open can't be taken away here.
#[cfg(not(unix))]
fn still_there(_file: &File, _path: &Path) -> bool {
    true
}

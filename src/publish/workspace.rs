//! The folder in which a run makes its files, and the lock that keeps a second run out.
//!
//! It lies beside the output, hidden; where nothing can be written there, or the output is a disk or mount
//! of its own, in the output. Nothing that an earlier run or anybody else left in it is read: it is cleared.

use super::disk::{self, at, exists, fault};
use super::plan::NOT_OURS;
use super::system;
use crate::source::WorldError;
use std::fs::{self, File, FileType, OpenOptions, TryLockError};
use std::io;
use std::path::{Path, PathBuf};
use std::sync::{PoisonError, RwLock};

/// What runs of this process would leave if it ended now. Whoever writes, reads this meanwhile.
static UNDER_WAY: RwLock<Vec<Traces>> = RwLock::new(Vec::new());

/// The output folder, locked, with a folder to work in.
#[derive(Debug)]
pub(super) struct Workspace {
    /// The output folder; perhaps not there yet.
    pub(super) output: PathBuf,
    /// Where this run works.
    pub(super) folder: PathBuf,
    lock: File,
}

impl Workspace {
    pub(super) fn open(output: &Path) -> Result<Self, WorldError> {
        let output = at(output, disk::real(output))?;
        match fs::symlink_metadata(&output) {
            Ok(there) if !there.is_dir() => return Err(fault(&output, "is not a folder")),
            Ok(there) if there.permissions().readonly() => return Err(fault(&output, "is read-only")),
            _ => {}
        }
        let mut under_way = UNDER_WAY.write().unwrap_or_else(PoisonError::into_inner);
        let folder = place(&output);
        if exists(&folder) && !disk::is(&folder, FileType::is_dir) {
            return Err(fault(&folder, NOT_OURS));
        }
        let made = at(&output, disk::make_folder(&folder))?;
        let workspace = Self {
            lock: lock(&folder, "another run is writing this output")?,
            output,
            folder: folder.clone(),
        };
        under_way.push(Traces { folder, made });
        drop(under_way);
        let tree = workspace.tree();
        at(&tree, clear(&tree).and_then(|()| fs::create_dir(&tree)))?;
        Ok(workspace)
    }

    /// Where files are made, and what is to be discarded once it has changed places with the output.
    pub(super) fn tree(&self) -> PathBuf {
        self.folder.join(TREE)
    }

    /// Whether the tree can become the output.
    pub(super) fn is_beside(&self) -> bool {
        !self.folder.starts_with(&self.output)
    }
}

impl Drop for Workspace {
    /// Leaves nothing behind, whether the run came to its end or not.
    fn drop(&mut self) {
        let mut under_way = UNDER_WAY.write().unwrap_or_else(PoisonError::into_inner);
        under_way.retain(|traces| traces.folder != self.folder || traces.remove());
        let _ = self.lock.unlock();
    }
}

/// What a run leaves where it does not come to its end.
#[derive(Debug)]
struct Traces {
    folder: PathBuf,
    /// Folders that were made for it, the innermost first.
    made: Vec<PathBuf>,
}

impl Traces {
    /// Removes them, and says that none is left to see to: what can't be removed now, the next run removes.
    fn remove(&self) -> bool {
        let _ = clear(&self.folder.join(TREE));
        let _ = fs::remove_file(self.folder.join(LOCK));
        [&self.folder].into_iter().chain(&self.made).for_each(|folder| drop(fs::remove_dir(folder)));
        false
    }
}

/// While this is held, nobody who stops the process interrupts what is being written.
pub(super) fn writing() -> impl Sized {
    UNDER_WAY.read().unwrap_or_else(PoisonError::into_inner)
}

/// For whoever is about to end the process: waits until the output is whole, removes what runs have made so
/// far, and lets none write again while the answer is kept.
#[must_use]
pub fn stop_writing() -> impl Sized {
    let mut under_way = UNDER_WAY.write().unwrap_or_else(PoisonError::into_inner);
    under_way.retain(Traces::remove);
    under_way
}

pub(super) const LOCK: &str = "lock";
const TREE: &str = "new";

fn clear(folder: &Path) -> io::Result<()> {
    if exists(folder) { fs::remove_dir_all(folder) } else { Ok(()) }
}

/// The folder to work in.
fn place(output: &Path) -> PathBuf {
    let near = |parent: &&Path| system::mount(parent) == system::mount(output) && system::is_writable(parent);
    match (output.parent().filter(|parent| !exists(output) || near(parent)), output.file_name()) {
        (Some(parent), Some(name)) => parent.join(format!(".{}.fittingcards", name.to_string_lossy())),
        _ => output.join(".fittingcards"),
    }
}

/// Takes the lock of a folder, or says that it is `taken`. A run that has just ended may have removed the file between
/// opening and locking it; then it is made anew.
pub(super) fn lock(folder: &Path, taken: &str) -> Result<File, WorldError> {
    let path = folder.join(LOCK);
    for _ in 0..100 {
        if exists(&path) && !disk::is(&path, FileType::is_file) {
            return Err(fault(&path, NOT_OURS));
        }
        let opened = fs::create_dir_all(folder)
            .and_then(|()| OpenOptions::new().create(true).truncate(false).write(true).open(&path));
        let file = match opened {
            Err(error) if error.kind() == io::ErrorKind::NotFound => continue,
            other => at(&path, other)?,
        };
        match file.try_lock() {
            Ok(()) if still_there(&file, &path) => return Ok(file),
            Ok(()) => {}
            Err(TryLockError::WouldBlock) => return Err(fault(folder, taken)),
            Err(TryLockError::Error(error)) if error.kind() == io::ErrorKind::Unsupported => return Ok(file),
            Err(TryLockError::Error(error)) => return at(&path, Err(error)),
        }
    }
    Err(fault(folder, taken))
}

/// Whether the file that is held is the one that others would find.
fn still_there(file: &File, path: &Path) -> bool {
    let ids =
        [file.metadata(), fs::symlink_metadata(path)].map(|file| file.ok().map(|file| system::id(&file)));
    ids[0].is_some() && ids[0] == ids[1]
}

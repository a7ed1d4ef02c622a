//! Files in the making: written aside by many threads, and put in place all at once or not at all.

use super::disk::{self, at, below, fault};
use super::manifest::{Files, Fingerprint};
use super::plan::Leftovers;
use super::put::{self, PutInPlace};
use super::workspace::{self, Workspace};
use crate::source::WorldError;
use std::fs::File;
use std::io::{self, Write};
use std::path::Path;
use std::sync::{Mutex, PoisonError};

/// Files in the making. Nothing in the output changes before [`Staging::put_in_place`]; where that is never
/// called, nothing does.
///
/// ```
/// use fittingcards::publish::{Leftovers, Staging};
/// let folder = tempfile::tempdir()?;
/// let staging = Staging::open(&folder.path().join("output"))?;
/// staging.write("cards/ST-4100-front.svg", b"<svg/>")?;
/// assert!(!folder.path().join("output").exists());
/// let done = staging.put_in_place(Leftovers::Removed)?;
/// assert_eq!(done.written, 2);
/// assert!(folder.path().join("output/manifest.json").exists());
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
#[derive(Debug)]
pub struct Staging {
    workspace: Workspace,
    files: Mutex<Files>,
    /// Files of an earlier run that stay as they are.
    kept: Mutex<Files>,
}

impl Staging {
    /// Locks the output and makes room beside it.
    ///
    /// # Errors
    /// Where the folder can't be written, or another run is writing it.
    pub fn open(output: &Path) -> Result<Self, WorldError> {
        Ok(Self { workspace: Workspace::open(output)?, files: Mutex::default(), kept: Mutex::default() })
    }

    /// Makes one file; may be called from many threads.
    ///
    /// # Errors
    /// Where it can't be written, or was written before in this run.
    pub fn write(&self, path: &str, bytes: &[u8]) -> Result<(), WorldError> {
        self.write_pieces(path, &[bytes])
    }

    /// The same with bytes that are there in pieces, one behind the other.
    pub(super) fn write_pieces(&self, path: &str, pieces: &[impl AsRef<[u8]>]) -> Result<(), WorldError> {
        let _uninterrupted = workspace::writing();
        let print = Fingerprint::of_pieces(pieces);
        let before = self.files.lock().unwrap_or_else(PoisonError::into_inner).insert(path.to_owned(), print);
        let whole = below(&self.workspace.tree(), path);
        match before {
            Some(_) => Err(fault(&below(&self.workspace.output, path), "two outputs have this path")),
            None => at(&whole, disk::make_room(&whole).and_then(|()| written(&whole, pieces))),
        }
    }

    /// Lets a file of an earlier run stay, which holds that; may be called from many threads.
    pub(super) fn keep(&self, path: &str, print: Fingerprint) {
        self.kept.lock().unwrap_or_else(PoisonError::into_inner).insert(path.to_owned(), print);
    }

    /// Puts all files in place, with a manifest of them.
    ///
    /// # Errors
    /// Where a file that this program did not write is in the way, or the machine refuses; the output is
    /// then as it was. Where it can't be put in place at once, a machine that fails midway leaves it without a
    /// manifest; the fault says so, and the next run replaces it whole.
    pub fn put_in_place(self, leftovers: Leftovers) -> Result<PutInPlace, WorldError> {
        let files = self.files.into_inner().unwrap_or_else(PoisonError::into_inner);
        let kept = self.kept.into_inner().unwrap_or_else(PoisonError::into_inner);
        put::put(&self.workspace, files, kept, leftovers)
    }
}

fn written(file: &Path, pieces: &[impl AsRef<[u8]>]) -> io::Result<()> {
    let mut file = File::create(file)?;
    pieces.iter().try_for_each(|piece| file.write_all(piece.as_ref()))
}

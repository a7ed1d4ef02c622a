//! What goes in: the `World` of files, fonts and dates, and places in files.

mod disk;
mod memory;
mod place;
mod unread;

pub use disk::DiskWorld;
pub use memory::MemoryWorld;
pub use place::{FilePath, Folder, Place};
pub use unread::{Unread, WhyUnread};

use std::sync::Arc;

/// Everything that a run reads. Whatever is not asked of a `World` can't change an output.
///
/// Implemented by [`DiskWorld`] for real runs and [`MemoryWorld`] for tests.
pub trait World: Send + Sync {
    /// The regular files below a folder, sorted by path. A layouts folder that does not exist is empty, since
    /// the built-in layouts stand in for it.
    ///
    /// # Errors
    /// Where the folder can't be read.
    fn files(&self, folder: Folder) -> Result<Vec<FilePath>, WorldError>;

    /// What else lies below a folder and is not among its files, sorted by path: whoever lists files says so,
    /// so that no record is left out unsaid. Hidden names are passed over.
    ///
    /// # Errors
    /// Where the folder can't be read.
    fn unread(&self, folder: Folder) -> Result<Vec<Unread>, WorldError> {
        let _ = folder;
        Ok(Vec::new())
    }

    /// The bytes of a file.
    ///
    /// # Errors
    /// Where there is no such file, it can't be read, or it is larger than any file of a catalogue.
    fn read(&self, file: &FilePath) -> Result<Arc<[u8]>, WorldError>;

    /// The value of SOURCE_DATE_EPOCH, where it is set.
    fn source_date_epoch(&self) -> Option<&str>;

    /// How a person reaches a file from where the program was started, for messages; of a layout that is not among
    /// the user's, that it is built in.
    fn display(&self, file: &FilePath) -> String;

    /// The fonts that are always there, in order of preference.
    fn fonts(&self) -> Vec<&'static [u8]> {
        vec![
            dejavu::sans::regular(),
            dejavu::sans::bold(),
            dejavu::sans_condensed::regular(),
            dejavu::sans_condensed::bold(),
        ]
    }
}

/// The machine could not give what was asked of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WorldError {
    /// The file or folder, as a person reaches it.
    pub path: String,
    /// What went wrong, in the machine's words.
    pub reason: String,
}

impl std::fmt::Display for WorldError {
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(out, "{}: {}", self.path, self.reason)
    }
}

impl std::error::Error for WorldError {}

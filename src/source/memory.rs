//! A world held in memory, for tests and examples.

use super::{FilePath, Folder, World, WorldError};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Files held in memory.
///
/// ```
/// use fittingcards::source::{FilePath, Folder, MemoryWorld, World};
/// let world = MemoryWorld::new().with(FilePath::catalogue("catalogue.yaml"), "title: Ends\n");
/// assert_eq!(world.files(Folder::Catalogue)?.len(), 1);
/// # Ok::<(), fittingcards::source::WorldError>(())
/// ```
#[derive(Debug, Clone, Default)]
pub struct MemoryWorld {
    files: BTreeMap<FilePath, Arc<[u8]>>,
    source_date_epoch: Option<String>,
}

impl MemoryWorld {
    /// A world without files.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// The same world with one file more, or another text in it.
    #[must_use]
    pub fn with(mut self, file: FilePath, bytes: impl AsRef<[u8]>) -> Self {
        self.files.insert(file, bytes.as_ref().into());
        self
    }

    /// The same world with SOURCE_DATE_EPOCH set.
    #[must_use]
    pub fn with_source_date_epoch(mut self, seconds: &str) -> Self {
        self.source_date_epoch = Some(seconds.to_owned());
        self
    }
}

impl World for MemoryWorld {
    fn files(&self, folder: Folder) -> Result<Vec<FilePath>, WorldError> {
        Ok(self.files.keys().filter(|file| file.folder == folder).cloned().collect())
    }

    fn read(&self, file: &FilePath) -> Result<Arc<[u8]>, WorldError> {
        self.files
            .get(file)
            .cloned()
            .ok_or_else(|| WorldError { path: self.display(file), reason: "no such file".to_owned() })
    }

    fn source_date_epoch(&self) -> Option<&str> {
        self.source_date_epoch.as_deref()
    }

    fn display(&self, file: &FilePath) -> String {
        if file.folder == Folder::Layouts && !self.files.contains_key(file) {
            return file.built_in();
        }
        let folder = match file.folder {
            Folder::Catalogue => "content",
            Folder::Layouts => "layouts",
        };
        format!("{folder}/{}", file.path)
    }
}

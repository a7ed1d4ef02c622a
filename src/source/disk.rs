//! The world on disk.
#![expect(clippy::disallowed_methods, reason = "the one place that reads the disk and the environment")]

use super::{FilePath, Folder, World, WorldError};
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// Files on disk, below a catalogue folder and a layouts folder.
#[derive(Debug, Clone)]
pub struct DiskWorld {
    catalogue: PathBuf,
    layouts: PathBuf,
    source_date_epoch: Option<String>,
}

impl DiskWorld {
    /// A world of these two folders, and of the environment's SOURCE_DATE_EPOCH.
    #[must_use]
    pub fn new(catalogue: impl Into<PathBuf>, layouts: impl Into<PathBuf>) -> Self {
        Self {
            catalogue: catalogue.into(),
            layouts: layouts.into(),
            source_date_epoch: std::env::var("SOURCE_DATE_EPOCH").ok(),
        }
    }

    fn root(&self, folder: Folder) -> &Path {
        match folder {
            Folder::Catalogue => &self.catalogue,
            Folder::Layouts => &self.layouts,
        }
    }

    fn on_disk(&self, file: &FilePath) -> PathBuf {
        let mut path = self.root(file.folder).to_path_buf();
        path.extend(file.path.split('/'));
        path
    }
}

impl World for DiskWorld {
    fn files(&self, folder: Folder) -> Result<Vec<FilePath>, WorldError> {
        let root = self.root(folder);
        if folder == Folder::Layouts && !root.exists() {
            return Ok(Vec::new());
        }
        let mut files = Vec::new();
        for entry in walkdir::WalkDir::new(root).follow_links(false) {
            let entry = entry.map_err(|error| fault(error.path().unwrap_or(root), &error))?;
            if entry.depth() > 0 && entry.file_type().is_symlink() && !is_hidden(entry.path()) {
                return Err(fault(
                    entry.path(),
                    &"is a link, and links are not followed: put the file itself here",
                ));
            }
            if entry.file_type().is_file() {
                files.push(FilePath { folder, path: below(root, entry.path())? });
            }
        }
        files.sort();
        Ok(files)
    }

    fn read(&self, file: &FilePath) -> Result<Arc<[u8]>, WorldError> {
        let path = self.on_disk(file);
        std::fs::read(&path).map(Arc::from).map_err(|error| fault(&path, &error))
    }

    fn source_date_epoch(&self) -> Option<&str> {
        self.source_date_epoch.as_deref()
    }

    fn display(&self, file: &FilePath) -> String {
        let path = self.on_disk(file);
        if file.folder == Folder::Layouts && !path.exists() {
            return file.built_in();
        }
        path.display().to_string()
    }
}

/// What editors and version control keep beside the files.
fn is_hidden(path: &Path) -> bool {
    path.file_name().is_some_and(|name| name.as_encoded_bytes().starts_with(b"."))
}

fn below(root: &Path, path: &Path) -> Result<Arc<str>, WorldError> {
    let relative = path.strip_prefix(root).unwrap_or(path);
    let mut parts = Vec::new();
    for part in relative {
        match part.to_str() {
            Some(text) => parts.push(text),
            None => return Err(fault(path, &"its name is not UTF-8")),
        }
    }
    Ok(parts.join("/").into())
}

fn fault(path: &Path, reason: &dyn std::fmt::Display) -> WorldError {
    WorldError { path: path.display().to_string(), reason: reason.to_string() }
}

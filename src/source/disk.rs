//! The world on disk.
#![expect(clippy::disallowed_methods, reason = "the one place that reads the disk and the environment")]

use super::{FilePath, Folder, Unread, WhyUnread, World, WorldError};
use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// No file of a catalogue is larger, fonts with tens of thousands of characters among them.
const LARGEST: u64 = 64 * 1024 * 1024;

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

    /// Files and what is not read, each sorted by path.
    fn listed(&self, folder: Folder) -> Result<(Vec<FilePath>, Vec<Unread>), WorldError> {
        let root = self.root(folder);
        let (mut files, mut unread) = (Vec::new(), Vec::new());
        if folder == Folder::Layouts && !root.exists() {
            return Ok((files, unread));
        }
        is_folder(root, folder)?;
        for entry in walkdir::WalkDir::new(root).follow_links(false).min_depth(1) {
            let entry = entry.map_err(|error| fault(error.path().unwrap_or(root), &reason(&error)))?;
            let (path, is_text) = below(root, entry.path());
            let file = FilePath { folder, path: path.into() };
            let is_file = entry.file_type().is_file();
            match why_unread(&entry) {
                Some(why) => unread.push(Unread { file, why }),
                // A folder above it may have the name that is not UTF-8.
                None if is_file && !is_text => unread.push(Unread { file, why: WhyUnread::Name }),
                None if is_file => files.push(file),
                None => {}
            }
        }
        files.sort();
        unread.sort_by(|one, other| one.file.cmp(&other.file));
        Ok((files, unread))
    }

    fn on_disk(&self, file: &FilePath) -> PathBuf {
        let mut path = self.root(file.folder).to_path_buf();
        path.extend(file.path.split('/'));
        path
    }
}

impl World for DiskWorld {
    fn files(&self, folder: Folder) -> Result<Vec<FilePath>, WorldError> {
        Ok(self.listed(folder)?.0)
    }

    fn unread(&self, folder: Folder) -> Result<Vec<Unread>, WorldError> {
        Ok(self.listed(folder)?.1)
    }

    fn read(&self, file: &FilePath) -> Result<Arc<[u8]>, WorldError> {
        let path = self.on_disk(file);
        let size = std::fs::metadata(&path).map_err(|error| fault(&path, &error))?.len();
        if size > LARGEST {
            return Err(fault(&path, &format!("it has {size} bytes; at most {LARGEST} are read (64 MiB)")));
        }
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

/// Nothing where a folder stands there.
fn is_folder(root: &Path, folder: Folder) -> Result<(), WorldError> {
    let (option, holds) = match folder {
        Folder::Catalogue => ("--catalogue", "the folder that holds catalogue.yaml"),
        Folder::Layouts => ("--layouts", "a folder of layouts"),
    };
    let found = match std::fs::metadata(root) {
        Ok(found) if found.is_dir() => return Ok(()),
        Ok(_) => "this is a file, not a folder".to_owned(),
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => "there is no such folder".to_owned(),
        Err(error) => error.to_string(),
    };
    Err(fault(root, &format!("{found}; {option} expects {holds}")))
}

/// The machine's words without the path, which stands beside them.
fn reason(error: &walkdir::Error) -> String {
    error.io_error().map_or_else(|| error.to_string(), ToString::to_string)
}

/// The kind of an entry that is not read; `None` where it is a file or folder, or hidden.
fn why_unread(entry: &walkdir::DirEntry) -> Option<WhyUnread> {
    let kind = entry.file_type();
    if is_hidden(entry.path()) || kind.is_dir() {
        return None;
    }
    if kind.is_symlink() {
        return Some(WhyUnread::Link);
    }
    if !kind.is_file() {
        return Some(WhyUnread::NoFile);
    }
    entry.file_name().to_str().is_none().then_some(WhyUnread::Name)
}

/// What editors and version control keep beside the files.
fn is_hidden(path: &Path) -> bool {
    path.file_name().is_some_and(|name| name.as_encoded_bytes().starts_with(b"."))
}

/// The path below the root, with `/` between its parts, and whether it is UTF-8.
fn below(root: &Path, path: &Path) -> (String, bool) {
    let parts: Vec<&OsStr> = path.strip_prefix(root).unwrap_or(path).iter().collect();
    let is_text = parts.iter().all(|part| part.to_str().is_some());
    (parts.into_iter().map(written_out).collect::<Vec<_>>().join("/"), is_text)
}

/// A name, what is not UTF-8 in it byte by byte.
fn written_out(name: &OsStr) -> String {
    let chunks = name.as_encoded_bytes().utf8_chunks();
    chunks.map(|chunk| format!("{}{}", chunk.valid(), chunk.invalid().escape_ascii())).collect()
}

fn fault(path: &Path, reason: &dyn std::fmt::Display) -> WorldError {
    WorldError { path: path.display().to_string(), reason: reason.to_string() }
}

//! The few things that writing an output needs of the disk, with the path in every fault.
#![expect(clippy::disallowed_methods, reason = "an earlier output is read to tell its files from others'")]

use crate::source::WorldError;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};

/// Says which path a fault of the machine concerns.
pub(super) fn at<T>(path: &Path, result: io::Result<T>) -> Result<T, WorldError> {
    result.map_err(|error| fault(path, error.to_string()))
}

pub(super) fn fault(path: &Path, reason: impl Into<String>) -> WorldError {
    WorldError { path: path.display().to_string(), reason: reason.into() }
}

/// A path below a folder, from its parts joined by `/`.
pub(super) fn below(folder: &Path, path: &str) -> PathBuf {
    let mut whole = folder.to_path_buf();
    whole.extend(path.split('/'));
    whole
}

/// The bytes of a regular file; None where there is no file.
pub(super) fn read(path: &Path) -> Option<Vec<u8>> {
    if is_file(path) { fs::read(path).ok() } else { None }
}

/// Whether there is a regular file, not a link to one.
pub(super) fn is_file(path: &Path) -> bool {
    fs::symlink_metadata(path).is_ok_and(|metadata| metadata.is_file())
}

/// Whether there is anything of that name, be it a link to nothing.
pub(super) fn exists(path: &Path) -> bool {
    fs::symlink_metadata(path).is_ok()
}

/// Makes the folders above a path.
pub(super) fn make_room(path: &Path) -> io::Result<()> {
    path.parent().map_or(Ok(()), fs::create_dir_all)
}

/// Removes a folder with all that is in it, if it is there.
pub(super) fn clear(folder: &Path) -> io::Result<()> {
    match fs::remove_dir_all(folder) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => Ok(()),
        other => other,
    }
}

/// Every file below a folder as a path with `/`, links among them, and every folder that is empty.
/// What is named in a way that is not UTF-8 is passed by; it can't be one of ours.
pub(super) fn contents(folder: &Path) -> io::Result<Contents> {
    let mut contents = Contents::default();
    for entry in walkdir::WalkDir::new(folder).min_depth(1).follow_links(false).sort_by_file_name() {
        let entry = entry?;
        let below = entry.path().strip_prefix(folder).unwrap_or(entry.path()).to_path_buf();
        if !entry.file_type().is_dir() {
            contents.files.push(below);
        } else if fs::read_dir(entry.path())?.next().is_none() {
            contents.empty_folders.push(below);
        }
    }
    Ok(contents)
}

/// What a folder holds.
#[derive(Debug, Default)]
pub(super) struct Contents {
    pub(super) files: Vec<PathBuf>,
    pub(super) empty_folders: Vec<PathBuf>,
}

/// A relative path as it stands in manifests; None where it is not UTF-8.
pub(super) fn with_slashes(path: &Path) -> Option<String> {
    let parts: Option<Vec<&str>> = path.iter().map(|part| part.to_str()).collect();
    Some(parts?.join("/"))
}

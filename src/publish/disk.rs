//! The few things that writing an output needs of the disk, with the path in every fault.
#![expect(clippy::disallowed_methods, reason = "an earlier output is read to tell its files from others'")]

use crate::source::WorldError;
use std::collections::BTreeSet;
use std::fs::{self, File, FileType, OpenOptions};
use std::io::{self, Write};
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

/// The path itself where links lead to it; what is not there yet is taken by its name.
pub(super) fn real(path: &Path) -> io::Result<PathBuf> {
    match fs::canonicalize(path) {
        Err(error) if error.kind() == io::ErrorKind::NotFound => {
            let path = std::path::absolute(path)?;
            let (Some(parent), Some(name)) = (path.parent(), path.file_name()) else { return Err(error) };
            Ok(real(parent)?.join(name))
        }
        other => other,
    }
}

/// The folders above a path with `/`, the outermost first.
pub(super) fn above(path: &str) -> impl DoubleEndedIterator<Item = &str> {
    path.match_indices('/').map(|(end, _)| &path[..end])
}

/// The bytes of a regular file; None where there is no file.
pub(super) fn read(path: &Path) -> Option<Vec<u8>> {
    if is(path, FileType::is_file) { fs::read(path).ok() } else { None }
}

/// Whether there is such a thing of that name; what a link leads to does not count.
pub(super) fn is(path: &Path, kind: impl Fn(&FileType) -> bool) -> bool {
    fs::symlink_metadata(path).is_ok_and(|metadata| kind(&metadata.file_type()))
}

/// Whether there is anything of that name, be it a link to nothing.
pub(super) fn exists(path: &Path) -> bool {
    is(path, |_| true)
}

/// Makes a folder and those above it; gives those that were not there, the innermost first.
pub(super) fn make_folder(folder: &Path) -> io::Result<Vec<PathBuf>> {
    let missing = folder.ancestors().take_while(|folder| !folder.as_os_str().is_empty() && !exists(folder));
    let missing = missing.map(Path::to_path_buf).collect();
    fs::create_dir_all(folder).map(|()| missing)
}

/// Makes the folders above a path.
pub(super) fn make_room(path: &Path) -> io::Result<()> {
    path.parent().map_or(Ok(()), fs::create_dir_all)
}

/// Writes a file that is not there yet, and waits until the disk has it.
pub(super) fn write_new(path: &Path, text: &str) -> io::Result<()> {
    let mut file = OpenOptions::new().create_new(true).write(true).open(path)?;
    file.write_all(text.as_bytes())?;
    file.sync_all()
}

/// Waits until the disk has what a file holds; gives how many bytes that is.
pub(super) fn sync(file: &Path) -> io::Result<u64> {
    let file = OpenOptions::new().write(true).open(file)?;
    file.sync_all().and_then(|()| Ok(file.metadata()?.len()))
}

/// Waits until the disk has what a folder lists. Where a folder may not be opened, or the system or disk knows
/// no such thing, there is no way to wait.
pub(super) fn sync_folder(folder: &Path) -> io::Result<()> {
    use io::ErrorKind::{InvalidInput, PermissionDenied, Unsupported};
    match File::open(folder).and_then(|folder| folder.sync_all()) {
        Err(error) if matches!(error.kind(), PermissionDenied | InvalidInput | Unsupported) => Ok(()),
        other => other,
    }
}

/// What a folder holds, and what those folders in it hold that are named, by paths with `/`; links are not
/// followed. A name that is not UTF-8 is given as near as can be: it is none of ours.
pub(super) fn entries(root: &Path, into: &BTreeSet<String>) -> io::Result<Vec<(String, FileType)>> {
    let mut entries = Vec::new();
    let mut folders = vec![String::new()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(below(root, &folder))? {
            let entry = entry?;
            let path = format!("{folder}{}", entry.file_name().to_string_lossy());
            let kind = entry.file_type()?;
            if kind.is_dir() && into.contains(&path) {
                folders.push(format!("{path}/"));
            }
            entries.push((path, kind));
        }
    }
    entries.sort_unstable_by(|one, other| one.0.cmp(&other.0));
    Ok(entries)
}

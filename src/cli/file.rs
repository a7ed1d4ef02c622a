//! Files that a command writes one by one.

use super::options::Globals;
use super::outcome::Fault;
use crate::publish::refuse_file_in;
use std::fs::{self, OpenOptions, Permissions};
use std::io::{self, Write};
use std::path::Path;

/// Refuses a file in a folder that is read: a report or picture would take the place of records or layouts.
pub(super) fn refuse_what_is_read(globals: &Globals, path: &Path) -> Result<(), Fault> {
    refuse_file_in(&globals.catalogue, None, path)?;
    Ok(refuse_file_in(&globals.layouts_folder(), None, path)?)
}

/// Writes a file whole or not at all, with the folders that lead to it: until the new one is on the disk, a file that
/// is there stays as it is.
pub(super) fn write(path: &Path, bytes: impl AsRef<[u8]>) -> Result<(), Fault> {
    put(path, bytes.as_ref()).map_err(|error| Fault::new(format!("{}: {error}", path.display())))
}

fn put(path: &Path, bytes: &[u8]) -> io::Result<()> {
    if let Some(parent) = path.parent() {
        fs::create_dir_all(parent)?;
    }
    match fs::metadata(path) {
        // A pipe or a device takes what it is given, and has no file beside it.
        Ok(there) if !there.is_file() => fs::write(path, bytes),
        Ok(there) => {
            // A file that may not be written is not replaced either. A link to it stays a link.
            OpenOptions::new().write(true).open(path)?;
            replace(&fs::canonicalize(path)?, bytes, Some(there.permissions()))
        }
        Err(_) => replace(path, bytes, None),
    }
}

/// Writes a file beside its place, then gives it its name.
fn replace(path: &Path, bytes: &[u8], rights: Option<Permissions>) -> io::Result<()> {
    let new = path.with_file_name(format!(".fittingcards-{}.new", std::process::id()));
    let put = write_new(&new, bytes, rights).and_then(|()| fs::rename(&new, path));
    if put.is_err() {
        let _ = fs::remove_file(&new);
    }
    put
}

fn write_new(path: &Path, bytes: &[u8], rights: Option<Permissions>) -> io::Result<()> {
    let mut file = OpenOptions::new().create_new(true).write(true).open(path)?;
    if let Some(rights) = rights {
        file.set_permissions(rights)?;
    }
    file.write_all(bytes)?;
    file.sync_all()
}

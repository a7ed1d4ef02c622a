//! What is written lies apart from what is read; the output from version control too: nothing else than outputs is at
//! stake in it.

use super::disk::{self, at, exists, fault};
use crate::source::WorldError;
use std::io;
use std::path::{Path, PathBuf};

/// What version control keeps its history in.
const HISTORIES: [&str; 4] = [".git", ".hg", ".svn", ".jj"];

/// Refuses an output that holds a folder that is read, lies in one, or is under version control itself.
pub(super) fn refuse_what_is_read(output: &Path, read: &[PathBuf]) -> Result<(), WorldError> {
    let place = at(output, disk::real(output))?;
    let refused = |what: &str, other: &Path| {
        let other = other.display();
        Err(fault(output, format!("{what} {other}: name another folder for the output")))
    };
    for folder in read.iter().filter(|folder| folder.exists()) {
        let input = at(folder, disk::real(folder))?;
        if place.starts_with(&input) {
            return refused("is or lies in a folder that is read,", folder);
        }
        if input.starts_with(&place) {
            return refused("holds a folder that is read,", folder);
        }
    }
    let history = HISTORIES.iter().map(|name| place.join(name)).find(|history| exists(history));
    history.map_or(Ok(()), |history| refused("holds the history of version control,", &history))
}

/// Refuses a file that lies in a folder that is read, or that a link leads there. What lies below the folder `but` of it
/// is let pass, where nobody reads that.
///
/// # Errors
/// Where the file is refused, or the machine can't say where it lies.
pub fn refuse_file_in(folder: &Path, but: Option<&str>, file: &Path) -> Result<(), WorldError> {
    if !folder.exists() {
        return Ok(());
    }
    let input = at(folder, disk::real(folder))?;
    let but = but.map(|name| input.join(name));
    let is_read =
        |place: &PathBuf| place.starts_with(&input) && but.as_ref().is_none_or(|but| !place.starts_with(but));
    if at(file, places(file))?.iter().any(is_read) {
        let folder = folder.display();
        return Err(fault(
            file,
            format!("lies in a folder that is read, {folder}: name another place for it"),
        ));
    }
    Ok(())
}

/// Where a file lies by its name, and where a link of that name leads.
fn places(file: &Path) -> io::Result<[PathBuf; 2]> {
    let file = std::path::absolute(file)?;
    let led = disk::real(&file)?;
    Ok(match (file.parent(), file.file_name()) {
        (Some(parent), Some(name)) => [disk::real(parent)?.join(name), led],
        _ => [led.clone(), led],
    })
}

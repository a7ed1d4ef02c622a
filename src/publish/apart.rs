//! The output lies apart from what is read and from version control: nothing else than outputs is at stake in it.

use super::disk::{self, at, exists, fault};
use crate::source::WorldError;
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

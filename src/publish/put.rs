//! Putting files in place: the whole folder changes places with the new one in a single step where the
//! system can do that, else file by file with a journal that the next run finishes.

use super::disk::{self, at, below, exists, fault, make_room, with_slashes};
use super::manifest::{self, Files, Fingerprint, MANIFEST};
use super::workspace::Workspace;
use crate::source::WorldError;
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;
use std::fs;
use std::io;
use std::path::Path;

/// What becomes of files of an earlier run that this run does not write again.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Leftovers {
    /// They no longer belong and are removed.
    Removed,
    /// They stay, but for those below this folder.
    KeptExceptIn(&'static str),
}

/// What has been done.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PutInPlace {
    /// How many files were written, the manifest among them.
    pub written: usize,
    /// How many bytes they have.
    pub bytes: u64,
    /// Files of an earlier run that no longer belong but were changed by somebody since; they stay.
    pub left_alone: Vec<String>,
}

/// What is to be done, all checks passed.
#[derive(Debug, Serialize, Deserialize)]
struct Journal {
    /// Files to move into the output, the manifest last.
    moved: Vec<String>,
    /// Files of an earlier run to remove.
    removed: Vec<String>,
}

/// Puts the files of the new tree in place.
pub(super) fn put(
    workspace: &Workspace,
    mut files: Files,
    leftovers: Leftovers,
) -> Result<PutInPlace, WorldError> {
    let earlier = earlier_files(&workspace.output)?;
    refuse_what_is_in_the_way(&workspace.output, &files, &earlier)?;
    let mut moved: Vec<String> = files.keys().cloned().collect();
    let mut removed = Vec::new();
    let mut left_alone = Vec::new();
    for (path, print) in &earlier {
        if files.contains_key(path) {
            continue;
        }
        let untouched =
            disk::read(&below(&workspace.output, path)).map(|bytes| Fingerprint::of(&bytes) == *print);
        match (stays(path, leftovers), untouched) {
            (_, None) => {}
            (true, Some(true)) => {
                files.insert(path.clone(), print.clone());
            }
            (false, Some(true)) => removed.push(path.clone()),
            (_, Some(false)) => left_alone.push(path.clone()),
        }
    }
    let text = manifest::to_text(&files);
    let path = workspace.new_tree().join(MANIFEST);
    at(&path, fs::write(&path, &text))?;
    moved.push(MANIFEST.to_owned());
    let bytes = moved.iter().map(|path| size(&below(&workspace.new_tree(), path))).sum();
    let done = PutInPlace { written: moved.len(), bytes, left_alone };
    in_place(workspace, Journal { moved, removed })?;
    Ok(done)
}

fn stays(path: &str, leftovers: Leftovers) -> bool {
    match leftovers {
        Leftovers::Removed => false,
        Leftovers::KeptExceptIn(folder) => {
            !path.strip_prefix(folder).is_some_and(|rest| rest.starts_with('/'))
        }
    }
}

fn size(path: &Path) -> u64 {
    fs::metadata(path).map_or(0, |metadata| metadata.len())
}

/// What the manifest of an earlier run lists; nothing where there is none.
fn earlier_files(output: &Path) -> Result<Files, WorldError> {
    let path = output.join(MANIFEST);
    if !exists(&path) {
        return Ok(Files::new());
    }
    let files = disk::read(&path).and_then(|text| manifest::from_text(&text));
    files.ok_or_else(|| fault(&path, NOT_OURS))
}

const NOT_OURS: &str =
    "was not written by this program and is in the way: move it, or name another output folder";

/// A file is in the way where it stands on a path to be written and is neither listed by the earlier
/// manifest nor the same to the byte.
fn refuse_what_is_in_the_way(output: &Path, files: &Files, earlier: &Files) -> Result<(), WorldError> {
    let mut folders = BTreeSet::new();
    for (path, print) in files {
        let whole = below(output, path);
        let listed = earlier.contains_key(path) && disk::is_file(&whole);
        let same = || disk::read(&whole).is_some_and(|bytes| Fingerprint::of(&bytes) == *print);
        if exists(&whole) && !listed && !same() {
            return Err(fault(&whole, NOT_OURS));
        }
        folders.extend(path.match_indices('/').map(|(end, _)| &path[..end]));
    }
    let blocked = folders.into_iter().map(|folder| below(output, folder));
    let mut blocked =
        blocked.filter(|folder| fs::symlink_metadata(folder).is_ok_and(|there| !there.is_dir()));
    blocked.next().map_or(Ok(()), |folder| Err(fault(&folder, NOT_OURS)))
}

fn in_place(workspace: &Workspace, journal: Journal) -> Result<(), WorldError> {
    if !workspace.inside && change_places(workspace, &journal).is_ok() {
        return sweep(workspace);
    }
    let tree = workspace.next_tree();
    if exists(&tree) {
        at(&tree, fs::rename(&tree, workspace.new_tree()))?;
    }
    record(workspace, &journal)?;
    follow(workspace, &journal)
}

/// Completes the new tree with whatever stays in the output, then lets the two change places.
fn change_places(workspace: &Workspace, journal: &Journal) -> io::Result<()> {
    let (new, next) = (workspace.new_tree(), workspace.next_tree());
    if exists(&workspace.output) {
        adopt(&workspace.output, &new, journal)?;
        fs::set_permissions(&new, fs::metadata(&workspace.output)?.permissions())?;
        fs::rename(&new, &next)?;
        exchange(&next, &workspace.output)
    } else {
        fs::rename(&new, &workspace.output)
    }
}

/// Links into the new tree what this run neither writes nor removes.
fn adopt(output: &Path, new: &Path, journal: &Journal) -> io::Result<()> {
    let replaced: BTreeSet<&str> = journal.moved.iter().chain(&journal.removed).map(String::as_str).collect();
    let contents = disk::contents(output)?;
    for file in &contents.files {
        if with_slashes(file).is_some_and(|path| replaced.contains(path.as_str())) {
            continue;
        }
        make_room(&new.join(file))?;
        fs::hard_link(output.join(file), new.join(file))?;
    }
    contents.empty_folders.iter().try_for_each(|folder| fs::create_dir_all(new.join(folder)))
}

#[cfg(any(target_os = "linux", target_vendor = "apple"))]
fn exchange(one: &Path, other: &Path) -> io::Result<()> {
    use rustix::fs::{CWD, RenameFlags, renameat_with};
    Ok(renameat_with(CWD, one, CWD, other, RenameFlags::EXCHANGE)?)
}

#[cfg(not(any(target_os = "linux", target_vendor = "apple")))]
fn exchange(_one: &Path, _other: &Path) -> io::Result<()> {
    Err(io::ErrorKind::Unsupported.into())
}

/// Finishes what a run that was killed began, and clears what it left.
pub(super) fn recover(workspace: &Workspace) -> Result<(), WorldError> {
    let path = workspace.journal();
    if let Some(text) = disk::read(&path) {
        let journal: Journal =
            serde_json::from_slice(&text).map_err(|error| fault(&path, error.to_string()))?;
        follow(workspace, &journal)?;
    }
    sweep(workspace)?;
    at(&workspace.new_tree(), disk::clear(&workspace.new_tree()))
}

/// Clears the tree that has changed places. A file that somebody put into it meanwhile goes to the output.
fn sweep(workspace: &Workspace) -> Result<(), WorldError> {
    let tree = workspace.next_tree();
    if !exists(&tree) {
        return Ok(());
    }
    let ours =
        disk::read(&tree.join(MANIFEST)).and_then(|text| manifest::from_text(&text)).unwrap_or_default();
    for file in at(&tree, disk::contents(&tree))?.files {
        let listed = with_slashes(&file).is_some_and(|path| path == MANIFEST || ours.contains_key(&path));
        let home = workspace.output.join(&file);
        if !listed && !exists(&home) {
            at(&home, make_room(&home).and_then(|()| fs::rename(tree.join(&file), &home)))?;
        }
    }
    discard(workspace, &tree)
}

/// Clears a tree under another name, so that what is left of it after a kill is not taken for a whole one.
fn discard(workspace: &Workspace, tree: &Path) -> Result<(), WorldError> {
    let new = workspace.new_tree();
    at(tree, disk::clear(&new).and_then(|()| fs::rename(tree, &new)).and_then(|()| disk::clear(&new)))
}

/// From here on the journal will be followed to its end, if not by this run then by the next.
fn record(workspace: &Workspace, journal: &Journal) -> Result<(), WorldError> {
    let path = workspace.journal();
    let draft = path.with_extension("draft");
    let text = serde_json::to_vec(journal).unwrap_or_default();
    let written = fs::write(&draft, text)
        .and_then(|()| fs::OpenOptions::new().write(true).open(&draft)?.sync_all())
        .and_then(|()| fs::rename(&draft, &path));
    at(&path, written)
}

/// Does what the journal says and has not been done yet.
fn follow(workspace: &Workspace, journal: &Journal) -> Result<(), WorldError> {
    let new = workspace.new_tree();
    for path in &journal.moved {
        let (from, to) = (below(&new, path), below(&workspace.output, path));
        if exists(&from) {
            at(&to, make_room(&to).and_then(|()| fs::rename(&from, &to)))?;
        }
    }
    for path in &journal.removed {
        remove(&workspace.output, path)?;
    }
    at(&workspace.journal(), fs::remove_file(workspace.journal()))
}

/// Removes a file, and the folders above it that it leaves empty.
fn remove(output: &Path, path: &str) -> Result<(), WorldError> {
    let whole = below(output, path);
    if exists(&whole) {
        at(&whole, fs::remove_file(&whole))?;
    }
    let folders = whole.ancestors().skip(1).take_while(|folder| *folder != output);
    for folder in folders {
        if fs::remove_dir(folder).is_err() {
            break;
        }
    }
    Ok(())
}

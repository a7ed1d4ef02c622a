//! Putting files in place. There are two ways, and no third:
//!
//! - *At once.* The new folder takes the place of the output in one step: before it the output is the earlier
//!   one, after it the new one. This needs a system that lets two folders change places, an output that nobody
//!   else keeps files in, and rights that the new folder can have too.
//! - *One by one*, where that can't be. `manifest.json` goes first and comes back last, so that the folder
//!   never claims to be what it isn't: without a manifest it is being replaced. All that can fail for want of
//!   room or rights is done before the manifest goes. What remains are changes of name within one disk. The
//!   next run knows by a second list which files are its own, and replaces them all.
//!
//! In both, the disk has every byte before a name changes, and has the name before the next step relies on it.

use super::disk::{self, at, below, exists, fault};
use super::manifest::{self, BEING_REPLACED, Files, Fingerprint, MANIFEST};
use super::plan::{Leftovers, Plan};
use super::system;
use super::workspace::{self, Workspace};
use crate::source::WorldError;
use rayon::prelude::*;
use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, FileType};
use std::io;
use std::path::{Path, PathBuf};

/// What has been done.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PutInPlace {
    /// How many files the run made or kept, the manifest among them.
    pub written: usize,
    /// How many of them stayed as an earlier run had made them.
    pub kept: usize,
    /// How many bytes they have together.
    pub bytes: u64,
    /// Files of an earlier run that no longer belong but were changed by somebody since; they stay.
    pub left_alone: Vec<String>,
    /// Every file of the output that is ours.
    pub(super) files: Files,
}

/// Puts the files of the tree in place.
pub(super) fn put(
    workspace: &Workspace,
    made: Files,
    kept: Files,
    leftovers: Leftovers,
) -> Result<PutInPlace, WorldError> {
    let _uninterrupted = workspace::writing();
    let (output, tree) = (&workspace.output, workspace.tree());
    let plan = Plan::of(output, &workspace.folder, made, kept, leftovers)?;
    // A disk takes many files together as fast as a few one after the other.
    let synced = |file: PathBuf| at(&file, disk::sync(&file));
    let made = || {
        let files = plan.made.par_iter().map(|path| below(&tree, path));
        files.map(synced).try_reduce(|| 0, |one, other| Ok(one + other))
    };
    let list = tree.join(MANIFEST);
    let listed = || write_list(&list, &plan.files).and_then(|()| synced(list.clone()));
    let (made, listed) = rayon::join(made, listed);
    let bytes = made? + listed?;
    let alone = !plan.shared && plan.left_alone.is_empty() && workspace.is_beside() && !stands_in(output);
    match alone.then(|| at_once(output, &tree, &plan)) {
        Some(Ok(linked)) => finish(output, &tree, &plan, &linked).map_err(|error| {
            let kept = workspace.folder.join("kept");
            let _ = fs::rename(&tree, &kept);
            fault(&kept, format!("may hold a file of somebody else that was in the output: {error}"))
        })?,
        _ => one_by_one(output, &tree, &plan)?,
    }
    let bytes = bytes + plan.kept.values().map(Fingerprint::size).sum::<u64>();
    let (written, kept) = (plan.made.len() + plan.kept.len() + 1, plan.kept.len());
    Ok(PutInPlace { written, kept, bytes, left_alone: plan.left_alone, files: plan.files })
}

fn write_list(path: &Path, files: &Files) -> Result<(), WorldError> {
    at(path, fs::write(path, manifest::to_text(files)))
}

/// A shell that stands in the output would find itself in the earlier one.
fn stands_in(output: &Path) -> bool {
    std::env::current_dir().and_then(fs::canonicalize).is_ok_and(|here| here.starts_with(output))
}

type Id = Option<(u64, u64)>;

fn id(path: &Path) -> Id {
    fs::symlink_metadata(path).ok().map(|file| system::id(&file))
}

/// Lets the tree take the place of the output, with all that stays. Gives which files stayed.
fn at_once(output: &Path, tree: &Path, plan: &Plan) -> io::Result<BTreeMap<String, Id>> {
    // Once a folder: there are far more files.
    let folders: BTreeSet<&str> = plan.linked.iter().filter_map(|path| disk::above(path).last()).collect();
    folders.into_iter().try_for_each(|folder| fs::create_dir_all(below(tree, folder)))?;
    let second_name = |path: &String| {
        let second = below(tree, path);
        fs::hard_link(below(output, path), &second).map(|()| (path.clone(), id(&second)))
    };
    let linked = plan.linked.par_iter().map(second_name).collect::<io::Result<_>>()?;
    for folder in plan.folders().iter().map(String::as_str).chain([""]) {
        let (new, earlier) = (below(tree, folder), below(output, folder));
        if exists(&new) && exists(&earlier) {
            system::take_rights(&earlier, &new)?;
        }
        if exists(&earlier) && !system::is_writable(&earlier) {
            return Err(io::ErrorKind::PermissionDenied.into());
        }
        if exists(&new) {
            disk::sync_folder(&new)?;
        }
    }
    if exists(output) {
        system::swap(tree, output)?
    } else {
        fs::rename(tree, output)?
    }
    Ok(linked)
}

/// Sees to what somebody did in the earlier output until the moment at which it was taken away.
fn finish(output: &Path, old: &Path, plan: &Plan, linked: &BTreeMap<String, Id>) -> io::Result<()> {
    output.parent().map_or(Ok(()), disk::sync_folder)?;
    let folders = plan.folders();
    let entries = if exists(old) { disk::entries(old, &folders)? } else { Vec::new() };
    let is_newer = |(path, kind): &&(String, FileType)| {
        let (from, to) = (below(old, path), below(output, path));
        match linked.get(path) {
            Some(stayed) => id(&from) != *stayed && id(&to) == *stayed,
            None if plan.was_ours(path) || kind.is_dir() && folders.contains(path) => false,
            None => !exists(&to),
        }
    };
    for (path, _) in entries.par_iter().filter(is_newer).collect::<Vec<_>>() {
        let (from, to) = (below(old, path), below(output, path));
        disk::make_room(&to).and_then(|()| fs::rename(from, to))?;
    }
    // Folders of many files go side by side. What stays of them goes with the work folder.
    let at_the_top = entries.iter().filter(|(path, kind)| kind.is_dir() && !path.contains('/'));
    let at_the_top: Vec<PathBuf> = at_the_top.map(|(path, _)| below(old, path)).collect();
    at_the_top.par_iter().with_max_len(1).for_each(|folder| drop(fs::remove_dir_all(folder)));
    Ok(())
}

/// Replaces files under their names, with no manifest meanwhile.
fn one_by_one(output: &Path, tree: &Path, plan: &Plan) -> Result<(), WorldError> {
    let (begun, mut made) = (exists(&output.join(BEING_REPLACED)), Vec::new());
    make_ready(output, tree, plan, &mut made).inspect_err(|_| {
        made.iter().for_each(|folder| drop(fs::remove_dir(folder)));
        if !begun {
            let _ = fs::remove_file(output.join(BEING_REPLACED));
        }
    })?;
    replace(output, tree, plan).map_err(|fault| WorldError {
        reason: format!("{}; the output is half replaced, and the next run will see to it", fault.reason),
        ..fault
    })
}

/// All that can fail for want of room or rights.
fn make_ready(output: &Path, tree: &Path, plan: &Plan, made: &mut Vec<PathBuf>) -> Result<(), WorldError> {
    let (mut all, draft, list) =
        (plan.earlier.clone(), tree.join(BEING_REPLACED), output.join(BEING_REPLACED));
    all.extend(plan.files.clone());
    write_list(&draft, &all)?;
    at(&list, disk::sync(&draft).and_then(|_| fs::rename(&draft, &list)))?;
    for folder in changed(output, plan) {
        made.extend(at(&folder, disk::make_folder(&folder))?);
        if !system::is_writable(&folder) {
            return Err(fault(&folder, "can't be written"));
        }
        at(&folder, disk::sync_folder(&folder))?;
    }
    Ok(())
}

/// The folders in which a name changes.
fn changed(output: &Path, plan: &Plan) -> BTreeSet<PathBuf> {
    let paths = plan.made.iter().chain(&plan.removed).map(|path| below(output, path));
    paths.filter_map(|path| path.parent().map(Path::to_path_buf)).chain([output.to_path_buf()]).collect()
}

fn replace(output: &Path, tree: &Path, plan: &Plan) -> Result<(), WorldError> {
    let [list, marker] = [MANIFEST, BEING_REPLACED].map(|list| output.join(list));
    at(&list, remove(&list).and_then(|()| disk::sync_folder(output)))?;
    for path in &plan.made {
        let to = below(output, path);
        at(&to, fs::rename(below(tree, path), &to))?;
    }
    for path in plan.removed.iter().map(|path| below(output, path)) {
        at(&path, remove(&path))?;
    }
    for folder in changed(output, plan) {
        at(&folder, disk::sync_folder(&folder))?;
    }
    // Folders that are left empty no longer belong; the others stay.
    plan.folders().iter().rev().for_each(|folder| drop(fs::remove_dir(below(output, folder))));
    at(&list, fs::rename(tree.join(MANIFEST), &list).and_then(|()| disk::sync_folder(output)))?;
    at(&marker, remove(&marker))
}

fn remove(file: &Path) -> io::Result<()> {
    if exists(file) { fs::remove_file(file) } else { Ok(()) }
}

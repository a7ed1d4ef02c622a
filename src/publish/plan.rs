//! What becomes of each file of the output: compared and decided before anything is changed.

use super::cache;
use super::disk::{self, at, below, exists, fault};
use super::manifest::{self, BEING_REPLACED, Files, Fingerprint, MANIFEST};
use super::system;
use crate::source::WorldError;
use std::collections::BTreeSet;
use std::fs::FileType;
use std::path::Path;

/// Of what stands in the way.
pub(super) const NOT_OURS: &str =
    "was not written by this program and is in the way: move it, or name another output folder";

/// What becomes of files of an earlier run that this run does not write again.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Leftovers {
    /// They no longer belong and are removed.
    Removed,
    /// They stay.
    Kept,
    /// They stay, but for those below this folder, or those of this name, whatever their number and ending.
    KeptExceptIn(&'static str),
}

/// What is to be done, by paths below the output.
#[derive(Debug, Default)]
pub(super) struct Plan {
    /// All that will be ours.
    pub(super) files: Files,
    /// What was or may be ours until now.
    pub(super) earlier: Files,
    /// Made by this run.
    pub(super) made: Vec<String>,
    /// Made by an earlier run, and known to be what this one would make.
    pub(super) kept: Files,
    /// Of an earlier run, and no longer belongs.
    pub(super) removed: Vec<String>,
    /// No longer belongs, but was changed by somebody since.
    pub(super) left_alone: Vec<String>,
    /// What stays and can stand in a new folder by a second name: files of an earlier run, and plain files
    /// at the top that are hidden (.gitignore and the like).
    pub(super) linked: Vec<String>,
    /// Whether somebody else keeps anything more in the output.
    pub(super) shared: bool,
}

impl Plan {
    /// Looks at what is there.
    ///
    /// # Errors
    /// Where something that this program did not write stands where a file or folder must go.
    pub(super) fn of(
        output: &Path,
        work: &Path,
        made: Files,
        kept: Files,
        leftovers: Leftovers,
    ) -> Result<Self, WorldError> {
        let half_replaced = exists(&output.join(BEING_REPLACED)) && !exists(&output.join(MANIFEST));
        if leftovers != Leftovers::Removed && half_replaced {
            return Err(fault(
                output,
                "is half replaced, for an earlier run was stopped: make all of it first",
            ));
        }
        let (earlier, paths) = (earlier_files(output)?, made.keys().cloned().collect());
        let mut plan = Self { made: paths, kept, files: made, earlier, ..Self::default() };
        let folders = plan.folders();
        let there = if exists(output) { at(output, disk::entries(output, &folders))? } else { Vec::new() };
        for (path, kind) in there.into_iter().filter(|(path, _)| below(output, path) != work) {
            let whole = below(output, &path);
            if kind.is_dir() && folders.contains(&path) {
                if system::mount(&whole) != system::mount(output) {
                    return Err(fault(&whole, "is a disk or mount of its own: name another output folder"));
                }
            } else if folders.contains(&path) && plan.needs_folder(&path)
                || !plan.settle(path, &whole, kind, leftovers)
            {
                return Err(fault(&whole, NOT_OURS));
            }
        }
        match plan.kept.keys().find(|path| !plan.files.contains_key(*path)) {
            Some(path) => Err(fault(&below(output, path), "was taken away during the run: run again")),
            None => Ok(plan),
        }
    }

    /// The folders of all files, of this run and earlier ones.
    pub(super) fn folders(&self) -> BTreeSet<String> {
        // Text is copied once a folder: there are far more files.
        let paths = self.made.iter().chain(self.earlier.keys());
        let folders: BTreeSet<&str> = paths.flat_map(|path| disk::above(path)).collect();
        folders.into_iter().map(str::to_owned).collect()
    }

    /// Whether a file of this run goes into a folder of that path.
    fn needs_folder(&self, path: &str) -> bool {
        self.made
            .iter()
            .chain(self.kept.keys())
            .any(|made| made.strip_prefix(path).is_some_and(|rest| rest.starts_with('/')))
    }

    /// Whether a path was this program's until now.
    pub(super) fn was_ours(&self, path: &str) -> bool {
        path == MANIFEST || path == BEING_REPLACED || self.earlier.contains_key(path)
    }

    /// Decides on what is no folder of ours; says whether it can be as it is.
    fn settle(&mut self, path: String, whole: &Path, kind: FileType, leftovers: Leftovers) -> bool {
        let is =
            |print: &Fingerprint| disk::read(whole).is_some_and(|bytes| Fingerprint::of(&bytes) == *print);
        if let Some(print) = self.kept.get(&path) {
            self.files.insert(path.clone(), print.clone());
            self.linked.push(path);
            return kind.is_file();
        }
        let earlier = self.earlier.get(&path);
        if self.made.binary_search(&path).is_ok() {
            return kind.is_file() && (earlier.is_some() || is(&self.files[&path]));
        }
        match earlier {
            _ if path == MANIFEST || path == BEING_REPLACED => {}
            Some(print) if !is(print) => self.left_alone.push(path),
            Some(_) if leftovers.removes(&path) => self.removed.push(path),
            Some(print) => {
                self.files.insert(path.clone(), print.clone());
                self.linked.push(path);
            }
            None if kind.is_file() && path.starts_with('.') && !path.contains('/') => self.linked.push(path),
            None if path == cache::FOLDER && cache::is_ours(whole) => {}
            None => self.shared = true,
        }
        true
    }
}

impl Leftovers {
    fn removes(self, path: &str) -> bool {
        match self {
            Self::Removed => true,
            Self::Kept => false,
            Self::KeptExceptIn(folder) => {
                path.strip_prefix(folder).is_some_and(|rest| rest.starts_with(['/', '.', '-']))
            }
        }
    }
}

/// What the lists in the output say of earlier runs; nothing where there are none.
fn earlier_files(output: &Path) -> Result<Files, WorldError> {
    let mut earlier = Files::new();
    for list in [BEING_REPLACED, MANIFEST].map(|list| output.join(list)) {
        if exists(&list) {
            let files = disk::read(&list).and_then(|text| manifest::from_text(&text));
            earlier.extend(files.ok_or_else(|| fault(&list, NOT_OURS))?);
        }
    }
    Ok(earlier)
}

//! What the last run remembered, and what this one does.

use super::findings;
use super::identity::Identity;
use super::key::Inputs;
use super::store::{self, Output, Rest, Stored, StoredFile, StoredRun};
use crate::diagnostics::Findings;
use crate::publish::disk;
use crate::publish::manifest::{self, BEING_REPLACED, Files, Fingerprint, MANIFEST};
use crate::publish::staging::Staging;
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};

/// What pages are called; all else is cards and sheets.
const PAGE: &str = "page ";
/// What all outputs are made with.
pub(in crate::publish) const PROGRAM: &str = "the program";
/// What all texts are set and drawings are lettered with.
pub(in crate::publish) const FONTS: &str = "the fonts";
/// The layouts of pages; all else that outputs have in common is of cards and sheets. What pages take of it is among
/// the values that they are filled with.
const OF_PAGES: &str = "layouts/booklet/";

/// The outputs of the last run that can be kept, and those of this run.
#[derive(Debug)]
pub(in crate::publish) struct Memory {
    output: PathBuf,
    /// None where nothing is to be remembered.
    common: Option<Inputs>,
    earlier: Stored,
    /// When what is remembered was written.
    written: Option<Identity>,
    /// The files of the output as its manifest has them.
    listed: Files,
    /// Whether what cards, and what pages have in common is as it was.
    cards_as_before: bool,
    pages_as_before: bool,
    made: Mutex<BTreeMap<String, Output>>,
}

/// A run that came to its end, to be remembered or remembered.
#[derive(Debug)]
pub(in crate::publish) struct Whole {
    pub key: String,
    pub findings: Findings,
    pub cards: usize,
    pub written: usize,
    pub bytes: u64,
}

impl Memory {
    /// What is remembered in an output folder.
    pub fn of(output: &Path) -> Self {
        let output = disk::real(output).unwrap_or_else(|_| output.to_path_buf());
        let listed = || {
            let whole = !disk::exists(&output.join(BEING_REPLACED));
            let list = whole.then(|| disk::read(&output.join(MANIFEST))).flatten();
            list.and_then(|text| manifest::from_text(&text)).unwrap_or_default()
        };
        let (stored, listed) = rayon::join(|| store::read(&output), listed);
        let (earlier, written) = stored.unwrap_or_default();
        Self { earlier, written, listed, ..Self::empty(&output) }
    }

    /// Nothing of what may be remembered there.
    pub fn empty(output: &Path) -> Self {
        Self {
            output: output.to_path_buf(),
            common: None,
            earlier: Stored::default(),
            written: None,
            listed: Files::new(),
            cards_as_before: false,
            pages_as_before: false,
            made: Mutex::default(),
        }
    }

    /// The run that left the output as it is, where it read and was asked the same, and every file is as it left it.
    pub fn whole(&self, key: &str) -> Option<Whole> {
        let run = self.earlier.whole.as_ref().filter(|run| run.key == key)?;
        let same = self.listed.len() == self.earlier.files.len()
            && self.listed.par_iter().all(|(path, _)| self.unchanged(path).is_some());
        same.then(|| Whole {
            key: run.key.clone(),
            findings: findings::again(run.findings.clone()),
            cards: run.cards,
            written: run.written,
            bytes: run.bytes,
        })
    }

    /// From here on it is known what all outputs are made from; where that can't be told, nothing is kept or remembered.
    pub fn begin(&mut self, common: Option<Inputs>) {
        self.common = common;
        let as_before = |page| self.common.is_some() && self.changed_in_common(page).next().is_none();
        (self.cards_as_before, self.pages_as_before) = (as_before(false), as_before(true));
    }

    /// What has changed of what all pages, or all else, are made from.
    fn changed_in_common(&self, page: bool) -> impl Iterator<Item = String> {
        let of =
            move |name: &String| [PROGRAM, FONTS].contains(&&**name) || name.starts_with(OF_PAGES) == page;
        changed(&self.earlier.common, self.common.as_ref().unwrap_or(&self.earlier.common)).filter(of)
    }

    /// A text file of the last run's output, where nobody has changed it since.
    pub fn text(&self, path: &str) -> Option<String> {
        self.unchanged(path)?;
        disk::read(&disk::below(&self.output, path)).and_then(|bytes| String::from_utf8(bytes).ok())
    }

    /// Whether an output is made from the same as before, and nothing was found in it then.
    pub fn knows(&self, name: &str, inputs: &Inputs) -> bool {
        self.known(name, inputs).is_some()
    }

    fn known(&self, name: &str, inputs: &Inputs) -> Option<&Output> {
        let as_before = if name.starts_with(PAGE) { self.pages_as_before } else { self.cards_as_before };
        self.earlier.outputs.get(name).filter(|output| as_before && output.inputs == *inputs)
    }

    /// Keeps an output that is made from the same as before, and whose files are as they were; says whether it does.
    pub fn keep(&self, name: &str, inputs: &Inputs, staging: Option<&Staging>) -> bool {
        let Some(output) = self.known(name, inputs) else { return false };
        let Some(staging) = staging else { return true };
        let prints = output.files.iter().map(|path| Some((path, self.unchanged(path)?)));
        let Some(prints) = prints.collect::<Option<Vec<_>>>() else { return false };
        for (path, print) in prints {
            staging.keep(path, print.clone());
        }
        self.note(name, inputs.clone(), output.files.clone());
        true
    }

    /// Remembers an output that nothing was found in.
    pub fn note(&self, name: &str, inputs: Inputs, files: Vec<String>) {
        let mut made = self.made.lock().unwrap_or_else(PoisonError::into_inner);
        made.insert(name.to_owned(), Output { inputs, files });
    }

    /// What a file of the last run holds, where nobody has changed it since.
    fn unchanged(&self, path: &str) -> Option<&Fingerprint> {
        let StoredFile { print, identity } = self.earlier.files.get(path)?;
        if self.listed.get(path) != Some(print) {
            return None;
        }
        let file = disk::below(&self.output, path);
        let now = Identity::of(&file);
        let untouched = now.is_some()
            && now == *identity
            && now.zip(self.written).is_some_and(|(now, written)| now.is_older_than(&written));
        (untouched || disk::read(&file).is_some_and(|bytes| Fingerprint::of(&bytes) == *print))
            .then_some(print)
    }

    /// In what an output differs from the one that is remembered, by what it is called; none where it does not.
    pub fn differences(&self, name: &str, inputs: &Inputs) -> Vec<String> {
        let Some(output) = self.earlier.outputs.get(name) else {
            return vec!["it was not made before, or something was found in it".to_owned()];
        };
        let common = self.changed_in_common(name.starts_with(PAGE));
        let mut names: Vec<String> = common.chain(changed(&output.inputs, inputs)).collect();
        let touched = output.files.iter().filter(|path| self.unchanged(path).is_none());
        names.extend(touched.map(|path| format!("the file {path}, which somebody changed or took away")));
        names
    }

    /// For when all outputs are made: what of them is to be remembered. With `all`, nothing of earlier runs is.
    pub fn ended(self, all: bool) -> Ended {
        let Self { output, common, earlier, cards_as_before, pages_as_before, made, .. } = self;
        let made = made.into_inner().unwrap_or_else(PoisonError::into_inner);
        let outputs = if all || !cards_as_before || !pages_as_before {
            Outputs::Line(store::line_of(&made))
        } else {
            Outputs::With { earlier: earlier.outputs, made }
        };
        Ended { output, common, outputs }
    }
}

/// A run whose outputs are made, to be remembered once they are in place.
#[derive(Debug)]
pub(in crate::publish) struct Ended {
    output: PathBuf,
    common: Option<Inputs>,
    outputs: Outputs,
}

#[derive(Debug)]
enum Outputs {
    /// As they are written: of a large catalogue that takes long, and the disk may be waited for meanwhile.
    Line(serde_json::Result<Vec<u8>>),
    /// With those of an earlier run whose files stay.
    With { earlier: BTreeMap<String, Output>, made: BTreeMap<String, Output> },
}

impl Ended {
    /// Remembers the run for the next. Its outputs have these files.
    pub fn save(self, files: &Files, whole: Option<Whole>) {
        let Some(common) = self.common else { return };
        let outputs = || match self.outputs {
            Outputs::Line(line) => line,
            Outputs::With { earlier, mut made } => {
                let there = |output: &Output| output.files.iter().all(|path| files.contains_key(path));
                for (name, output) in earlier.into_iter().filter(|(_, output)| there(output)) {
                    made.entry(name).or_insert(output);
                }
                store::line_of(&made)
            }
        };
        let stored = |(path, print): (&String, &Fingerprint)| {
            let identity = Identity::of(&disk::below(&self.output, path));
            (path.clone(), StoredFile { print: print.clone(), identity })
        };
        // A map is built at once from what is in order.
        let files: Vec<_> = files.par_iter().map(stored).collect();
        let files = files.into_iter().collect();
        let whole = whole.map(|run| StoredRun {
            key: run.key,
            findings: findings::remembered(&run.findings),
            cards: run.cards,
            written: run.written,
            bytes: run.bytes,
        });
        // What can't be written is not remembered, and the next run makes it again.
        if let Ok(outputs) = outputs() {
            let _ = store::write(&self.output, outputs, &Rest { common, files, whole });
        }
    }
}

/// The names that stand for something else than before, or for something only then or only now.
fn changed(before: &Inputs, now: &Inputs) -> impl Iterator<Item = String> {
    let gone = before.keys().filter(|name| !now.contains_key(*name));
    let other = now.iter().filter(|(name, hash)| before.get(*name) != Some(hash)).map(|(name, _)| name);
    gone.chain(other).cloned().collect::<Vec<_>>().into_iter()
}

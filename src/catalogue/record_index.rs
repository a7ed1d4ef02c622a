//! Records of one kind by their id, and looking them up by the names that other records give.

use super::check::Check;
use super::record_kind::RecordKind;
use crate::diagnostics::KnownNames;
use crate::records::{Field, Name};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Arc, OnceLock};

/// Sound records by id, and the ids of those that are left out because they are faulty.
pub(super) struct RecordIndex<T> {
    kind: RecordKind,
    /// The sound ones.
    pub sound: BTreeMap<String, Arc<T>>,
    left_out: BTreeSet<String>,
    /// How many faulty ones have no id.
    nameless: usize,
    /// Made when the first wrong name is met, when all records are there.
    known: OnceLock<KnownNames>,
}

impl<T> RecordIndex<T> {
    pub(super) fn new(kind: RecordKind, left_out: BTreeSet<String>) -> Self {
        Self { kind, sound: BTreeMap::new(), left_out, nameless: 0, known: OnceLock::new() }
    }

    /// Puts a record there, or notes that it is left out.
    pub(super) fn put(&mut self, id: Option<&str>, record: Option<T>) {
        let Some(id) = id else {
            self.nameless += 1;
            return;
        };
        match record.filter(|_| !self.left_out.contains(id)) {
            Some(record) => {
                self.sound.insert(id.to_owned(), Arc::new(record));
            }
            None => {
                self.left_out.insert(id.to_owned());
            }
        }
    }

    /// Takes a sound record out again.
    pub(super) fn leave_out(&mut self, id: &str) {
        self.sound.remove(id);
        self.left_out.insert(id.to_owned());
    }

    /// The ids of the records that are left out, and how many more have none.
    pub(super) fn left_out(&self) -> (impl Iterator<Item = String>, usize) {
        (self.left_out.iter().cloned(), self.nameless)
    }

    /// Whether there is a record of that id, sound or left out.
    pub(super) fn knows(&self, id: &str) -> bool {
        self.sound.contains_key(id) || self.left_out.contains(id)
    }

    /// The known id that a wrong one was probably meant to be.
    pub(super) fn nearest(&self, id: &str) -> Option<&str> {
        let names = || self.sound.keys().chain(&self.left_out).map(String::as_str);
        self.known.get_or_init(|| KnownNames::new(names())).nearest(id)
    }

    /// Whether a text is several known ids with blanks between them.
    fn are_several(&self, text: &str) -> bool {
        let mut ids = text.split_whitespace();
        ids.clone().count() > 1 && ids.all(|id| self.knows(id))
    }

    /// The record that a field names. An unknown name is a fault; the name of a record that is left
    /// out is none, since that record has its own.
    pub(super) fn find(&self, name: &Field<Name>, check: &mut Check<'_>) -> Option<Arc<T>> {
        let id = name.value.0.as_str();
        if let Some(record) = self.sound.get(id) {
            return Some(record.clone());
        }
        check.miss();
        if !self.left_out.contains(id) {
            let message = format!("there is no {} `{id}`", self.kind.word());
            let other = check.kind_of(id);
            check.fault(self.kind.unknown(), name, message, |finding| match (self.nearest(id), other) {
                (_, Some(kind)) => finding.help(format!("`{id}` is {}", kind.with_article())),
                _ if self.are_several(id) => {
                    let parted = id.split_whitespace().collect::<Vec<_>>().join(", ");
                    finding.help(format!("put commas between several: [{parted}]"))
                }
                (Some(near), None) => finding.help(format!("did you mean `{near}`?")),
                (None, None) => {
                    finding.help(format!("add a {} with this id, or correct the name", self.kind.word()))
                }
            });
        }
        None
    }
}

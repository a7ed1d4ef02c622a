//! Counting what is left out of a catalogue.

use super::model::Gaps;
use super::names::{Names, file_decides};
use crate::records::Records;
use std::collections::BTreeSet;

/// What is left out of some kinds of record: its ids, and how many records have none.
#[derive(Default)]
pub(super) struct LeftOut {
    pub ids: BTreeSet<String>,
    pub nameless: usize,
}

impl LeftOut {
    /// The same with what is left out of one kind more.
    pub(super) fn with(mut self, (ids, nameless): (impl Iterator<Item = String>, usize)) -> Self {
        self.ids.extend(ids);
        self.nameless += nameless;
        self
    }
}

/// `deciding` is left out of what decides what goes into what, `other` of the other kinds.
pub(super) fn gaps(records: &Records, names: &Names, deciding: &LeftOut, other: &LeftOut) -> Gaps {
    let is_wrong = records.settings.as_ref().is_some_and(|settings| !settings.sound);
    let files =
        |asked: bool| records.lost.files.iter().filter(|file| file_decides(file) == Some(asked)).count();
    let ids: BTreeSet<&String> = deciding.ids.iter().filter(|id| names.decides(id)).collect();
    let rest = deciding.ids.union(&other.ids).filter(|id| !ids.contains(id)).count();
    Gaps {
        deciding: ids.len() + deciding.nameless + usize::from(is_wrong) + files(true),
        other: rest + other.nameless + files(false),
    }
}

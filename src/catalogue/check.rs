//! Checking one record: its faults, and whether anything that it needs is missing.

use super::model::Origin;
use super::names::Names;
use super::record_kind::RecordKind;
use crate::diagnostics::{Finding, Findings};
use crate::records::{Document, Field};
use crate::source::Place;
use std::collections::BTreeMap;

/// Gathers what is wrong with one record.
pub(super) struct Check<'a> {
    id: Option<&'a str>,
    fields: &'a BTreeMap<String, Place>,
    names: &'a Names,
    findings: &'a mut Findings,
    sound: bool,
}

impl<'a> Check<'a> {
    /// A check of a record that was read; faults found in reading count.
    pub(super) fn new<T>(document: &'a Document<T>, names: &'a Names, findings: &'a mut Findings) -> Self {
        Self { id: document.id.as_deref(), fields: &document.fields, names, findings, sound: document.sound }
    }

    /// Whether nothing is wrong so far.
    pub(super) fn is_sound(&self) -> bool {
        self.sound
    }

    /// What it needs is not there, which is told elsewhere.
    pub(super) fn miss(&mut self) {
        self.sound = false;
    }

    /// Whether the record has a field, right or wrong.
    pub(super) fn has(&self, path: &str) -> bool {
        self.fields.contains_key(path)
    }

    /// The kind of the record with an id.
    pub(super) fn kind_of(&self, id: &str) -> Option<RecordKind> {
        self.names.kind_of(id)
    }

    /// Whether the record with an id stands in a file that can't be read.
    pub(super) fn is_salvaged(&self, id: &str) -> bool {
        self.names.kind_of(id).is_none() && self.names.has_record(id)
    }

    /// A fault of a field.
    pub(super) fn fault<T>(
        &mut self,
        code: &'static str,
        field: &Field<T>,
        message: impl Into<String>,
        more: impl FnOnce(Finding) -> Finding,
    ) {
        self.fault_at(code, &field.path, field.place.clone(), message, more);
    }

    /// A fault of the field with this path, at a place.
    pub(super) fn fault_at(
        &mut self,
        code: &'static str,
        path: &str,
        place: Place,
        message: impl Into<String>,
        more: impl FnOnce(Finding) -> Finding,
    ) {
        self.sound = false;
        let mut finding = Finding::error(code, place, message).field(path);
        finding.record = self.id.map(ToOwned::to_owned);
        self.findings.push(more(finding));
    }
}

/// The origin of a record that was read.
pub(super) fn origin<T>(document: &Document<T>) -> Origin {
    Origin {
        place: document.place.clone(),
        fields: document.fields.clone(),
        numbers: document.numbers.clone(),
    }
}

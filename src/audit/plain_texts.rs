//! Texts that name no values: lines before work, cautions, and what is tightened. Cards print them as they are.

use crate::catalogue::{Catalogue, Conductor, Fitting};
use crate::diagnostics::{Finding, Place, Severity};
use std::collections::BTreeSet;

/// A text that names no values.
pub(super) struct PlainText<'a> {
    /// Its words.
    pub(super) text: &'a str,
    /// Whose cards print it.
    pub(super) whose: Whose<'a>,
    record: &'a str,
    field: String,
    place: Place,
}

/// Whose cards print a text.
#[derive(Clone, Copy)]
pub(super) enum Whose<'a> {
    /// Every fitting's.
    All,
    /// Those of a conductor and its fittings.
    Conductor(&'a Conductor),
    /// A fitting's.
    Fitting(&'a Fitting),
}

/// The texts of a catalogue that name no values; none that is empty.
pub(super) fn plain_texts(catalogue: &Catalogue) -> Vec<PlainText<'_>> {
    let mut all = of_settings(catalogue);
    all.extend(catalogue.conductors.values().map(|conductor| caution(conductor)));
    all.extend(items(catalogue));
    all.retain(|text| !text.text.is_empty());
    all
}

fn of_settings(catalogue: &Catalogue) -> Vec<PlainText<'_>> {
    let settings = &catalogue.settings;
    let lines = settings.before_work.iter().enumerate();
    let lines = lines.map(|(nth, line)| (format!("before_work.{nth}"), line));
    let texts = lines.chain([("caution".to_owned(), &settings.caution)]);
    let plain = texts.map(|(field, text)| {
        let place = settings.origin.of(&field);
        PlainText { text, whose: Whose::All, record: "", field, place }
    });
    plain.collect()
}

/// A conductor's own caution, else that of its material, which its cards print then.
fn caution(conductor: &Conductor) -> PlainText<'_> {
    let (text, field) = match conductor.caution.as_str() {
        "" => (conductor.material.caution.as_str(), "material"),
        own => (own, "caution"),
    };
    PlainText {
        text,
        whose: Whose::Conductor(conductor),
        record: &conductor.id,
        field: field.to_owned(),
        place: conductor.origin.of(field),
    }
}

/// What is tightened, once where several fittings take it from their procedure.
fn items(catalogue: &Catalogue) -> Vec<PlainText<'_>> {
    let mut seen = BTreeSet::new();
    let mut texts = Vec::new();
    for fitting in catalogue.fittings.values() {
        for (nth, line) in fitting.tightening.iter().enumerate() {
            let field = format!("tightening.{nth}.item");
            let place = fitting.place_of(&field);
            if seen.insert((place.file.path.clone(), place.line, place.column)) {
                let (text, whose) = (line.item.as_str(), Whose::Fitting(fitting));
                texts.push(PlainText { text, whose, record: &fitting.number, field, place });
            }
        }
    }
    texts
}

impl PlainText<'_> {
    /// A finding on it.
    pub(super) fn finding(
        &self,
        severity: Severity,
        code: &'static str,
        message: impl Into<String>,
    ) -> Finding {
        let finding = match severity {
            Severity::Error => Finding::error(code, self.place.clone(), message),
            Severity::Warning => Finding::warning(code, self.place.clone(), message),
            Severity::Note => Finding::note(code, self.place.clone(), message),
        };
        let finding = finding.field(&self.field);
        if self.record.is_empty() { finding } else { finding.record(self.record) }
    }
}

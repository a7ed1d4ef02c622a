//! The texts that are about a fitting: those of its card, and its note.

use super::inspected::on_wording;
use super::prose_of_note::Prose;
use crate::catalogue::{Catalogue, Fitting, Note, NoteAbout, PieceKind, Wording, pieces};
use crate::diagnostics::{Finding, Place, Severity};
use std::collections::BTreeMap;
use std::sync::OnceLock;

/// A text about a fitting.
pub(super) struct Text<'a> {
    fitting: &'a Fitting,
    from: From<'a>,
    /// Of a note, read when it is first asked for.
    prose: OnceLock<Prose>,
}

enum From<'a> {
    Card(&'a Wording),
    Note(&'a Note),
}

/// The notes about records, by the record's id or number.
pub(super) type NotesOfRecords<'a> = BTreeMap<&'a str, Vec<&'a Note>>;

/// The notes of a catalogue by what they are about.
pub(super) fn notes_of_records(catalogue: &Catalogue) -> NotesOfRecords<'_> {
    let mut notes = NotesOfRecords::new();
    for note in &catalogue.notes {
        if let NoteAbout::Record(number) = &note.about {
            notes.entry(number).or_default().push(note);
        }
    }
    notes
}

/// The texts about a fitting, those of its card first.
pub(super) fn texts<'a>(fitting: &'a Fitting, notes: &NotesOfRecords<'a>) -> Vec<Text<'a>> {
    let own = notes.get(fitting.number.as_str()).into_iter().flatten().copied().map(From::Note);
    let all = fitting.wordings().map(From::Card).chain(own);
    all.map(|from| Text { fitting, from, prose: OnceLock::new() }).collect()
}

impl<'a> Text<'a> {
    /// What stands between the values that it names, with how many letters stand before.
    pub(super) fn stretches(&self) -> impl Iterator<Item = (usize, &'a str)> {
        pieces(self.whole()).into_iter().filter_map(|piece| match piece.kind {
            PieceKind::Words(words) => Some((piece.at, words)),
            PieceKind::Value(_) | PieceKind::Unclosed(_) => None,
        })
    }

    /// The whole text.
    pub(super) fn whole(&self) -> &'a str {
        match self.from {
            From::Card(wording) => &wording.text,
            From::Note(note) => &note.markdown,
        }
    }

    /// Whether it says what somebody does with the fitting, not what makes it unfit or what is told about it.
    pub(super) fn is_instruction(&self) -> bool {
        let is_one =
            |field: &str| ["steps", "witness", "if_wrong"].iter().any(|start| field.starts_with(start));
        matches!(self.from, From::Card(wording) if is_one(&wording.field))
    }

    /// A note may tell of the wrong parts that go into the body: that is what it is for.
    pub(super) fn tells_of_others(&self) -> bool {
        matches!(self.from, From::Note(_))
    }

    /// Whether a note in English tells of the wrong part at a letter, and does not tell anybody to take it.
    pub(super) fn sets_apart(&self, letter: usize) -> bool {
        self.prose.get_or_init(|| Prose::of(self.whole())).sets_apart(letter)
    }

    /// A finding at a letter.
    pub(super) fn finding(
        &self,
        severity: Severity,
        code: &'static str,
        at: usize,
        message: &str,
    ) -> Finding {
        match self.from {
            From::Card(wording) => on_wording(severity, code, self.fitting, wording, at, message.to_owned()),
            From::Note(note) => {
                let finding = match severity {
                    Severity::Error => Finding::error(code, in_note(note, at), message),
                    Severity::Warning => Finding::warning(code, in_note(note, at), message),
                    Severity::Note => Finding::note(code, in_note(note, at), message),
                };
                finding.record(&self.fitting.number)
            }
        }
    }
}

/// A letter of a note.
pub(super) fn in_note(note: &Note, at: usize) -> Place {
    let before: String = note.markdown.chars().take(at).collect();
    let count = |value: usize| u32::try_from(value).unwrap_or(u32::MAX);
    let column = before.chars().rev().take_while(|letter| *letter != '\n').count() + 1;
    Place::at(note.place.file.clone(), count(before.matches('\n').count() + 1), count(column))
}

//! What is wrong with the notes of a whole catalogue.

use super::address::{self, Form};
use super::html::to_html;
use super::index::Notes;
use super::letters;
use crate::catalogue::{Catalogue, Note};
use crate::diagnostics::{Finding, Findings};
use std::collections::BTreeMap;

/// What is wrong with the notes of a whole catalogue: all that [`to_html`](super::to_html) finds, characters
/// that can't be seen (`bad-text`), and notes that would take the place of others (`note-page-taken`).
#[must_use]
pub fn check(catalogue: &Catalogue) -> Findings {
    let notes = Notes::new(catalogue);
    let mut findings = Findings::new();
    for note in &catalogue.notes {
        findings.extend(letters::hidden(note));
        findings.extend(to_html(note, &notes, Form::Folder).1);
    }
    findings.extend(taken(catalogue));
    findings
}

/// Notes whose page another one has already. Many file systems do not tell capitals from small letters.
fn taken(catalogue: &Catalogue) -> Vec<Finding> {
    let mut first: BTreeMap<String, &Note> = BTreeMap::new();
    let mut found = Vec::new();
    for note in &catalogue.notes {
        let Some(page) = address::of_note(catalogue, &note.about) else { continue };
        let page = Form::Folder.link(&page).to_lowercase();
        match first.get(&page) {
            Some(other) => found.push(taken_by(note, other)),
            None => drop(first.insert(page, note)),
        }
    }
    found
}

fn taken_by(note: &Note, other: &Note) -> Finding {
    let path = &other.place.file.path;
    Finding::error(
        "note-page-taken",
        note.place.clone(),
        format!("this note would have the same page as `{path}`"),
    )
    .help("rename one of them: capital letters, spaces and signs make no difference in the name of a page")
    .related(other.place.clone(), "this note has the same page")
}

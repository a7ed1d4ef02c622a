//! What is wrong with the notes of a whole catalogue.

use super::address::Form;
use super::html::to_html;
use super::index::Notes;
use crate::catalogue::Catalogue;
use crate::diagnostics::Findings;

/// All that [`to_html`](super::to_html) finds in them.
#[must_use]
pub fn check(catalogue: &Catalogue) -> Findings {
    let notes = Notes::new(catalogue);
    let mut findings = Findings::new();
    for note in &catalogue.notes {
        findings.extend(to_html(note, &notes, Form::Folder).1);
    }
    findings
}

//! One note as HTML: raw HTML is text, links stay inside the booklet, nothing is fetched.

use super::address::Form;
use super::headings::Heading;
use super::index::Notes;
use super::parse::parse;
use super::tables::lost_cells;
use super::values;
use super::writer::Writer;
use crate::catalogue::Note;
use crate::diagnostics::Findings;
use pulldown_cmark::{Event, Tag};

/// A note ready to be put on a page.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Html {
    /// The heading that a chapter opens with; it is left out of `body`, since it is the page's own.
    pub title: Option<String>,
    /// Safe HTML: nothing in it runs, and nothing in it is fetched.
    pub body: String,
    /// The headings in `body`, in order.
    pub headings: Vec<Heading>,
    /// The words without markup, for searching.
    pub text: String,
}

/// Turns a note into HTML for a form of the booklet, and gathers what is wrong with its links and pictures.
///
/// Links name a record by its id or number (`[the cone](ST-4103)` or `[[ST-4103]]`) or a chapter by
/// its file (`[first](chapters/01-before.md)`), with a heading where wanted (`ST-4103#care`).
/// Addresses of the world outside are printed beside the link's text. Headings of a chapter start at level
/// 2, those of a record's note at level 3.
///
/// The note of a fitting may name its values in braces; no other note may name any.
///
/// Findings: `unknown-value`, `value-absent`, `note-link-unknown`, `note-heading-unknown`, `note-path-outside`,
/// `note-link-refused`, `note-image`, `note-cell-lost`, `bad-text` of a character that is hidden in a name such as `&lrm;` (errors),
/// `note-raw-html` (a note).
#[must_use]
pub fn to_html(note: &Note, notes: &Notes<'_>, form: Form) -> (Html, Findings) {
    let values = notes.values(note);
    let parsed = parse(note, values.as_ref());
    let mut writer = Writer::new(note, notes, form);
    let faults = parsed.faults.iter().filter(|_| !values::is_moot(note, notes.catalogue));
    faults.for_each(|fault| writer.find(fault.finding(note, values.as_ref())));
    lost_cells(&parsed.events, &note.markdown).into_iter().for_each(|(at, cell)| writer.lose_cell(at, cell));
    let mut upcoming = parsed.headings.iter();
    for (event, range) in parsed.events {
        match event {
            Event::Start(Tag::Heading { .. }) => writer.open_heading(upcoming.next()),
            event => writer.take(event, range),
        }
    }
    let mut body = String::new();
    pulldown_cmark::html::push_html(&mut body, writer.out.into_iter());
    let text = writer.text.trim().to_owned();
    (Html { title: parsed.title, body, headings: parsed.headings, text }, writer.findings)
}

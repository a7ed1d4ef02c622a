//! One note as HTML: raw HTML is text, links stay inside the booklet, nothing is fetched.

use super::address::chapter_of;
use super::headings::{self, Heading};
use super::markdown::events;
use super::writer::Writer;
use crate::catalogue::{Catalogue, Note};
use crate::diagnostics::Findings;
use pulldown_cmark::{Event, HeadingLevel, Tag, TagEnd};
use std::ops::Range;

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

/// Turns a note into HTML, and gathers what is wrong with its links and pictures.
///
/// Links name a record by its id or number (`[the cone](ST-4103)` or `[[ST-4103]]`) or a chapter by
/// its file (`[first](chapters/01-before.md)`), with a heading where wanted (`ST-4103#care`).
/// Addresses of the world outside are printed beside the link's text. Headings of a chapter start at level
/// 2, those of a record's note at level 3.
///
/// Findings: `note-link-unknown`, `note-heading-unknown`, `note-path-outside`, `note-link-refused`,
/// `note-image` (errors), `note-raw-html` (a note).
#[must_use]
pub fn to_html(note: &Note, catalogue: &Catalogue) -> (Html, Findings) {
    let mut events = events(note);
    let title = take_title(note, &mut events);
    let base = if title.is_some() || chapter_of(note).is_some() { 2 } else { 3 };
    let headings = headings::of(&events, base);
    let mut writer = Writer::new(note, catalogue);
    let mut upcoming = headings.iter();
    for (event, range) in events {
        match event {
            Event::Start(Tag::Heading { .. }) => writer.open_heading(upcoming.next()),
            event => writer.take(event, range),
        }
    }
    let mut body = String::new();
    pulldown_cmark::html::push_html(&mut body, writer.out.into_iter());
    (Html { title, body, headings, text: writer.text.trim().to_owned() }, writer.findings)
}

/// What is wrong with the notes of a whole catalogue.
#[must_use]
pub fn check(catalogue: &Catalogue) -> Findings {
    let mut findings = Findings::new();
    for note in &catalogue.notes {
        findings.extend(to_html(note, catalogue).1);
    }
    findings
}

/// Takes the heading off a chapter that opens with one.
fn take_title(note: &Note, events: &mut Vec<(Event<'_>, Range<usize>)>) -> Option<String> {
    chapter_of(note)?;
    let Some((Event::Start(Tag::Heading { level: HeadingLevel::H1, .. }), _)) = events.first() else {
        return None;
    };
    let title = headings::text_of(events);
    let end = events.iter().position(|(event, _)| matches!(event, Event::End(TagEnd::Heading(_))))?;
    events.drain(..=end);
    Some(title)
}

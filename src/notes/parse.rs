//! A note as the Markdown parser reads it: its title, its events, its headings.

use super::headings::{self, Heading};
use super::values::{self, Events, ValueFault};
use crate::catalogue::{Note, NoteAbout};
use crate::facts::Values;
use pulldown_cmark::{Event, HeadingLevel, Options, Parser, Tag, TagEnd};

/// A note that has been read.
pub(super) struct Parsed<'a> {
    /// The heading that a chapter opens with; it is none of the others.
    pub title: Option<String>,
    /// What the parser reads, with where it reads it.
    pub events: Events<'a>,
    /// The headings among the events, in order.
    pub headings: Vec<Heading>,
    /// What is wrong with the values that it names.
    pub faults: Vec<ValueFault>,
}

/// Reads a note, and puts in the values of the fitting that it is about. Headings of a chapter start at level 2, those of a record's note at level 3.
pub(super) fn parse<'a>(note: &'a Note, values: Option<&Values>) -> Parsed<'a> {
    let options = Options::ENABLE_TABLES | Options::ENABLE_WIKILINKS;
    let mut events: Vec<_> = Parser::new_ext(&note.markdown, options).into_offset_iter().collect();
    let faults = values::put_in(&mut events, &note.markdown, values);
    let (title, base) = match note.about {
        NoteAbout::Chapter(_) => (take_title(&mut events), 2),
        NoteAbout::Record(_) => (None, 3),
    };
    let headings = headings::of(&events, base);
    Parsed { title, events, headings, faults }
}

/// Takes off the heading of the first level that the events open with.
fn take_title(events: &mut Events<'_>) -> Option<String> {
    let Some((Event::Start(Tag::Heading { level: HeadingLevel::H1, .. }), _)) = events.first() else {
        return None;
    };
    let title = headings::text_of(events);
    let end = events.iter().position(|(event, _)| matches!(event, Event::End(TagEnd::Heading(_))))?;
    events.drain(..=end);
    Some(title)
}

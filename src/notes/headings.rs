//! Headings of a note: their anchors, and levels that follow on from the page's own.

use super::address::slug;
use pulldown_cmark::{Event, HeadingLevel, Tag, TagEnd};
use std::collections::BTreeSet;
use std::ops::Range;

/// A heading of a note as it stands on its page.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Heading {
    /// Level on the page, 2 to 6.
    pub level: u8,
    /// Its anchor, unique in the note.
    pub id: String,
    /// Its text without markup.
    pub text: String,
}

/// All headings in order: the first takes level `base`, and none skips a level.
pub(super) fn of(events: &[(Event<'_>, Range<usize>)], base: u8) -> Vec<Heading> {
    let mut headings = Vec::new();
    let mut open: Vec<HeadingLevel> = Vec::new();
    let mut taken = BTreeSet::new();
    for (index, (event, _)) in events.iter().enumerate() {
        let Event::Start(Tag::Heading { level, .. }) = event else { continue };
        open.retain(|outer| outer < level);
        let depth = u8::try_from(open.len()).unwrap_or(u8::MAX);
        open.push(*level);
        let text = text_of(&events[index..]);
        let id = free_id(&text, &mut taken);
        headings.push(Heading { level: base.saturating_add(depth).min(6), id, text });
    }
    headings
}

/// The text of the heading that `events` starts with.
pub(super) fn text_of(events: &[(Event<'_>, Range<usize>)]) -> String {
    let mut text = String::new();
    for (event, _) in events {
        match event {
            Event::Text(piece) | Event::Code(piece) | Event::InlineHtml(piece) => text.push_str(piece),
            Event::SoftBreak | Event::HardBreak => text.push(' '),
            Event::End(TagEnd::Heading(_)) => break,
            _ => {}
        }
    }
    text.trim().to_owned()
}

/// An anchor that no heading before it has; `note-` keeps it apart from the page's own.
fn free_id(text: &str, taken: &mut BTreeSet<String>) -> String {
    let slug = slug(text);
    let first = format!("note-{}", if slug.is_empty() { "section" } else { &slug });
    let mut id = first.clone();
    let mut number = 2;
    while !taken.insert(id.clone()) {
        id = format!("{first}-{number}");
        number += 1;
    }
    id
}

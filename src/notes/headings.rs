//! Headings of a note: their anchors, and levels that follow on from the page's own.

use super::address::slug;
use pulldown_cmark::{Event, HeadingLevel, Tag, TagEnd};
use std::collections::{BTreeMap, BTreeSet};
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
    let mut anchors = Anchors::default();
    for (index, (event, _)) in events.iter().enumerate() {
        let Event::Start(Tag::Heading { level, .. }) = event else { continue };
        open.retain(|outer| outer < level);
        let depth = u8::try_from(open.len()).unwrap_or(u8::MAX);
        open.push(*level);
        let text = text_of(&events[index..]);
        let id = anchors.free(&text);
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

/// The anchors of the headings so far.
#[derive(Default)]
struct Anchors {
    taken: BTreeSet<String>,
    /// The number that the next heading of the same words tries first, so that none is tried twice.
    next: BTreeMap<String, u32>,
}

impl Anchors {
    /// An anchor that no heading before it has; `note-` keeps it apart from the page's own.
    fn free(&mut self, text: &str) -> String {
        let slug = slug(text);
        let first = format!("note-{}", if slug.is_empty() { "section" } else { &slug });
        if self.taken.insert(first.clone()) {
            return first;
        }
        let number = self.next.entry(first.clone()).or_insert(2);
        loop {
            let id = format!("{first}-{number}");
            *number += 1;
            if self.taken.insert(id.clone()) {
                return id;
            }
        }
    }
}

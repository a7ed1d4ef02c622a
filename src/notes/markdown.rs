//! A note as the Markdown parser reads it.

use crate::catalogue::Note;
use pulldown_cmark::{Event, Options, Parser};
use std::ops::Range;

/// What the parser reads, with where it reads it.
pub(super) fn events(note: &Note) -> Vec<(Event<'_>, Range<usize>)> {
    let options = Options::ENABLE_TABLES | Options::ENABLE_WIKILINKS;
    Parser::new_ext(&note.markdown, options).into_offset_iter().collect()
}

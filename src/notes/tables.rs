//! Cells of a table that no column holds: Markdown leaves them out without a word.

use super::values::Events;
use pulldown_cmark::{Event, Tag, TagEnd};

/// The cells that are left out of a note's tables, each with the offset where it starts.
pub(super) fn lost_cells<'a>(events: &Events<'_>, markdown: &'a str) -> Vec<(usize, &'a str)> {
    let mut found = Vec::new();
    let mut last_end = 0;
    for (event, range) in events {
        match event {
            Event::Start(Tag::TableCell) => last_end = range.end,
            Event::End(TagEnd::TableHead | TagEnd::TableRow) => {
                found.extend(behind(markdown, last_end, range.end))
            }
            _ => {}
        }
    }
    found
}

/// What stands between the end of the last cell and the end of the row, but for the bars.
fn behind(markdown: &str, from: usize, to: usize) -> Option<(usize, &str)> {
    let rest = markdown.get(from..to)?;
    let lost = rest.trim_start_matches(is_between);
    let at = to - lost.len();
    let lost = lost.trim_end_matches(is_between);
    (!lost.is_empty()).then_some((at, lost))
}

fn is_between(letter: char) -> bool {
    letter == '|' || letter.is_whitespace()
}

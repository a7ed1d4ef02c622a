//! Characters that nobody sees, which notes hold no more than records do.

use crate::catalogue::Note;
use crate::diagnostics::{Finding, is_hidden};
use crate::source::Place;

/// The hidden characters of a note, the first of each line (`bad-text`).
pub(super) fn hidden(note: &Note) -> Vec<Finding> {
    let count = |value: usize| u32::try_from(value).unwrap_or(u32::MAX);
    let lines = note.markdown.split('\n').enumerate();
    let found = lines.filter_map(|(line, text)| {
        let (column, letter) = text.chars().enumerate().find(|(_, letter)| is_refused(*letter))?;
        let place = Place::at(note.place.file.clone(), count(line + 1), count(column + 1));
        Some(refused(letter, place).help("delete the line and type it again: it may have been copied"))
    });
    found.collect()
}

/// The hidden character that a piece of a note comes to, though none stands in its source: where it is
/// written as `&#x202e;` or `&lrm;`.
pub(super) fn hidden_by_name(came_to: &str, source: &str, place: &dyn Fn() -> Place) -> Option<Finding> {
    let letter = came_to.chars().find(|letter| is_refused(*letter))?;
    if source.contains(is_refused) {
        return None;
    }
    Some(refused(letter, place()).help("leave it out: it can't be seen, or changes how the text is read"))
}

fn is_refused(letter: char) -> bool {
    is_hidden(letter) && !matches!(letter, '\n' | '\r' | '\t')
}

fn refused(letter: char, place: Place) -> Finding {
    Finding::error("bad-text", place, "this line has a character that can't be seen")
        .found(format!("U+{:04X}", u32::from(letter)))
}

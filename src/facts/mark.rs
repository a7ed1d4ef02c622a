//! The facts of a mark.

use super::{MarkFacts, words};
use crate::catalogue::Mark;

/// A mark in words.
#[must_use]
pub fn facts(mark: &Mark) -> MarkFacts {
    MarkFacts {
        code: mark.colour.letters().to_owned(),
        colour: mark.colour.word().to_owned(),
        text: mark.text.clone(),
        notches: mark.notches,
        notches_words: words::notches(mark.notches),
    }
}

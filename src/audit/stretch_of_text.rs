//! A stretch of a text about a fitting that names no value, and what it can say otherwise than the record.

use super::fitting_texts::Text;
use super::known_names::Known;
use super::words_of_text::Word;
use crate::catalogue::Fitting;
use crate::diagnostics::{Place, Severity};

/// A stretch of a text that names no value.
pub(super) struct Stretch<'a> {
    /// The fitting that it is about.
    pub(super) fitting: &'a Fitting,
    /// What it may say.
    pub(super) known: &'a Known,
    /// The text that it is of.
    pub(super) text: &'a Text<'a>,
    /// Whether its words are English.
    pub(super) is_english: bool,
    /// Letters of the text before it.
    pub(super) at: usize,
    /// Its letters.
    pub(super) letters: &'a str,
    /// Its words.
    pub(super) words: Vec<Word<'a>>,
}

/// What a text says otherwise than the record.
pub(super) struct Contradiction {
    /// How bad it is.
    pub(super) severity: Severity,
    /// Letters of the stretch before it.
    pub(super) at: usize,
    /// What is wrong.
    pub(super) message: String,
    /// As written.
    pub(super) found: String,
    /// Where the record says otherwise.
    pub(super) place: Place,
    /// What stands there.
    pub(super) is: &'static str,
    /// Whether it is the stamp or mark of a wrong part.
    pub(super) is_of_wrong_part: bool,
    /// The name of the value that the text could name; empty where there is none.
    pub(super) value: &'static str,
}

//! The numbers of all parts, to find those that texts name.

use super::words_of_text::{Word, spells_in_any_case, words};
use crate::catalogue::{Catalogue, Part};
use std::collections::{HashMap, HashSet};
use std::sync::Arc;

/// The parts of a catalogue by the first word of their numbers, in small letters.
pub(super) struct KnownParts<'a> {
    parts: HashMap<String, Vec<&'a Arc<Part>>>,
    /// Ids and numbers of all records that texts may name, in small letters.
    ids: HashSet<String>,
}

/// The parts of a catalogue. A number of figures or letters alone stands in any text as something else.
pub(super) fn known_parts(catalogue: &Catalogue) -> KnownParts<'_> {
    let mut parts = HashMap::<String, Vec<&Arc<Part>>>::new();
    for part in catalogue.parts.values() {
        let has = |is_one: fn(char) -> bool| part.number.contains(is_one);
        let first = words(&part.number).first().map(|word| word.text.to_lowercase());
        if let Some(first) = first.filter(|_| has(char::is_alphabetic) && has(char::is_numeric)) {
            parts.entry(first).or_default().push(part);
        }
    }
    let ids = catalogue.parts.keys().chain(catalogue.fittings.keys()).chain(catalogue.conductors.keys());
    let ids = ids.chain(catalogue.notices.keys()).map(|id| id.to_lowercase()).collect();
    KnownParts { parts, ids }
}

impl<'a> KnownParts<'a> {
    /// The part whose number stands at a word, and how many words that has.
    pub(super) fn at(&self, words: &[Word<'_>], index: usize) -> Option<(usize, &'a Arc<Part>)> {
        let parts = self.parts.get(&words[index].text.to_lowercase())?;
        let spelled =
            parts.iter().filter_map(|part| Some((spells_in_any_case(words, index, &part.number)?, *part)));
        spelled.max_by_key(|(count, _)| *count)
    }

    /// Whether a word is the id or number of a record.
    pub(super) fn is_id(&self, word: &str) -> bool {
        self.ids.contains(&word.to_lowercase())
    }
}

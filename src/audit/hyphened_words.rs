//! The words of a text with those apart that hyphens join: "RY-cone".

use super::words_of_text::{Word, bare};
use std::ops::Range;

const HYPHENS: [char; 2] = ['-', '‑'];

/// Words with those apart that hyphens join.
pub(super) struct Parted<'a> {
    words: Vec<Word<'a>>,
    /// Of each, which of the words before it is a piece of.
    of: Vec<usize>,
}

impl<'a> Parted<'a> {
    /// `is_whole` says which words stay as they are.
    pub(super) fn of(whole: &[Word<'a>], is_whole: impl Fn(&str) -> bool) -> Self {
        let mut parted = Self { words: Vec::with_capacity(whole.len()), of: Vec::with_capacity(whole.len()) };
        for (index, word) in whole.iter().enumerate() {
            let pieces = if word.text.contains(HYPHENS) { pieces(word, &is_whole) } else { vec![*word] };
            parted.of.extend(pieces.iter().map(|_| index));
            parted.words.extend(pieces);
        }
        parted
    }

    /// All of them.
    pub(super) fn words(&self) -> &[Word<'a>] {
        &self.words
    }

    /// Whether any word was parted.
    pub(super) fn is_any(&self) -> bool {
        self.of.last().is_some_and(|last| last + 1 < self.words.len())
    }

    /// Those that a word was parted into.
    pub(super) fn pieces_of(&self, index: usize) -> Range<usize> {
        let from = |index: usize| self.of.partition_point(|of| *of < index);
        from(index)..from(index + 1)
    }

    /// The word that one of them is a piece of.
    pub(super) fn word_of(&self, piece: usize) -> usize {
        self.of[piece]
    }
}

/// The pieces of a word: as much of it as is whole, else what stands before the next hyphen, and so on.
fn pieces<'a>(word: &Word<'a>, is_whole: impl Fn(&str) -> bool) -> Vec<Word<'a>> {
    let (mut pieces, mut rest, mut at) = (Vec::new(), word.text, word.at);
    while !rest.is_empty() {
        let ends = rest.match_indices(HYPHENS).map(|(end, _)| end).chain([rest.len()]);
        let ends: Vec<usize> = ends.collect();
        let whole = ends.iter().rev().find(|end| is_whole(&rest[..**end]));
        let piece = &rest[..*whole.unwrap_or(&ends[0])];
        let (skipped, text) = bare(piece);
        if text.chars().any(char::is_alphanumeric) {
            pieces.push(Word { at: at + skipped, text, ends: true, tells: false, attached: at > word.at });
        }
        at += piece.chars().count() + 1;
        rest = rest[piece.len()..].strip_prefix(HYPHENS).unwrap_or_default();
    }
    if let Some(last) = pieces.last_mut() {
        (last.ends, last.tells) = (word.ends, word.tells);
    }
    pieces
}

#[cfg(test)]
mod tests {
    use super::super::words_of_text::words;
    use super::*;

    #[test]
    fn a_hyphen_ends_a_word() {
        let text = words("Seat the (RY)-cone, ST-4103.");
        let parted = Parted::of(&text, |word| word == "ST-4103");
        let found: Vec<(usize, &str)> = parted.words().iter().map(|word| (word.at, word.text)).collect();
        assert_eq!(found, [(0, "Seat"), (5, "the"), (10, "RY"), (14, "cone"), (20, "ST-4103")]);
        assert_eq!((parted.pieces_of(2), parted.word_of(4)), (2..4, 3));
        assert!(parted.words()[2].ends && parted.words()[3].ends && parted.is_any());
        assert!(!Parted::of(&words("Take ST-4103."), |word| word == "ST-4103").is_any());
    }

    #[test]
    fn a_name_with_hyphens_stays_whole_before_another_hyphen() {
        let text = words("the ST-4103-cone");
        let parted = Parted::of(&text, |word| word == "ST-4103");
        let found: Vec<&str> = parted.words().iter().map(|word| word.text).collect();
        assert_eq!(found, ["the", "ST-4103", "cone"]);
    }
}

//! Stamps, marks and numbers of parts that a text names and its fitting does not have.

use super::clauses_of_text::sentence;
use super::hyphened_words::Parted;
use super::known_names::Other;
use super::known_parts::KnownParts;
use super::stretch_of_text::{Contradiction, Stretch};
use super::words_of_text::{Word, are_all_of, named, spells, spells_in_any_case};
use crate::diagnostics::{Place, Severity};

/// Words behind which a mark may stand in small letters.
const BEFORE_MARK: [&str; 6] = ["mark", "read", "reads", "cone", "wedge", "stamp"];
/// Words that stand there as themselves, though a mark may have the same letters.
const PLAIN: [&str; 32] = [
    "a", "an", "and", "as", "at", "be", "by", "do", "for", "go", "has", "he", "if", "in", "is", "it", "me",
    "my", "no", "not", "of", "off", "on", "or", "out", "so", "the", "to", "too", "up", "us", "we",
];
/// Words that say that a part does not belong there.
const DENYING: [&str; 4] = ["not", "never", "instead", "don't"];

/// What a stretch names that the fitting does not have.
pub(super) fn names(stretch: &Stretch<'_>, parts: &KnownParts<'_>) -> Vec<Contradiction> {
    let parted = Parted::of(&stretch.words, |word| parts.is_id(word) || stretch.known.has_word(word));
    let (mut found, mut index) = (Vec::new(), 0);
    while index < stretch.words.len() {
        let settled = name_at(stretch, &parted, index, parts);
        index += settled.count;
        found.extend(settled.wrong);
    }
    found
}

/// What comes of the words at an index.
struct Settled {
    /// How many of them that settles.
    count: usize,
    /// What is wrong with them.
    wrong: Option<Contradiction>,
}

fn name_at(stretch: &Stretch<'_>, parted: &Parted<'_>, index: usize, parts: &KnownParts<'_>) -> Settled {
    if let Some((name, count)) = named(&stretch.words, index) {
        return Settled { count: 1 + count, wrong: said_to_be(stretch, index, &name, count) };
    }
    let own = Settled { count: longest_own(stretch, &stretch.words, index, spells).max(1), wrong: None };
    let is_note = stretch.text.tells_of_others();
    if is_note && (!is_called(stretch, index) || is_told(stretch, index)) {
        return own;
    }
    if let Some((count, other)) = other_at(stretch, index).or_else(|| before_hyphen(stretch, parted, index)) {
        return Settled { count, wrong: Some(of_another(stretch, index, other)) };
    }
    if is_note {
        return own;
    }
    part_at(stretch, index, parts).unwrap_or(own)
}

/// Whether "stamp" or "mark" stands before a word and belongs to it.
fn is_called(stretch: &Stretch<'_>, index: usize) -> bool {
    let before = index.checked_sub(1).map(|before| &stretch.words[before]);
    let is_head = |text: &str| ["stamp", "mark"].contains(&text.to_lowercase().as_str());
    before.is_some_and(|word| (!word.ends || word.tells) && is_head(word.text))
}

/// Whether a note tells of another part at a word, and tells nobody to take it: that is known of English alone.
fn is_told(stretch: &Stretch<'_>, index: usize) -> bool {
    let letter = stretch.at + stretch.words[index].at;
    stretch.text.tells_of_others() && (!stretch.is_english || stretch.text.sets_apart(letter))
}

/// What follows "stamp" or "mark" in capitals.
fn said_to_be(stretch: &Stretch<'_>, index: usize, name: &str, count: usize) -> Option<Contradiction> {
    let (words, known) = (&stretch.words, stretch.known);
    let is_stamp = words[index].text.to_lowercase() == "stamp";
    let (head, allowed, own) = if is_stamp {
        ("stamp", &known.stamps, &known.stamp_place)
    } else {
        ("mark", &known.marks, &known.mark_place)
    };
    let is_other = |phrase: &str| spells(words, index + 1, phrase).is_some_and(|long| long >= count);
    let another = known.others.iter().find(|other| is_other(&other.name));
    let is_told = another.is_some() && is_told(stretch, index + 1);
    if is_told || are_all_of(words, index + 1, count, allowed) {
        return None;
    }
    let (place, is) = match another {
        Some(other) => (other.place.clone(), "the other part"),
        None => own.clone(),
    };
    let message = format!("the fitting has no such {head}");
    let wrong = error(stretch, index + 1, &message, name, (place, is), head);
    Some(Contradiction { is_of_wrong_part: another.is_some(), ..wrong })
}

/// The stamp or mark of another part that stands at a word, where no name of the fitting's own has more words: with its
/// capitals, else in any case.
fn other_at<'a>(stretch: &Stretch<'a>, index: usize) -> Option<(usize, &'a Other)> {
    let words = &stretch.words;
    let others = || stretch.known.others.iter();
    let exact = others().filter_map(|other| Some((spells(words, index, &other.name)?, other)));
    let exact = exact.max_by_key(|(count, _)| *count);
    if let Some(found) = exact.filter(|(count, _)| *count > longest_own(stretch, words, index, spells)) {
        return Some(found);
    }
    let alike = others().filter(|other| is_read_in_any_case(stretch, index, other));
    let alike = alike.filter_map(|other| Some((spells_in_any_case(words, index, &other.name)?, other)));
    let alike = alike.max_by_key(|(count, _)| *count);
    alike.filter(|(count, _)| *count > longest_own(stretch, words, index, spells_in_any_case))
}

/// The stamp or mark of another part that stands at a word, where a hyphen ends it: "the RY-cone", "CU 14.0-cone". In small
/// letters only those with a figure count.
fn before_hyphen<'a>(stretch: &Stretch<'a>, parted: &Parted<'_>, index: usize) -> Option<(usize, &'a Other)> {
    if !parted.is_any() {
        return None;
    }
    let words = parted.words();
    parted.pieces_of(index).find_map(|piece| {
        let named = stretch.known.others.iter().filter_map(|other| {
            let spells = if has_figure(&other.name) { spells_in_any_case } else { spells };
            let count = spells(words, piece, &other.name)?;
            (count > longest_own(stretch, words, piece, spells)).then_some((count, other))
        });
        let (count, other) = named.max_by_key(|(count, _)| *count)?;
        Some((parted.word_of(piece + count - 1) - index + 1, other))
    })
}

fn has_figure(name: &str) -> bool {
    name.contains(|letter: char| letter.is_ascii_digit())
}

/// A stamp with a figure in it is none but a stamp; a mark may be a common word, and counts only where one is read.
fn is_read_in_any_case(stretch: &Stretch<'_>, index: usize, other: &Other) -> bool {
    if has_figure(&other.name) {
        return true;
    }
    let before = index.checked_sub(1).map(|before| &stretch.words[before]);
    let is_read = before.is_some_and(|word| {
        (!word.ends || word.tells) && BEFORE_MARK.contains(&word.text.to_lowercase().as_str())
    });
    is_read && !PLAIN.contains(&stretch.words[index].text)
}

fn of_another(stretch: &Stretch<'_>, index: usize, other: &Other) -> Contradiction {
    let (what, is, value) = match other.kind {
        "drum tag" => ("conductor", "the other conductor", "drum_tag"),
        kind => ("part", "the other part", kind),
    };
    let message = format!("this is the {} of another {what} that goes into the body", other.kind);
    let wrong = error(stretch, index, &message, &other.name, (other.place.clone(), is), value);
    Contradiction { is_of_wrong_part: what == "part", ..wrong }
}

/// The number of a part that the fitting does not have. A fitting may be named, and a part that is said not to belong.
fn part_at(stretch: &Stretch<'_>, index: usize, parts: &KnownParts<'_>) -> Option<Settled> {
    let (count, part) = parts.at(&stretch.words, index)?;
    let is_thread = stretch.fitting.tightening.iter().any(|line| line.thread == part.number);
    let at = stretch.words[index].at;
    let is_own = is_thread || longest_own(stretch, &stretch.words, index, spells_in_any_case) >= count;
    let is_denied = || {
        let words = sentence(stretch.text.whole(), stretch.at + at);
        words.iter().any(|word| DENYING.contains(&word.as_str()))
    };
    if is_own || !stretch.is_english || is_denied() {
        return Some(Settled { count, wrong: None });
    }
    let message = "this is the number of a part that the fitting does not have";
    let place = part.origin.of("number");
    let wrong = error(stretch, index, message, &part.number, (place, "that part"), "");
    // A text may speak of a part to tell it apart, in words that are not known here.
    Some(Settled { count, wrong: Some(Contradiction { severity: Severity::Warning, ..wrong }) })
}

/// How many words the longest name of the fitting's own has that stands at a word.
fn longest_own(
    stretch: &Stretch<'_>,
    words: &[Word<'_>],
    index: usize,
    spells: fn(&[Word<'_>], usize, &str) -> Option<usize>,
) -> usize {
    let names = stretch.known.own.iter();
    names.filter_map(|name| spells(words, index, name)).max().unwrap_or(0)
}

fn error(
    stretch: &Stretch<'_>,
    index: usize,
    message: &str,
    found: &str,
    (place, is): (Place, &'static str),
    value: &'static str,
) -> Contradiction {
    let (message, found, at) = (message.to_owned(), found.to_owned(), stretch.words[index].at);
    Contradiction { severity: Severity::Error, at, message, found, place, is, is_of_wrong_part: false, value }
}

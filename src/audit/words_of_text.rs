//! What a text states: its words, the figures among them, and the stamps and marks that it names.

/// A word of a text, without the punctuation round it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Word<'a> {
    /// Letters of the text before it.
    pub(super) at: usize,
    /// The word.
    pub(super) text: &'a str,
    /// Whether punctuation ends what it belongs to.
    pub(super) ends: bool,
}

/// Figures that a text states: one, or least and most.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Figures {
    /// The first of its words, counted from 0.
    pub(super) word: usize,
    /// Letters of the text before it.
    pub(super) at: usize,
    /// One, or two.
    pub(super) values: Vec<f64>,
    /// What stands behind it: a unit or any other word.
    pub(super) unit: String,
    /// As written, with its unit.
    pub(super) written: String,
}

/// Units that a figure may be written to without a space, longer ones first.
const UNITS: [&str; 13] = ["N·m", "N⋅m", "N.m", "mm²", "Nm", "kN", "mm", "cm", "kg", "m", "°", "%", "N"];
/// Signs that stand round words, those of Markdown among them.
const ROUND: &[char] =
    &['.', ',', ';', ':', '!', '?', '(', ')', '[', ']', '"', '\'', '“', '”', '*', '_', '`', '|', '#', '>'];

/// The words of a text.
pub(super) fn words(text: &str) -> Vec<Word<'_>> {
    let mut words = Vec::new();
    let mut at = 0;
    for piece in text.split_inclusive(char::is_whitespace) {
        let bare = piece.trim_start_matches(ROUND);
        let skipped = piece[..piece.len() - bare.len()].chars().count();
        let inside = bare.trim_end();
        let word = inside.trim_end_matches(ROUND);
        if !word.is_empty() {
            words.push(Word { at: at + skipped, text: word, ends: word.len() < inside.len() });
        }
        at += piece.chars().count();
    }
    words
}

/// The figures among words. What is part of a word, such as "M36x2", is none.
pub(super) fn figures(words: &[Word<'_>]) -> Vec<Figures> {
    let mut found = Vec::new();
    let mut index = 0;
    while index < words.len() {
        let Some((mut values, mut unit)) = figure(words[index].text) else {
            index += 1;
            continue;
        };
        let mut last = index;
        if let Some((more, its_unit)) = joined_by_to(words, index).filter(|_| unit.is_empty()) {
            values.extend(more);
            (unit, last) = (its_unit, index + 2);
        }
        if unit.is_empty() && !words[last].ends && last + 1 < words.len() {
            last += 1;
            unit = words[last].text;
        }
        let written: Vec<&str> = words[index..=last].iter().map(|word| word.text).collect();
        let at = words[index].at;
        found.push(Figures { word: index, at, values, unit: unit.to_owned(), written: written.join(" ") });
        index = last.max(index + 1);
    }
    found
}

fn joined_by_to<'a>(words: &[Word<'a>], index: usize) -> Option<(Vec<f64>, &'a str)> {
    let (joint, next) = (words.get(index + 1)?, words.get(index + 2)?);
    figure(next.text).filter(|_| joint.text == "to" && !joint.ends)
}

/// One or two numbers, and the unit written to them.
fn figure(word: &str) -> Option<(Vec<f64>, &str)> {
    let unit =
        UNITS.iter().copied().find(|unit| word.len() > unit.len() && word.ends_with(unit)).unwrap_or("");
    let bare = &word[..word.len() - unit.len()];
    let numbers: Option<Vec<f64>> = bare.split(['–', '-']).map(number).collect();
    numbers.filter(|numbers| numbers.len() <= 2).map(|numbers| (numbers, unit))
}

fn number(text: &str) -> Option<f64> {
    let plain = text.starts_with(|first: char| first.is_ascii_digit())
        && text.ends_with(|last: char| last.is_ascii_digit())
        && text.chars().all(|letter| letter.is_ascii_digit() || letter == '.' || letter == ',');
    plain.then(|| text.replace(',', ".").parse().ok()).flatten()
}

/// The stamp or mark that stands behind the word at an index, where that is "stamp" or "mark": a word in capitals with
/// the words in capitals and figures that follow it, and how many words that are.
pub(super) fn named<'a>(words: &[Word<'a>], index: usize) -> Option<(String, usize)> {
    let head = words.get(index).filter(|word| !word.ends)?;
    if !["stamp", "mark"].contains(&head.text.to_lowercase().as_str()) {
        return None;
    }
    let mut name: Vec<&'a str> = Vec::new();
    for word in &words[index + 1..] {
        let fits = is_capital(word.text) || !name.is_empty() && number(word.text).is_some();
        if !fits {
            break;
        }
        name.push(word.text);
        if word.ends {
            break;
        }
    }
    (!name.is_empty()).then(|| (name.join(" "), name.len()))
}

fn is_capital(word: &str) -> bool {
    word.chars().any(char::is_uppercase) && !word.chars().any(char::is_lowercase)
}

/// How many words from an index on make up a phrase; `None` where they do not.
pub(super) fn spells(words: &[Word<'_>], index: usize, phrase: &str) -> Option<usize> {
    let mut count = 0;
    for part in phrase.split_whitespace() {
        let word = words.get(index + count)?;
        let broken = count > 0 && words[index + count - 1].ends;
        if broken || word.text != part {
            return None;
        }
        count += 1;
    }
    (count > 0).then_some(count)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(text: &str) -> Vec<(Vec<f64>, String)> {
        figures(&words(text)).into_iter().map(|found| (found.values, found.unit)).collect()
    }

    #[test]
    fn figures_are_numbers_of_their_own() {
        let one = |value, unit: &str| vec![(vec![value], unit.to_owned())];
        let two = |least, most, unit: &str| vec![(vec![least, most], unit.to_owned())];
        assert_eq!(found("Screw to 80–90 N·m."), two(80.0, 90.0, "N·m"));
        assert_eq!(found("Screw to 80 to 90\u{a0}N·m"), two(80.0, 90.0, "N·m"));
        assert_eq!(found("(85Nm)"), one(85.0, "Nm"));
        assert_eq!(found("2,5 kN at most"), one(2.5, "kN"));
        assert_eq!(found("a 5 mm hex"), one(5.0, "mm"));
        assert_eq!(found("Thread M36x2, rope 7x19, ST-4100, A4, 8.8.1"), []);
    }

    #[test]
    fn names_are_words_in_capitals_with_their_figures() {
        let name = |text: &str| named(&words(text), 0).map(|(name, _)| name);
        assert_eq!(name("stamp BZ2 14.0 B before closing"), Some("BZ2 14.0 B".to_owned()));
        assert_eq!(name("Mark KA, stamp X"), Some("KA".to_owned()));
        assert_eq!(name("Mark 128 mm on both ends"), None);
        assert_eq!(name("mark and the stamp"), None);
    }

    #[test]
    fn phrases_are_compared_word_by_word() {
        let text = words("reads BZ2 14.0, then B");
        assert_eq!(spells(&text, 1, "BZ2 14.0"), Some(2));
        assert_eq!(spells(&text, 1, "BZ2 14"), None);
        assert_eq!(spells(&text, 1, "BZ2 14.0 then"), None);
    }
}

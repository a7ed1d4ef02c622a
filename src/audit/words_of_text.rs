//! The words of a text, and the stamps and marks that it names.

/// A word of a text, without the punctuation round it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Word<'a> {
    /// Letters of the text before it.
    pub(super) at: usize,
    /// The word.
    pub(super) text: &'a str,
    /// Whether punctuation ends what it belongs to.
    pub(super) ends: bool,
    /// Whether that says what it is, as a colon does.
    pub(super) tells: bool,
    /// Whether it stands without a blank behind a sign, as the second of "14/2" does.
    pub(super) attached: bool,
}

/// Signs that stand round words, those of Markdown and of other scripts among them.
const ROUND: &[char] = &[
    '.', ',', ';', ':', '!', '?', '(', ')', '[', ']', '"', '\'', '“', '”', '*', '_', '`', '|', '#', '>', '=',
    '/', '+', '&', '–', '—', '…', '→', '„', '‚', '‘', '’', '«', '»', '‹', '›', '·', '¿', '¡', '،', '؛', '؟',
    '।', '॥', '、', '。', '「', '」',
];
/// Those that part two words without a blank too: "KA/TE".
const PARTING: [char; 19] =
    [',', ';', ':', '|', '=', '/', '+', '&', '–', '—', '…', '→', '·', '،', '؛', '؟', '।', '、', '。'];
/// Those after which it is said what the word is.
const TELLING: [char; 7] = [':', '=', '|', '→', '–', '—', '-'];

/// The words of a text.
pub(super) fn words(text: &str) -> Vec<Word<'_>> {
    let mut words: Vec<Word<'_>> = Vec::new();
    let (mut at, mut attached) = (0, false);
    for piece in text.split_inclusive(|letter: char| letter.is_whitespace() || PARTING.contains(&letter)) {
        let bare = piece.trim_start_matches(ROUND);
        let skipped = piece[..piece.len() - bare.len()].chars().count();
        let inside = bare.trim_end();
        let word = inside.trim_end_matches(ROUND);
        if word.chars().any(char::is_alphanumeric) {
            let behind = &inside[word.len()..];
            words.push(Word {
                at: at + skipped,
                text: word,
                ends: !behind.is_empty(),
                tells: behind.contains(TELLING),
                attached,
            });
        } else if let Some(last) = words.last_mut() {
            last.ends |= !piece.trim().is_empty();
            last.tells |= piece.contains(TELLING);
        }
        at += piece.chars().count();
        attached = !piece.ends_with(char::is_whitespace);
    }
    words
}

/// A text without the punctuation round it, and how many letters stand before.
pub(super) fn bare(text: &str) -> (usize, &str) {
    let inside = text.trim_start_matches(ROUND);
    (text[..text.len() - inside.len()].chars().count(), inside.trim_end_matches(ROUND))
}

/// Whether a word is a number.
fn is_number(text: &str) -> bool {
    text.starts_with(|first: char| first.is_ascii_digit())
        && text.ends_with(|last: char| last.is_ascii_digit())
        && text.chars().all(|letter| letter.is_ascii_digit() || letter == '.')
}

/// The stamp or mark that stands behind the word at an index, where that is "stamp" or "mark": a word in capitals with
/// the words in capitals and figures that follow it, and how many words that are. Behind a colon or dash other words in
/// capitals may stand, "Mark: STOP if it has moved", so that only what looks like a stamp or mark counts there.
pub(super) fn named<'a>(words: &[Word<'a>], index: usize) -> Option<(String, usize)> {
    let head = words.get(index).filter(|word| !word.ends || word.tells)?;
    if !["stamp", "mark"].contains(&head.text.to_lowercase().as_str()) {
        return None;
    }
    let mut name: Vec<&'a str> = Vec::new();
    let mut ended = false;
    for word in &words[index + 1..] {
        let fits = is_capital(word.text) || !name.is_empty() && is_number(word.text);
        if !fits || ended && !word.attached {
            break;
        }
        name.push(word.text);
        ended = word.ends;
    }
    let stands_alone = ended || index + name.len() + 1 == words.len();
    let counts = !name.is_empty() && (!head.ends || is_code(&name, stands_alone));
    counts.then(|| (name.join(" "), name.len()))
}

/// Whether words in capitals are a stamp or mark by their looks: with a figure, or a few letters that stand by themselves.
fn is_code(name: &[&str], stands_alone: bool) -> bool {
    let letters = || name.iter().flat_map(|word| word.chars());
    letters().any(|letter| letter.is_ascii_digit()) || stands_alone && letters().count() <= SHORT
}

/// The most letters of what is taken for a mark without a figure in it.
const SHORT: usize = 3;

fn is_capital(word: &str) -> bool {
    word.chars().any(char::is_uppercase) && !word.chars().any(char::is_lowercase)
}

/// How many words from an index on make up a phrase; `None` where they do not.
pub(super) fn spells(all: &[Word<'_>], index: usize, phrase: &str) -> Option<usize> {
    if !phrase.contains(all.get(index)?.text) {
        return None;
    }
    spelled(all, index, phrase, |word, part| word == part)
}

/// The same, with small letters and capitals for one.
pub(super) fn spells_in_any_case(all: &[Word<'_>], index: usize, phrase: &str) -> Option<usize> {
    let first = |text: &str| text.chars().next().map(|letter| letter.to_lowercase().to_string());
    if first(phrase.trim_start_matches(ROUND)) != first(all.get(index)?.text) {
        return None;
    }
    spelled(all, index, phrase, |word, part| word.to_lowercase() == part.to_lowercase())
}

fn spelled(
    all: &[Word<'_>],
    index: usize,
    phrase: &str,
    is_same: impl Fn(&str, &str) -> bool,
) -> Option<usize> {
    let parts = words(phrase);
    let own = all.get(index..index + parts.len())?;
    let mut pairs = own.iter().zip(&parts).enumerate();
    let last = parts.len().checked_sub(1)?;
    let is_spelled = pairs
        .all(|(nth, (word, part))| is_same(word.text, part.text) && (nth == last || word.ends == part.ends));
    is_spelled.then_some(parts.len())
}

/// Whether so many words from an index on are some of these phrases, whole, with punctuation between them.
pub(super) fn are_all_of(words: &[Word<'_>], index: usize, count: usize, phrases: &[String]) -> bool {
    let (mut at, end) = (index, index + count);
    while at < end {
        let Some(long) = phrases.iter().filter_map(|phrase| spells(words, at, phrase)).max() else {
            return false;
        };
        at += long;
        if at < end && !words[at - 1].ends {
            return false;
        }
    }
    true
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_words_in_capitals_with_their_figures() {
        let name = |text: &str| named(&words(text), 0).map(|(name, _)| name);
        assert_eq!(name("stamp BZ2 14.0 B before closing"), Some("BZ2 14.0 B".to_owned()));
        assert_eq!(name("Mark KA, stamp X"), Some("KA".to_owned()));
        assert_eq!(name("Mark 128 mm on both ends"), None);
        assert_eq!(name("mark and the stamp"), None);
    }

    /// As texts in German, French, Arabic and Hindi have them.
    #[test]
    fn the_signs_of_other_languages_are_no_part_of_a_word() {
        for text in ["„TE“", "«TE»", "‹TE›", "‚TE‘", "TE،", "TE؟", "TE؛", "TE।", "TE·", "لا·TE"]
        {
            assert_eq!(words(text).last().map(|word| word.text), Some("TE"), "{text}");
        }
    }

    #[test]
    fn a_colon_or_dash_may_stand_before_a_name() {
        let name = |text: &str| named(&words(text), 0).map(|(name, _)| name);
        for text in [
            "Stamp: BZ9 99.9.",
            "Stamp:BZ9 99.9",
            "stamp = BZ9 99.9",
            "Stamp – BZ9 99.9",
            "| stamp | BZ9 99.9 |",
        ] {
            assert_eq!(name(text), Some("BZ9 99.9".to_owned()), "{text}");
        }
        for text in ["Mark: QQ.", "Mark: QQ", "mark=QQ, then"] {
            assert_eq!(name(text), Some("QQ".to_owned()), "{text}");
        }
        for text in
            ["Mark: STOP if it has moved.", "Mark: A second person reads it.", "Read the mark. KA is right."]
        {
            assert_eq!(name(text), None, "{text}");
        }
        assert_eq!(name("stamp. KA"), None);
    }

    #[test]
    fn a_name_is_compared_whole() {
        let are = |text: &str, own: &[&str]| {
            let (text, own) = (words(text), own.iter().map(|own| (*own).to_owned()).collect::<Vec<_>>());
            let (_, count) = named(&text, 0).unwrap();
            are_all_of(&text, 1, count, &own)
        };
        assert!(are("stamp BZ2 14, then", &["BZ2 14"]));
        assert!(are("stamp BZ2 14,5", &["BZ2 14,5"]) && are("stamp B/14.0", &["B/14.0"]));
        assert!(are("mark TE/KA", &["KA", "TE"]));
        for text in ["stamp BZ2 14,5", "stamp BZ2 14/2", "stamp BZ2 14 B", "stamp BZ2", "stamp BZ2 14/B"] {
            assert!(!are(text, &["BZ2 14"]), "{text}");
        }
        assert!(!are("mark TE/KA", &["TE"]));
    }

    #[test]
    fn signs_part_words_as_blanks_do() {
        let text = words("Read TE/KA, then B/14.0.");
        assert_eq!(spells(&text, 1, "TE"), Some(1));
        assert_eq!(spells(&text, 2, "KA"), Some(1));
        assert_eq!(spells(&text, 4, "B/14.0"), Some(2));
        assert_eq!(spells(&text, 4, "B 14.0"), None);
        assert_eq!(spells(&words("see ST-4103"), 1, "ST"), None);
    }

    #[test]
    fn phrases_are_compared_word_by_word() {
        let text = words("reads BZ2 14.0, then B");
        assert_eq!(spells(&text, 1, "BZ2 14.0"), Some(2));
        assert_eq!(spells(&text, 1, "BZ2 14"), None);
        assert_eq!(spells(&text, 1, "BZ2 14.0 then"), None);
        assert_eq!(spells_in_any_case(&words("reads bz2 14.0"), 1, "BZ2 14.0"), Some(2));
        assert_eq!(spells_in_any_case(&words("reads bz2 14.5"), 1, "BZ2 14.0"), None);
    }
}

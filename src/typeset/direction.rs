//! Which stretches of a line run from left to right and which from right to left, by Unicode Standard Annex 9.

use super::breaking::Broken;
use super::glue::{code, glued};
use super::script::{directs, without_marks};
use std::borrow::Cow;
use std::ops::Range;
use textwrap::WordSeparator;
use unicode_bidi::{BidiClass, Level, ParagraphBidiInfo, bidi_class};

/// A paragraph's direction, and the stretches of each of its lines.
#[derive(Debug)]
pub(super) struct Directed {
    pub right_to_left: bool,
    pub lines: Vec<Vec<Stretch>>,
}

/// A stretch of a line in one direction. A line holds them in the order in which they are read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Stretch {
    /// The text, without marks that only say which way it runs.
    pub text: String,
    pub right_to_left: bool,
    /// How many stretches stand left of it.
    pub place: usize,
}

/// Left-to-right isolate and the end of it: annex 9, clause HL3, lets a program set them itself.
const ISOLATE: char = '\u{2066}';
const ISOLATE_END: char = '\u{2069}';

/// Finds the stretches of a paragraph that is broken into these lines.
///
/// The paragraph runs as its first strong character does that stands in no code. Words of a line that
/// run from left to right and hold a code are kept together, so that “19 × 2.80 mm” keeps its order
/// between words that run from right to left.
pub(super) fn directed(lines: &[Broken]) -> Directed {
    if !lines.iter().any(|line| line.text.chars().any(turns)) {
        let whole = |line: &Broken| Stretch { text: line.text.clone(), right_to_left: false, place: 0 };
        return Directed {
            right_to_left: false,
            lines: lines.iter().map(|line| vec![whole(line)]).collect(),
        };
    }
    let right_to_left =
        starts_right(&lines.iter().map(|line| line.text.as_str()).collect::<Vec<_>>().join(" "));
    let (text, ranges) = paragraph_of(lines);
    let level = if right_to_left { Level::rtl() } else { Level::ltr() };
    let paragraph = ParagraphBidiInfo::new(&text, Some(level));
    let lines = ranges.into_iter().map(|range| stretches(&paragraph, range)).collect();
    Directed { right_to_left, lines }
}

/// Whether a character runs from right to left, or has a text do so.
pub(super) fn turns(c: char) -> bool {
    use BidiClass::{AL, AN, R};
    c >= '\u{590}' && (matches!(bidi_class(c), R | AL | AN) || directs(c))
}

/// Whether a character is a letter that runs from right to left.
pub(super) fn is_right(c: char) -> bool {
    matches!(bidi_class(c), BidiClass::R | BidiClass::AL)
}

fn stretches(paragraph: &ParagraphBidiInfo<'_>, line: Range<usize>) -> Vec<Stretch> {
    if line.is_empty() {
        return Vec::new();
    }
    let (levels, runs) = paragraph.visual_runs(line);
    let stretch = |run: &Range<usize>| {
        let text = without_marks(&paragraph.text[run.clone()]);
        (run.start, Stretch { text, right_to_left: levels[run.start].is_rtl(), place: 0 })
    };
    let seen = runs.iter().map(stretch).filter(|(_, stretch)| !stretch.text.is_empty());
    let placed = seen.enumerate().map(|(place, (start, stretch))| (start, Stretch { place, ..stretch }));
    let mut placed: Vec<(usize, Stretch)> = placed.collect();
    placed.sort_by_key(|(start, _)| *start);
    placed.into_iter().map(|(_, stretch)| stretch).collect()
}

fn starts_right(text: &str) -> bool {
    let words = glued(WordSeparator::UnicodeBreakProperties.find_words(text));
    let spoken = words.iter().map(|(word, _)| word.as_str()).filter(|word| !(code(word) && leftward(word)));
    let strong = |c: char| matches!(bidi_class(c), BidiClass::L | BidiClass::R | BidiClass::AL);
    let mut all = spoken.flat_map(str::chars).chain(text.chars());
    all.find(|&c| strong(c) && !directs(c)).is_some_and(is_right)
}

fn leftward(word: &str) -> bool {
    !word.chars().any(|c| turns(c) && !directs(c))
}

/// A text for those who put it in order themselves, such as browsers: where some of it runs from right to
/// left, its codes are isolated, so that they keep their order there as they do on cards.
///
/// ```
/// use fittingcards::typeset::isolated;
/// assert_eq!(isolated("سلك 19 × 2.80 mm."), "سلك \u{2066}19 × 2.80 mm\u{2069}.");
/// assert_eq!(isolated("wire 19 × 2.80 mm"), "wire 19 × 2.80 mm");
/// ```
#[must_use]
pub fn isolated(text: &str) -> Cow<'_, str> {
    if !text.chars().any(turns) {
        return Cow::Borrowed(text);
    }
    let mut isolated = String::with_capacity(text.len());
    for phrase in phrases(text) {
        isolate(phrase, &mut isolated);
    }
    Cow::Owned(isolated)
}

/// The paragraph with its codes isolated, and where its lines stand in it.
fn paragraph_of(lines: &[Broken]) -> (String, Vec<Range<usize>>) {
    let (mut text, mut ranges) = (String::new(), Vec::with_capacity(lines.len()));
    for line in lines {
        let start = text.len();
        for phrase in phrases(&line.text) {
            isolate(phrase, &mut text);
        }
        ranges.push(start..text.len());
        if line.spaced {
            text.push(' ');
        }
    }
    (text, ranges)
}

/// Signs that part what is listed: each of it stands in the order in which the sentence is read.
const PARTING: [char; 4] = [',', ';', '،', '؛'];

/// The line cut where words that run from right to left begin and end, and between what is listed.
fn phrases(line: &str) -> Vec<&str> {
    let mut phrases: Vec<&str> = Vec::new();
    let (mut start, mut end) = (0, 0);
    let mut turned: Option<bool> = None;
    for word in line.split_inclusive(' ') {
        // Arabic signs at the end of a code belong to the sentence: they turn nothing round.
        let turns = word.trim_matches(is_punctuation).chars().any(turns);
        let is_parted = line[start..end].trim_end().ends_with(PARTING);
        if turned.is_some_and(|before| before != turns || is_parted) {
            phrases.push(&line[start..end]);
            start = end;
        }
        turned = Some(turns);
        end += word.len();
    }
    phrases.push(&line[start..end]);
    phrases
}

fn isolate(phrase: &str, text: &mut String) {
    let core = core(phrase);
    if phrase[core.clone()].chars().any(turns) || !needs_isolating(&phrase[core.clone()]) {
        text.push_str(phrase);
        return;
    }
    text.push_str(&phrase[..core.start]);
    text.push(ISOLATE);
    text.push_str(&phrase[core.clone()]);
    text.push(ISOLATE_END);
    text.push_str(&phrase[core.end..]);
}

/// A plain number keeps its order by itself; one with a letter or a sign does not.
fn needs_isolating(core: &str) -> bool {
    let plain = |c: char| c.is_numeric() || c.is_whitespace() || ".,:".contains(c);
    code(core) && !core.chars().all(plain)
}

/// What a phrase is without the punctuation round it, which belongs to the sentence.
fn core(phrase: &str) -> Range<usize> {
    let (mut start, mut end) = (0, phrase.len());
    loop {
        let whole = &phrase[start..end];
        let trimmed = whole.trim_start_matches(is_punctuation);
        start = end - trimmed.len();
        end = start + trimmed.trim_end_matches(is_punctuation).len();
        let core = &phrase[start..end];
        match lone_bracket(core) {
            Some((length, true)) => start += length,
            Some((length, false)) => end -= length,
            None => return start..end,
        }
    }
}

fn is_punctuation(c: char) -> bool {
    c.is_whitespace() || ",.;:!?…·—،؛؟۔".contains(c)
}

const BRACKETS: [(char, char); 5] = [('(', ')'), ('[', ']'), ('«', '»'), ('‹', '›'), ('“', '”')];

/// A bracket at an end of a phrase whose partner stands outside: its length, and whether it opens.
fn lone_bracket(core: &str) -> Option<(usize, bool)> {
    BRACKETS.iter().find_map(|&(open, close)| {
        if core.starts_with(open) && !core.contains(close) {
            return Some((open.len_utf8(), true));
        }
        (core.ends_with(close) && !core.contains(open)).then_some((close.len_utf8(), false))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(texts: &[&str]) -> Vec<Broken> {
        texts.iter().map(|text| Broken { text: (*text).to_owned(), spaced: true, pieces: 1 }).collect()
    }

    /// The line as it is seen from the left, each stretch from right to left turned round.
    fn seen(line: &[Stretch]) -> String {
        let mut placed: Vec<&Stretch> = line.iter().collect();
        placed.sort_by_key(|stretch| stretch.place);
        let turned = |stretch: &&Stretch| match stretch.right_to_left {
            true => stretch.text.chars().rev().collect::<String>(),
            false => stretch.text.clone(),
        };
        placed.iter().map(turned).collect()
    }

    fn display(text: &str) -> (bool, String) {
        let directed = directed(&lines(&[text]));
        (directed.right_to_left, seen(&directed.lines[0]))
    }

    /// The examples of Unicode Standard Annex 9, clause 3.4 (L2), with Hebrew letters for the capitals: א for A
    /// and so on. Brackets are mirrored by the shaper, so they stay as they are here.
    #[test]
    fn the_examples_of_annex_9_come_out() {
        let hebrew = |text: &str| -> String {
            text.chars().map(|c| if c.is_ascii_uppercase() { right(c) } else { c }).collect()
        };
        let latin = |text: &str| -> String { text.chars().map(left).collect() };
        let examples = [
            ("car means CAR.", "car means RAC."),
            ("\u{2067}car MEANS CAR.\u{2069}", ".RAC SNAEM car"),
            (
                "he said “\u{2067}car MEANS CAR\u{2069}.” “\u{2067}IT DOES\u{2069},” she agreed.",
                "he said “RAC SNAEM car.” “SEOD TI,” she agreed.",
            ),
            (
                "DID YOU SAY ’\u{2066}he said “\u{2067}car MEANS CAR\u{2069}”\u{2069}‘?",
                "?‘he said “RAC SNAEM car”’ YAS UOY DID",
            ),
        ];
        for (text, shown) in examples {
            assert_eq!(latin(&display(&hebrew(text)).1), shown, "{text}");
        }
    }

    fn right(c: char) -> char {
        char::from_u32(u32::from(c) - u32::from('A') + 0x5D0).expect("a letter")
    }

    fn left(c: char) -> char {
        match u32::from(c) {
            number @ 0x5D0..=0x5EA => char::from_u32(number - 0x5D0 + u32::from('A')).expect("a letter"),
            _ => c,
        }
    }

    #[test]
    fn codes_and_sizes_keep_their_order_among_arabic() {
        for whole in
            ["B14.0", "19 × 2.80 mm", "80…90 N·m", "3.0–5.5 mm", "CU-10.5", "ST-D-4103/B", "-20 °C", "5 %"]
        {
            for text in [format!("اقطع {whole} ونظفه"), format!("اقطع {whole}."), format!("{whole} سلك")]
            {
                let (right, shown) = display(&text);
                assert!(right, "{text}");
                assert!(shown.contains(whole), "{shown}");
            }
        }
    }

    #[test]
    fn a_stamp_of_two_words_keeps_its_order() {
        assert_eq!(display("الختم 10.5 CU هنا").1, "انه 10.5 CU متخلا");
    }

    /// A stamp before a question mark of its own script was read from its end: 14.0 BZ2.
    #[test]
    fn a_code_keeps_its_order_before_and_behind_arabic_signs() {
        for whole in ["BZ2 14.0", "CU 120", "80 to 90 N·m", "3.0 to 5.5 mm"] {
            for sign in ['؟', '؛', '،', '۔', '.', ':'] {
                let shown = display(&format!("الختم {whole}{sign}")).1;
                assert_eq!(shown, format!("{sign}{whole} متخلا"), "{whole}{sign}");
                let shown = display(&format!("هنا{sign} {whole}")).1;
                assert_eq!(shown, format!("{whole} {sign}انه"), "{sign} {whole}");
            }
            let three = display(&format!("يقرأ {whole}، KA، {whole}؟")).1;
            assert_eq!(three, format!("؟{whole} ،KA ،{whole} أرقي"));
        }
        assert_eq!(isolated("الختم BZ2 14.0؟"), "الختم \u{2066}BZ2 14.0\u{2069}؟");
    }

    #[test]
    fn arabic_figures_and_plain_numbers_are_left_to_the_algorithm() {
        assert_eq!(display("سلك ٧٠").1, "٧٠ كلس");
        assert_eq!(display("سلك 70").1, "70 كلس");
        assert_eq!(display("طول 19 مم").1, "مم 19 لوط");
    }

    #[test]
    fn punctuation_after_a_code_belongs_to_the_sentence() {
        assert_eq!(display("سلك B14.0.").1, ".B14.0 كلس");
        let (_, shown) = display("سلك (B14.0) هنا");
        assert_eq!(shown.chars().rev().collect::<String>(), "سلك )0.41B( هنا");
    }

    #[test]
    fn a_paragraph_runs_as_its_first_strong_character_outside_codes() {
        assert!(display("F-2 نهاية السلك 70").0);
        assert!(display("19 × 2.80 mm سلك").0);
        assert!(!display("Cone B14.0 سلك").0);
        assert!(!display("F-2 70").0);
        assert!(!display("अंतिम पकड़ سلك").0);
    }

    #[test]
    fn a_later_line_runs_as_the_paragraph_does() {
        let directed = directed(&lines(&["سلك حامل", "Cone A."]));
        assert!(directed.right_to_left);
        assert_eq!(seen(&directed.lines[1]), ".Cone A");
    }
}

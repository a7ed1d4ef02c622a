//! The prose of a fitting's note: its paragraphs and lists, which a crew reads as it reads steps. English words alone.

use super::clauses_of_text::sentences;
use super::load_words::is_negating;
use super::orders_of_text::{is_item, lines_joined};
use super::words_of_text::{Word, words};
use pulldown_cmark::{Event, Options, Parser, Tag};
use std::ops::Range;

/// Words that say of a part in the same sentence that it does not belong there.
const WRONG: [&str; 9] =
    ["wrong", "withdrawn", "superseded", "unproven", "mistake", "mistaken", "confused", "reject", "scrap"];
/// Words that say so of what stands behind them.
const DENYING: [&str; 3] = ["unlike", "instead", "rather"];
/// Words that take back what was denied before them: "not before mark KA is read".
const LIFTING: [&str; 7] = ["before", "until", "till", "unless", "without", "except", "but"];
/// Words behind which something else is denied: "mark KA, any other is wrong".
const OTHERS: [&str; 3] = ["other", "others", "else"];
/// How many letters before and behind a name are looked at: no sentence is longer that anybody reads.
const NEAR: usize = 400;
/// Words that begin another clause, as a sign before it does.
const JOINING: [&str; 3] = ["and", "but", "then"];

/// What a note says in its paragraphs and lists.
pub(super) struct Prose {
    /// The letters of tables, headings, quotations and code, in order.
    aside: Vec<Range<usize>>,
    /// Its sentences, each with how many letters stand before it.
    sentences: Vec<(usize, Vec<char>)>,
    /// Its lines, each with how many letters stand before it, and whether the line that its list hangs on warns.
    lines: Vec<(usize, bool)>,
}

impl Prose {
    pub(super) fn of(markdown: &str) -> Self {
        let joined = lines_joined(markdown);
        let letters = |(from, sentence): (usize, String)| (from, sentence.chars().collect());
        let sentences = sentences(&joined).into_iter().map(letters).collect();
        Self { aside: aside(markdown), sentences, lines: lines(&joined) }
    }

    /// Whether what stands at a letter is no order: in a table, heading, quotation or code, or in a sentence that warns
    /// of it.
    pub(super) fn sets_apart(&self, letter: usize) -> bool {
        let range = self.aside.partition_point(|range| range.end <= letter);
        let is_aside = self.aside.get(range).is_some_and(|range| range.contains(&letter));
        let line = self.lines.partition_point(|(from, _)| *from <= letter).checked_sub(1);
        let is_in_list = line.is_some_and(|line| self.lines[line].1);
        is_aside || is_in_list || self.is_warning(letter)
    }

    fn is_warning(&self, letter: usize) -> bool {
        let nth = self.sentences.partition_point(|(from, _)| *from <= letter).checked_sub(1);
        nth.is_some_and(|nth| {
            let (from, sentence) = &self.sentences[nth];
            let (near, letter) = near(sentence, letter - from);
            warns(&near, letter)
        })
    }
}

/// The words of a sentence near one of its letters, and which letter of them that is.
fn near(sentence: &[char], letter: usize) -> (String, usize) {
    let is_inside = |at: usize| {
        let beside = at.checked_sub(1).and_then(|before| sentence.get(before)).zip(sentence.get(at));
        beside.is_some_and(|(one, other)| !one.is_whitespace() && !other.is_whitespace())
    };
    let (mut from, mut end) = (letter.saturating_sub(NEAR), sentence.len().min(letter + NEAR));
    while from < letter && is_inside(from) {
        from += 1;
    }
    while end > letter && is_inside(end) {
        end -= 1;
    }
    (sentence[from..end.max(from)].iter().collect(), letter - from)
}

/// What is told beside the prose, the outermost of it alone.
fn aside(markdown: &str) -> Vec<Range<usize>> {
    let mut ranges: Vec<Range<usize>> = Vec::new();
    let options = Options::ENABLE_TABLES | Options::ENABLE_WIKILINKS;
    for (event, range) in Parser::new_ext(markdown, options).into_offset_iter() {
        let is_within = ranges.last().is_some_and(|last| range.start < last.end);
        if is_aside(&event) && !is_within {
            ranges.push(range);
        }
    }
    let (mut bytes, mut letters) = (0, 0);
    let mut letter = |byte: usize| {
        letters += markdown[bytes..byte].chars().count();
        bytes = byte;
        letters
    };
    ranges.into_iter().map(|range| letter(range.start)..letter(range.end)).collect()
}

fn is_aside(event: &Event<'_>) -> bool {
    matches!(
        event,
        Event::Code(_)
            | Event::Start(
                Tag::Table(_) | Tag::Heading { .. } | Tag::BlockQuote(_) | Tag::CodeBlock(_) | Tag::HtmlBlock
            )
    )
}

/// The lines of a text. A list hangs on the line before it that ends with a colon; what is indented belongs to its item.
fn lines(joined: &str) -> Vec<(usize, bool)> {
    let (mut from, mut head) = (0, false);
    let all = joined.split('\n').map(|line| {
        let is_below = line.trim().is_empty() || line.starts_with([' ', '\t']) || is_item(line);
        if !is_below {
            let last = sentences(line.trim_end()).pop().map(|(_, sentence)| sentence).unwrap_or_default();
            head = line.trim_end().ends_with(':') && warns(&last, last.chars().count());
        }
        let found = (from, is_below && head);
        from += line.chars().count() + 1;
        found
    });
    all.collect()
}

/// Whether a sentence says that what stands at one of its letters does not belong there.
fn warns(sentence: &str, letter: usize) -> bool {
    let words = words(sentence);
    let plain: Vec<String> = words.iter().map(|word| word.text.to_lowercase().replace('’', "'")).collect();
    let named = words.partition_point(|word| word.at < letter);
    let is_denying = |nth: usize| is_negating(&plain[nth]) && plain[nth] != "without";
    let is_wrong = |nth: usize| WRONG.contains(&plain[nth].as_str());
    let is_between = |range: Range<usize>, listed: &[&str]| {
        plain[range].iter().any(|word| listed.contains(&word.as_str()))
    };
    let before = (0..named).any(|nth| {
        (is_wrong(nth) || is_denying(nth) || DENYING.contains(&plain[nth].as_str()))
            && !is_between(nth + 1..named, &LIFTING)
    });
    let behind = (named..plain.len()).any(|nth| {
        (is_wrong(nth) || is_denying(nth) && !begins_clause(&words, &plain, nth))
            && !is_between(named..nth, &OTHERS)
    });
    before || behind
}

/// "Mark KA, not TE" and "KA and not TE" deny what comes behind.
fn begins_clause(words: &[Word<'_>], plain: &[String], nth: usize) -> bool {
    let before = nth.checked_sub(1);
    before.is_none_or(|before| words[before].ends || JOINING.contains(&plain[before].as_str()))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Whether the name RY is set apart where it stands in a note.
    fn is_apart(note: &str) -> bool {
        let at = note.find("RY").unwrap();
        Prose::of(note).sets_apart(note[..at].chars().count())
    }

    #[test]
    fn what_warns_of_a_part_is_no_order() {
        for note in [
            "Never take a cone with mark RY.",
            "Never take a\ncone with mark RY.",
            "Don’t take mark RY.",
            "The copper cone, mark RY, is wrong here.",
            "The copper cone, mark RY, does not hold this wire.",
            "Mark RY was withdrawn.",
            "Unlike mark RY, it has three slits.",
            "Take it instead of mark RY.",
            "These do not belong here:\n\n- mark KA\n- mark RY, the copper one\n",
            "Wrong:\n1. mark RY\n",
        ] {
            assert!(is_apart(note), "{note}");
        }
    }

    #[test]
    fn what_denies_something_else_is_an_order() {
        for note in [
            "Read mark RY on the cone.",
            "Read mark RY, not KA.",
            "Read mark RY and not KA.",
            "Read mark RY instead of KA.",
            "Do not close it before mark RY is read.",
            "Never close it without mark RY.",
            "Read mark RY, any other is wrong.",
            "Never take KA. Read mark RY.",
            "- Never take KA\n- Read mark RY\n",
            "Never take KA:\n\nit slips.\n\n- Read mark RY\n",
            "1. Read mark RY.",
        ] {
            assert!(!is_apart(note), "{note}");
        }
    }

    #[test]
    fn tables_headings_quotations_and_code_are_aside() {
        for note in [
            "| seen | is |\n| --- | --- |\n| mark RY | copper |\n",
            "é\n\n## Mark RY\n",
            "Mark RY\n===\n",
            "> Read mark RY.\n",
            "Read `mark RY`.",
            "    mark RY\n",
            "```\nmark RY\n```\n",
        ] {
            assert!(is_apart(note), "{note}");
        }
        assert!(!is_apart("> Quoted.\n\n`é` is code, mark RY is read.\n"));
    }
}

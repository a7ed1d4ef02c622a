//! Which words of a chapter are orders, and which lines of it belong together. English words alone.

use super::clauses_of_text::ClauseWord;
use super::load_orders::BEFORE_ORDER;
use super::load_words::LOAD;
use super::opening_verbs::is_bare;

/// Words that make an order of the verb behind them, whoever is told.
const MUST: [&str; 4] = ["must", "should", "shall", "have"];
/// Words that do so of "be" and a verb: what may be opened is opened.
const MAY: [&str; 8] = ["must", "should", "shall", "can", "may", "could", "might", "have"];
/// Who is told.
const TOLD: [&str; 5] = ["you", "we", "one", "they", "crews"];
/// Words before "to" and a verb that make an order of it.
const ALLOWED: [&str; 13] = [
    "enough",
    "free",
    "ok",
    "allowed",
    "permitted",
    "safe",
    "right",
    "fine",
    "possible",
    "best",
    "need",
    "needs",
    "have",
];

/// Whether the verb at a letter of a clause is an order: the bare verb at its beginning, behind "under tension",
/// "you can" or "must", or what "must be" done.
pub(super) fn is_order(clause: &[ClauseWord], at: usize) -> bool {
    let Some(place) = clause.iter().position(|word| word.at == at) else { return false };
    let first = clause[place].text.as_str();
    let words: Vec<&str> = clause[..place].iter().map(|word| word.text.as_str()).collect();
    let is_manner = |word: &&&str| BEFORE_ORDER.contains(*word) || word.ends_with("ly");
    let words = &words[..words.len() - words.iter().rev().take_while(is_manner).count()];
    match words {
        [.., "be"] => words.iter().any(|word| MAY.contains(word)),
        _ if !is_bare(first) => false,
        [] => true,
        [.., before] if LOAD.contains(before) || MUST.contains(before) => true,
        [.., who, "can" | "may" | "could" | "might" | "will" | "would"] => TOLD.contains(who),
        [first, .., who] if is_condition(first) => !TOLD.contains(who) && who.ends_with("ed"),
        [.., "you"] => !words.iter().any(|word| is_condition(word)),
        [.., before, "to"] => ALLOWED.contains(before),
        _ => false,
    }
}

/// "If you loosen it" is no order, but "if it has moved loosen it" is.
fn is_condition(word: &str) -> bool {
    matches!(
        word,
        "if" | "when" | "where" | "once" | "should" | "before" | "until" | "unless" | "whoever" | "that"
    )
}

/// A text whose lines are joined where a paragraph goes on: an item, a heading, a row and a blank line begin anew.
pub(super) fn lines_joined(text: &str) -> String {
    let lines: Vec<&str> = text.split('\n').collect();
    let mut joined = String::with_capacity(text.len());
    for (nth, line) in lines.iter().enumerate() {
        if nth > 0 {
            joined.push(if begins_anew(line) || ends_block(lines[nth - 1]) { '\n' } else { ' ' });
        }
        joined.push_str(line);
    }
    joined
}

fn begins_anew(line: &str) -> bool {
    let line = line.trim_start();
    line.is_empty() || line.starts_with(['#', '|', '>']) || is_item(line)
}

/// Whether a line begins an item of a list, with a sign or a number.
pub(super) fn is_item(line: &str) -> bool {
    let behind_number = line.trim_start_matches(|letter: char| letter.is_ascii_digit());
    let is_numbered = behind_number.len() < line.len() && behind_number.starts_with(['.', ')']);
    ["- ", "* ", "+ "].iter().any(|sign| line.starts_with(sign)) || is_numbered
}

fn ends_block(line: &str) -> bool {
    let line = line.trim_start();
    line.is_empty() || line.starts_with(['#', '|'])
}

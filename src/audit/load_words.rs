//! Whether a text speaks of the line's load: that it is on something, or that it is taken away. English words alone.

use super::clauses_of_text::ClauseWord;
use super::verb_forms::is_form;

/// Verbs that take a load away, with it behind them.
const RELIEVING: [&str; 9] =
    ["take", "remove", "release", "slacken", "slack", "ease", "lift", "transfer", "relieve"];
pub(super) const LOAD: [&str; 3] = ["load", "tension", "pull"];
const LINE: [&str; 2] = ["line", "span"];
const GEAR: [&str; 4] = ["puller", "pullers", "hoist", "winch"];
/// What a load may be said of without being that of the line.
pub(super) const OF_FITTING: [&str; 8] = ["screw", "nut", "bolt", "bolts", "cap", "keeper", "cone", "wedge"];
/// Words between a verb and its load.
const FILLING: [&str; 9] = ["the", "all", "off", "up", "away", "down", "its", "full", "whole"];
/// Words behind a load: any other makes it a part of a name, as in "load screw".
const FOLLOWING: [&str; 16] = [
    "off",
    "on",
    "onto",
    "away",
    "with",
    "by",
    "first",
    "from",
    "to",
    "at",
    "over",
    "completely",
    "fully",
    "slowly",
    "before",
    "using",
];
const BEING: [&str; 8] = ["is", "are", "was", "has", "have", "been", "be", "being"];
pub(super) const NEGATING: [&str; 13] = [
    "not", "never", "no", "without", "nobody", "nothing", "cannot", "don't", "dont", "can't", "mustn't",
    "nor", "neither",
];
/// Words that say of a load that it is not taken away yet.
const NOT_YET: [&str; 6] = ["before", "unless", "if", "while", "instead", "later"];

/// Whether a clause speaks of something with the line's load on it: "under tension", "while it is loaded".
pub(super) fn names_load_on(clause: &[ClauseWord]) -> bool {
    let words: Vec<&str> = clause.iter().map(|word| word.text.as_str()).collect();
    (0..words.len()).any(|nth| {
        let next = &words[nth + 1..words.len().min(nth + 5)];
        let is_on = match words[nth] {
            "under" | "in" | "with" => {
                next.iter().take(4).any(|word| LOAD.contains(word)) && !takes_load_away(clause)
            }
            "while" | "when" | "still" => next.iter().any(|word| ["tensioned", "loaded"].contains(word)),
            _ => false,
        };
        let before = &words[nth.saturating_sub(4)..nth];
        is_on
            && !before
                .iter()
                .any(|word| NEGATING.contains(word) || ["before", "until", "longer"].contains(word))
    })
}

/// Whether a clause says that the load is taken away.
pub(super) fn takes_load_away(clause: &[ClauseWord]) -> bool {
    let has = |words: &[&str]| clause.iter().any(|word| words.contains(&word.text.as_str()));
    if has(&NEGATING) || has(&NOT_YET) || clause[0].text == "until" {
        return false;
    }
    (0..clause.len())
        .any(|nth| is_form(&clause[nth].text, "unload") || is_of_load(clause, nth) || is_on_gear(clause, nth))
}

/// Whether the verb at a place takes a load away, and no part of the fitting.
pub(super) fn is_of_load(clause: &[ClauseWord], nth: usize) -> bool {
    let Some(verb) = RELIEVING.into_iter().find(|verb| is_form(&clause[nth].text, verb)) else {
        return false;
    };
    let slackens = matches!(verb, "slacken" | "slack" | "ease");
    let is_load = |word: &str| LOAD.contains(&word) || slackens && LINE.contains(&word);
    let before = clause[..nth].iter().rev().find(|word| !BEING.contains(&word.text.as_str()));
    let is_done = clause[nth].text.ends_with("ed") || clause[nth].text.ends_with("en") && verb == "take";
    if is_done && before.is_some_and(|word| is_load(&word.text)) {
        return true;
    }
    let behind: Vec<&str> = clause[nth + 1..].iter().map(|word| word.text.as_str()).collect();
    let behind = &behind[behind.iter().take_while(|word| FILLING.contains(word)).count()..];
    let rest = match behind {
        ["line", load, rest @ ..] if LOAD.contains(load) => rest,
        [load, rest @ ..] if is_load(load) => rest,
        _ => return false,
    };
    rest.first().is_none_or(|next| FOLLOWING.contains(next))
        && !rest.iter().any(|word| OF_FITTING.contains(word))
}

/// Whether the word at a place is a load that is said to be on a puller, or off.
fn is_on_gear(clause: &[ClauseWord], nth: usize) -> bool {
    if !LOAD.contains(&clause[nth].text.as_str()) {
        return false;
    }
    let mut behind = clause[nth + 1..].iter().map(|word| word.text.as_str());
    let next = behind.find(|word| !BEING.contains(word));
    match next {
        Some("off" | "gone") => true,
        Some("on" | "onto" | "to") => behind.any(|word| GEAR.contains(&word)),
        _ => false,
    }
}

//! What a text does to the line's load: it puts it on, or takes back that it was taken away. English words alone.

use super::clauses_of_text::ClauseWord;
use super::load_words::{
    GEAR, LOAD, OF_FITTING, brings, is_negating, is_off_gear, is_only_where_possible, takes_load_away,
};
use super::opening_verbs::opens;
use super::verb_forms::is_form;

/// Verbs that put a load on where they begin a clause.
const LOADING: [&str; 7] = ["tension", "load", "retension", "reload", "pretension", "stretch", "strain"];
/// Words that may stand before such a verb, and before any other that is an order.
pub(super) const BEFORE_ORDER: [&str; 14] = [
    "do", "first", "now", "then", "next", "again", "please", "always", "also", "just", "only", "so",
    "simply", "re",
];
/// Words behind a load that is put on: any other makes it a thing of which something is told.
const TOLD_OF: [&str; 14] = [
    "is", "are", "was", "has", "draws", "in", "of", "may", "must", "can", "taken", "held", "carried", "does",
];
/// Verbs that end what a puller does.
const ENDING: [&str; 9] =
    ["remove", "slacken", "slack", "release", "detach", "unhook", "ease", "lower", "withdraw"];
/// Words that begin what is done where something was not.
const OTHERWISE: [&str; 4] = ["else", "otherwise", "alternatively", "failing"];

/// Whether a clause puts the line's load on: "tension", "let the load back on", "remove the puller".
pub(super) fn puts_load_on(clause: &[ClauseWord]) -> bool {
    let words: Vec<&str> = clause.iter().map(|word| word.text.as_str()).collect();
    if words.iter().any(|word| is_negating(word)) {
        return false;
    }
    tensions(clause, &words)
        || !takes_load_away(clause) && brings_back(clause, &words)
        || words.contains(&"again") && words.iter().any(|word| ["off", "on", "back"].contains(word))
        || leaves_gear(clause, &words)
        || is_off_gear(clause)
}

/// "Tension", "tension the line again"; but not "tension draws the cone in".
fn tensions(clause: &[ClauseWord], words: &[&str]) -> bool {
    let from = words.iter().take_while(|word| BEFORE_ORDER.contains(word)).count();
    let is_one = words.get(from).is_some_and(|word| LOADING.contains(word));
    is_one
        && !words.get(from + 1).is_some_and(|next| TOLD_OF.contains(next) || OF_FITTING.contains(next))
        && !takes_load_away(clause)
}

fn brings_back(clause: &[ClauseWord], words: &[&str]) -> bool {
    let names_gear = words.iter().any(|word| GEAR.contains(word));
    !names_gear
        && (0..words.len())
            .any(|nth| brings(clause, nth) && words[nth..].iter().any(|word| LOAD.contains(word)))
}

fn leaves_gear(clause: &[ClauseWord], words: &[&str]) -> bool {
    let names_gear = |words: &[&str]| words.iter().any(|word| GEAR.contains(word));
    let is_ended = |nth: usize| ENDING.iter().any(|verb| is_form(words[nth], verb));
    let is_taken_off = |nth: usize| is_form(words[nth], "take") && words[nth..].contains(&"off");
    !takes_load_away(clause)
        && (0..words.len()).any(|nth| (is_ended(nth) || is_taken_off(nth)) && names_gear(&words[nth..]))
}

/// Whether a clause says what is done where the one before it was not: "else", "if not", "without one".
pub(super) fn is_otherwise(clause: &[ClauseWord]) -> bool {
    let words: Vec<&str> = clause.iter().map(|word| word.text.as_str()).collect();
    let is_told = |nth: usize| OTHERWISE.contains(&words[nth]) && (nth == 0 || words[nth - 1] == "or");
    let is_denied = words.iter().any(|word| is_negating(word));
    match words[0] {
        "no" | "not" if words.len() <= 2 && !takes_load_away(clause) => true,
        "unless" | "except" => true,
        "or" => {
            let opens_something = || (0..words.len()).any(|nth| opens(clause, nth).is_some());
            is_denied || words.contains(&"leave") || (0..words.len()).any(is_told) || opens_something()
        }
        "without" => {
            words.iter().any(|word| GEAR.contains(word) || ["one", "it", "that", "this"].contains(word))
        }
        "if" | "where" | "when" if is_denied => {
            let is_of_load = |word: &&str| GEAR.contains(word) || LOAD.contains(word);
            words.len() <= 4 || words.iter().any(is_of_load) || is_only_where_possible(clause)
        }
        _ => (0..words.len()).any(is_told),
    }
}

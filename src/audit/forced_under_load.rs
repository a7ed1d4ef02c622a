#![doc = include_str!("../explain/codes/forced-under-load.md")]

use super::Context;
use super::clauses_of_text::{ClauseWord, clauses};
use super::load_orders::BEFORE_ORDER;
use super::load_words::{is_negating, takes_load_away};
use super::opened_under_load::wordings;
use super::verb_forms::is_form;
use crate::diagnostics::{Finding, Findings};

/// Verbs for force, where they are an order.
const FORCING: [&str; 15] = [
    "tap",
    "hammer",
    "drive",
    "knock",
    "hit",
    "strike",
    "tighten",
    "retighten",
    "turn",
    "torque",
    "press",
    "prise",
    "force",
    "push",
    "bend",
];

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for (record, wording) in wordings(context) {
        let Some(order) = ordered(&wording.text) else { continue };
        let message = "this is done under tension, and says to use force";
        findings.push(
            Finding::error("forced-under-load", wording.place(order.at), message)
                .record(record)
                .field(&wording.field)
                .found(order.text)
                .expected("nothing is touched, or only once the load is taken away")
                .help(
                    "leave the text out: the card then says to stop and to keep clear; or write before it \
                     `take the load on a puller first, then …`",
                ),
        );
    }
}

/// The first order to use force while the load is on.
fn ordered(text: &str) -> Option<ClauseWord> {
    for clause in clauses(text) {
        let is_denied = clause.iter().any(|word| is_negating(&word.text));
        let first = clause.iter().find(|word| !BEFORE_ORDER.contains(&word.text.as_str()));
        let is_order = |word: &&ClauseWord| FORCING.iter().any(|verb| is_form(&word.text, verb));
        match first.filter(is_order) {
            Some(word) if !is_denied => return Some(word.clone()),
            _ if takes_load_away(&clause) => return None,
            _ => {}
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::ordered;

    #[test]
    fn force_is_ordered_only_after_the_load_is_taken() {
        let word = |text: &str| ordered(text).map(|word| word.text);
        assert_eq!(word("Tap the cone home with a hammer.").as_deref(), Some("tap"));
        assert_eq!(word("Stop, then tighten the screw further.").as_deref(), Some("tighten"));
        for sound in [
            "Stop, do not loosen, keep clear; take the load on a puller first.",
            "Never hammer on it; keep clear.",
            "Take the load on a puller first, then press it anew.",
            "Mark the screw and keep clear.",
        ] {
            assert_eq!(word(sound), None, "{sound}");
        }
    }
}

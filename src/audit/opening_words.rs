//! Whether a text says to open what may be under tension. English words alone are known. What is in doubt counts as said:
//! a text can be worded otherwise.

use super::clauses_of_text::{ClauseWord, clauses};

/// Words that say to open something.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Opening {
    /// Letters of the text before them.
    pub(super) at: usize,
    /// The words in small letters.
    pub(super) words: String,
}

/// Verbs that open by themselves.
const OPENING: [&str; 22] = [
    "open",
    "reopen",
    "undo",
    "loosen",
    "slacken",
    "unscrew",
    "untighten",
    "unwind",
    "release",
    "dismantle",
    "disassemble",
    "dismount",
    "remove",
    "unbolt",
    "unfasten",
    "unclamp",
    "unpin",
    "unhook",
    "unlock",
    "detach",
    "ease",
    "cut",
];
/// Forms of verbs that no ending makes.
const FORMS: [(&str, &str); 6] = [
    ("undone", "undo"),
    ("undid", "undo"),
    ("removal", "remove"),
    ("taken", "take"),
    ("took", "take"),
    ("driven", "drive"),
];
/// Verbs that open with a word behind them.
const WITH_PARTICLE: [(&str, &[&str]); 13] = [
    ("take", &["apart", "off", "out"]),
    ("pull", &["apart", "off", "out"]),
    ("back", &["off", "out"]),
    ("turn", &["back", "out"]),
    ("screw", &["back", "out"]),
    ("wind", &["back", "out"]),
    ("slack", &["off"]),
    ("knock", &["off", "out"]),
    ("hammer", &["off", "out"]),
    ("lift", &["off", "out"]),
    ("drive", &["out"]),
    ("press", &["out"]),
    ("push", &["out"]),
];
/// Verbs that take a load away, with it behind them.
const RELIEVING: [&str; 9] =
    ["take", "remove", "release", "slacken", "slack", "ease", "lift", "transfer", "relieve"];
const LOAD: [&str; 3] = ["load", "tension", "pull"];
const LINE: [&str; 2] = ["line", "span"];
const GEAR: [&str; 4] = ["puller", "pullers", "hoist", "winch"];
/// What a load may be said of without being that of the line.
const OF_FITTING: [&str; 8] = ["screw", "nut", "bolt", "bolts", "cap", "keeper", "cone", "wedge"];
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
const NEGATING: [&str; 13] = [
    "not", "never", "no", "without", "nobody", "nothing", "cannot", "don't", "dont", "can't", "mustn't",
    "nor", "neither",
];
/// Words between "not" and what must not be done.
const BETWEEN: [&str; 14] = [
    "to", "try", "ever", "even", "be", "is", "are", "one", "may", "must", "anyone", "anybody", "let",
    "attempt",
];
/// Words that say of a load that it is not taken away yet.
const NOT_YET: [&str; 6] = ["before", "unless", "if", "while", "instead", "later"];

/// The first words that say to open something, where nothing says that the load is taken away before.
pub(super) fn opening(text: &str) -> Option<Opening> {
    for clause in clauses(text) {
        let mut is_forbidden_before = false;
        for nth in 0..clause.len() {
            let Some(last) = opens(&clause, nth) else { continue };
            let is_another = nth > 0 && matches!(clause[nth - 1].text.as_str(), "or" | "nor");
            is_forbidden_before = is_negated(&clause, nth) || is_another && is_forbidden_before;
            if !is_forbidden_before {
                let words: Vec<&str> = clause[nth..=last].iter().map(|word| word.text.as_str()).collect();
                return Some(Opening { at: clause[nth].at, words: words.join(" ") });
            }
        }
        if takes_load_away(&clause) {
            return None;
        }
    }
    None
}

/// The last of the words that open something, where the first is the one at a place of a clause.
fn opens(clause: &[ClauseWord], nth: usize) -> Option<usize> {
    let word = &clause[nth].text;
    let find = |particles: &[&str]| {
        let behind = clause[nth + 1..].iter().position(|word| particles.contains(&word.text.as_str()));
        behind.map(|far| nth + 1 + far)
    };
    let with_particle = || {
        let (verb, particles) = WITH_PARTICLE.into_iter().find(|(verb, _)| is_form(word, verb))?;
        let is_turned =
            || clause.iter().any(|word| OF_FITTING.contains(&word.text.as_str()) || word.text == "it");
        find(particles).filter(|_| verb != "turn" || is_turned())
    };
    let by_itself = OPENING.iter().any(|verb| is_form(word, verb)) || word == "apart";
    let last = with_particle().or(by_itself.then_some(nth))?;
    (!is_of_load(clause, nth)).then_some(last)
}

/// Whether "not" or the like stands close before a word.
fn is_negated(clause: &[ClauseWord], nth: usize) -> bool {
    let before = clause[..nth].iter().rev().find(|word| !BETWEEN.contains(&word.text.as_str()));
    before.is_some_and(|word| NEGATING.contains(&word.text.as_str()))
}

/// Whether a clause says that the load is taken away.
fn takes_load_away(clause: &[ClauseWord]) -> bool {
    let has = |words: &[&str]| clause.iter().any(|word| words.contains(&word.text.as_str()));
    if has(&NEGATING) || has(&NOT_YET) || clause[0].text == "until" {
        return false;
    }
    (0..clause.len())
        .any(|nth| is_form(&clause[nth].text, "unload") || is_of_load(clause, nth) || is_on_gear(clause, nth))
}

/// Whether the verb at a place takes a load away, and no part of the fitting.
fn is_of_load(clause: &[ClauseWord], nth: usize) -> bool {
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

/// Whether a word is a verb in one of its forms.
fn is_form(word: &str, verb: &str) -> bool {
    if FORMS.contains(&(word, verb)) || word == verb {
        return true;
    }
    let stem = verb.strip_suffix('e').unwrap_or(verb);
    let Some(end) = word.strip_prefix(stem) else { return false };
    let last = stem.chars().next_back();
    let doubled = |end: &str| end.chars().next() == last && matches!(&end[1..], "ed" | "ing");
    matches!(end, "s" | "es" | "ed" | "ing" | "ings") || end.is_ascii() && !end.is_empty() && doubled(end)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(text: &str) -> Option<String> {
        opening(text).map(|opening| opening.words)
    }

    /// How people say that something is opened: common practice, no source.
    #[test]
    fn words_of_opening_are_found_in_every_form() {
        for (text, words) in [
            ("Undo the screw and begin again.", "undo"),
            ("Open it and start again.", "open"),
            ("Loosen the screw by one turn.", "loosen"),
            ("Keep clear. Slackening the nut helps.", "slackening"),
            ("The screw is unscrewed", "unscrewed"),
            ("Release the load screw.", "release"),
            ("Back the screw off by a turn", "back the screw off"),
            ("Take it apart.", "take it apart"),
            ("It is taken apart.", "taken apart"),
            ("Take the cone out", "take the cone out"),
            ("Turn the screw back", "turn the screw back"),
            ("Dismantling it", "dismantling"),
            ("Remove the cone.", "remove"),
            ("UNBOLT THE KEEPER", "unbolt"),
            ("Cut it off, make it anew", "cut"),
            ("Cutting", "cutting"),
            ("Re-open it", "open"),
        ] {
            assert_eq!(found(text).as_deref(), Some(words), "{text}");
        }
        assert_eq!(opening("Stop. Undo it").map(|opening| opening.at), Some(6));
    }

    /// The first is what cards say where a record says nothing, from the project's contract.
    #[test]
    fn what_forbids_to_open_is_allowed() {
        for text in [
            "stop, do not loosen, keep clear; take the load on a puller first",
            "Nothing; never open it.",
            "Don’t try to undo it",
            "Do not loosen the screw or open the body.",
            "No opening under load",
            "Without loosening it, keep clear",
            "It must not be opened",
            "Nobody may open it.",
            "Keep clear. Take the tension off first.",
            "Release the line tension with a winch.",
            "Keep clear until the line is slackened.",
        ] {
            assert_eq!(found(text), None, "{text}");
        }
    }

    #[test]
    fn a_load_that_is_taken_away_first_allows_it() {
        for text in [
            "Take the load on a puller first, then take it apart.",
            "Take the line tension off on a puller and open it.",
            "Once the load is on a puller, undo the screw.",
            "Keep clear until the load is off; then open it.",
            "Slack off the line, then loosen the screw.",
            "Unload it. Open it.",
            "After the tension is released, open it.",
        ] {
            assert_eq!(found(text), None, "{text}");
        }
    }

    #[test]
    fn what_is_in_doubt_is_found() {
        for text in [
            "Do not wait, open it.",
            "Do not wait and open it.",
            "Do not forget to open it.",
            "If it does not hold open it.",
            "Not only loosen it.",
            "Do not use a puller: open it.",
            "Without a puller, open it.",
            "Before the load is on a puller, open it.",
            "If the load is on a puller, open it.",
            "Open it before you take the load on a puller.",
            "Take the puller off, then open it.",
            "Take care under load, open it.",
            "Attach a puller, then open it.",
            "Release the tension on the screw, then open it.",
            "Slacken the line clamp.",
            "Under load release it.",
        ] {
            assert!(found(text).is_some(), "{text}");
        }
    }

    #[test]
    fn other_words_are_none() {
        for text in [
            "Keep the slits in sight, stop trains.",
            "The easterly openers, a cute thing",
            "Stop. Tell the foreman.",
        ] {
            assert_eq!(found(text), None, "{text}");
        }
    }
}

//! Whether a text says to open what may be under tension. English words alone are known. What is in doubt counts as said:
//! a text can be worded otherwise.

use super::clauses_of_text::{ClauseWord, clauses, sentences};
use super::load_words::{LOAD, NEGATING, OF_FITTING, is_of_load, names_load_on, takes_load_away};
use super::verb_forms::is_form;

/// Words that say to open something.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Opening {
    /// Letters of the text before them.
    pub(super) at: usize,
    /// The words in small letters.
    pub(super) words: String,
}

/// Verbs that open by themselves.
const OPENING: [&str; 30] = [
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
    "hacksaw",
    "prise",
    "pry",
    "withdraw",
    "extract",
    "replace",
    "swap",
    "exchange",
];
/// Verbs that open with a word behind them.
const WITH_PARTICLE: [(&str, &[&str]); 17] = [
    ("take", &["apart", "off", "out"]),
    ("pull", &["apart", "off", "out", "loose"]),
    ("draw", &["off", "out"]),
    ("back", &["off", "out"]),
    ("turn", &["back", "out"]),
    ("screw", &["back", "out"]),
    ("wind", &["back", "out"]),
    ("slack", &["off"]),
    ("knock", &["off", "out", "loose"]),
    ("hammer", &["off", "out", "loose"]),
    ("tap", &["off", "out", "back", "loose"]),
    ("work", &["off", "out", "loose"]),
    ("lift", &["off", "out"]),
    ("drive", &["out"]),
    ("press", &["out"]),
    ("push", &["out"]),
    ("saw", &["off", "through"]),
];
/// Verbs that open where what they are done to is a part.
const WITH_PART: [&str; 7] = ["pull", "draw", "change", "free", "crack", "slack", "split"];
/// Parts that are held by being closed.
const PART: [&str; 24] = [
    "cone", "cones", "wedge", "wedges", "thimble", "ferrule", "sleeve", "grip", "grips", "part", "parts",
    "pin", "pins", "cotter", "screw", "screws", "nut", "nuts", "bolt", "bolts", "cap", "keeper", "clamp",
    "body",
];
/// Words between such a verb and its part.
const OF_PART: [&str; 8] = ["the", "a", "an", "its", "this", "that", "every", "split"];
/// Words between "not" and what must not be done.
const BETWEEN: [&str; 14] = [
    "to", "try", "ever", "even", "be", "is", "are", "one", "may", "must", "anyone", "anybody", "let",
    "attempt",
];
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

/// How much of a text tells somebody what to do.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Telling {
    /// All of it, as in a step.
    All,
    /// What begins with a verb, as in a chapter, which also tells what happens to people.
    Orders,
}

/// The words that say to open something, one of each sentence that says so of what is under tension.
pub(super) fn openings_under_load(text: &str, telling: Telling) -> Vec<Opening> {
    let found = sentences(text).into_iter().filter_map(|(from, sentence)| {
        let clauses = clauses(&sentence);
        clauses.iter().find(|clause| names_load_on(clause))?;
        let opening = opening(&sentence)?;
        let is_told = telling == Telling::All || clauses.iter().any(|clause| is_order(clause, &opening));
        is_told.then(|| Opening { at: from + opening.at, ..opening })
    });
    found.collect()
}

/// Whether what is said to be opened in a clause is an order: the bare verb at its beginning, or behind "under tension".
fn is_order(clause: &[ClauseWord], opening: &Opening) -> bool {
    let first = opening.words.split(' ').next().unwrap_or_default();
    let is_bare = OPENING.contains(&first)
        || WITH_PART.contains(&first)
        || WITH_PARTICLE.iter().any(|(verb, _)| *verb == first);
    let place = clause.iter().position(|word| word.at == opening.at);
    let begins = |nth: usize| nth == 0 || LOAD.contains(&clause[nth - 1].text.as_str());
    is_bare && place.is_some_and(begins)
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
    let with_part = || {
        WITH_PART.iter().find(|verb| is_form(word, verb))?;
        let between =
            clause[nth + 1..].iter().take_while(|word| OF_PART.contains(&word.text.as_str())).count();
        let names_part = |at: &usize| clause.get(*at).is_some_and(|word| PART.contains(&word.text.as_str()));
        // "Crack the load screw" names what it is of before what it is.
        [nth + 1 + between, nth + 2 + between].into_iter().find(names_part)
    };
    let by_itself = OPENING.iter().any(|verb| is_form(word, verb)) || word == "apart";
    let last = with_particle().or_else(with_part).or(by_itself.then_some(nth))?;
    (!is_of_load(clause, nth)).then_some(last)
}

/// Whether "not" or the like stands close before a word.
fn is_negated(clause: &[ClauseWord], nth: usize) -> bool {
    let before = clause[..nth].iter().rev().find(|word| !BETWEEN.contains(&word.text.as_str()));
    before.is_some_and(|word| NEGATING.contains(&word.text.as_str()))
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
            ("Replace the cone with the right one", "replace"),
            ("Swap the cone", "swap"),
            ("Change the cone", "change the cone"),
            ("Slack the bolts", "slack the bolts"),
            ("Tap it loose", "tap it loose"),
            ("Free the cone", "free the cone"),
            ("Pull the cone", "pull the cone"),
            ("Draw the wedge", "draw the wedge"),
            ("Pull the split pin", "pull the split pin"),
            ("Hacksaw the sleeve", "hacksaw"),
            ("Crack the load nut", "crack the load nut"),
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
            "Keep the track free, nothing may change.",
            "If a strand is loose or a crack shows, keep clear.",
            "Pull back. Draw a line round it.",
        ] {
            assert_eq!(found(text), None, "{text}");
        }
    }

    /// Steps and the like: what is opened before load, or once it is taken, is no danger.
    #[test]
    fn what_is_opened_under_load_is_found_in_any_text() {
        let told = |text: &str| {
            let all = openings_under_load(text, Telling::All).into_iter();
            all.map(|opening| (opening.at, opening.words)).collect::<Vec<_>>()
        };
        for (text, at, words) in [
            ("Loosen the screw under tension.", 0, "loosen"),
            ("Measure. Open the body under line tension.", 9, "open"),
            ("While it is loaded, undo the nut", 20, "undo"),
            ("With the tension on, take it apart", 21, "take it apart"),
            ("Under full load change the cone", 16, "change the cone"),
        ] {
            assert_eq!(told(text), [(at, words.to_owned())], "{text}");
        }
        for text in [
            "Before load: take it apart. Under load: keep clear.",
            "Never open it under tension.",
            "Loosen it only where it is not under tension.",
            "Take it apart before it is under load.",
            "Take the load on a puller, then take it apart.",
            "Under tension keep clear; take the load on a puller first, then open it.",
            "Tension, wait 10 min: measure.",
        ] {
            assert_eq!(told(text), [], "{text}");
        }
    }

    /// A chapter tells what happened; only what it orders is done.
    #[test]
    fn a_chapter_may_tell_of_what_was_opened() {
        let told = |text: &str| !openings_under_load(text, Telling::Orders).is_empty();
        assert!(
            told("Dismantle it under tension.")
                && told("Under line tension open it.")
                && told("Then, under load, take it apart.")
        );
        assert!(!told("A fitting that is opened under tension lets the line go."));
        assert!(!told("Whoever opens it under tension dies."));
        assert!(!told("Opening it under tension kills."));
        assert!(!told("Under tension the line draws the cone in."));
        assert!(!told("With full line tension, tension draws the cone deeper."));
    }
}

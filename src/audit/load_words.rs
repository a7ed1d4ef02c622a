//! Whether a text speaks of the line's load: that it is on something, or that it is taken away. English words alone.

use super::clauses_of_text::ClauseWord;
use super::verb_forms::is_form;

/// Verbs that take a load away, with it behind them.
const RELIEVING: [&str; 9] =
    ["take", "remove", "release", "slacken", "slack", "ease", "lift", "transfer", "relieve"];
/// Those that do so only where nothing of it is left.
const LESSENING: [&str; 2] = ["lower", "reduce"];
pub(super) const LOAD: [&str; 3] = ["load", "tension", "pull"];
const LINE: [&str; 2] = ["line", "span"];
/// What a line is called besides, and what is tight with it.
const WIRE: [&str; 7] = ["line", "span", "wire", "conductor", "messenger", "rope", "feeder"];
pub(super) const GEAR: [&str; 4] = ["puller", "pullers", "hoist", "winch"];
/// What a load may be said of without being that of the line.
pub(super) const OF_FITTING: [&str; 16] = [
    "screw", "screws", "nut", "nuts", "bolt", "bolts", "cap", "keeper", "cone", "wedge", "fitting", "clamp",
    "body", "sleeve", "thread", "socket",
];
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
/// Words that say of a load that it is not taken away yet, or not by everybody.
const NOT_YET: [&str; 20] = [
    "before",
    "unless",
    "if",
    "while",
    "instead",
    "later",
    "afterwards",
    "try",
    "should",
    "might",
    "could",
    "would",
    "preferably",
    "ideally",
    "better",
    "perhaps",
    "maybe",
    "partly",
    "nearly",
    "almost",
];
/// Words of a condition.
const CONDITION: [&str; 8] = ["if", "where", "when", "wherever", "whenever", "as", "should", "provided"];
/// Words of a condition that not everybody meets: "where there is one", "if you can".
const MEANS: [&str; 18] = [
    "can",
    "able",
    "possible",
    "available",
    "practicable",
    "feasible",
    "convenient",
    "handy",
    "hand",
    "necessary",
    "needed",
    "required",
    "there",
    "one",
    "none",
    "time",
    "wish",
    "want",
];

/// Verbs that bring a load back.
const BRINGING: [&str; 10] =
    ["apply", "put", "bring", "restore", "transfer", "return", "give", "let", "ease", "release"];
/// Where it then is.
const ONTO: [&str; 6] = ["on", "onto", "back", "into", "to", "over"];

/// Whether a clause speaks of something with the line's load on it: "under tension", "while it is loaded".
pub(super) fn names_load_on(clause: &[ClauseWord]) -> bool {
    let words: Vec<&str> = clause.iter().map(|word| word.text.as_str()).collect();
    (0..words.len()).any(|nth| {
        let before = &words[nth.saturating_sub(4)..nth];
        let is_denied = |word: &&str| is_negating(word) || ["before", "until", "longer"].contains(word);
        !before.iter().any(is_denied) && is_load_on(clause, &words, nth)
    })
}

/// Whether a clause states that the load is on, and what follows is done then: "the line is under tension".
pub(super) fn states_load_on(clause: &[ClauseWord]) -> bool {
    let is_condition = CONDITION.contains(&clause[0].text.as_str())
        || ["while", "once", "until", "before", "after", "what", "whatever", "whoever", "that", "which"]
            .contains(&clause[0].text.as_str());
    let is_stated = |pair: &[ClauseWord]| {
        matches!(pair[0].text.as_str(), "is" | "stays" | "remains")
            && matches!(pair[1].text.as_str(), "under" | "loaded" | "tensioned")
    };
    !is_condition && names_load_on(clause) && clause.windows(2).any(is_stated)
}

/// Whether the words from a place on say that the load is on.
fn is_load_on(clause: &[ClauseWord], words: &[&str], nth: usize) -> bool {
    let next = &words[nth + 1..words.len().min(nth + 5)];
    let next = &next[..next.iter().position(|word| is_negating(word)).unwrap_or(next.len())];
    let names_wire = || words.iter().any(|word| WIRE.contains(word));
    let is_tight = |word: &&str| {
        ["tensioned", "loaded", "taut", "strained"].contains(word) || *word == "tight" && names_wire()
    };
    let names_load = || next.iter().any(|word| LOAD.contains(word)) && !takes_load_away(clause);
    match words[nth] {
        "under" | "in" | "with" => names_load() || next.iter().any(is_tight),
        "at" => next.iter().take(3).any(|word| LOAD.contains(word)) && !takes_load_away(clause),
        "on" | "while" | "when" | "still" => next.iter().any(is_tight),
        "after" | "once" | "having" => {
            next.iter().any(|word| is_tight(word) || *word == "tensioning")
                || words[nth] == "after"
                    && next.iter().take(2).any(|word| LOAD.contains(word))
                    && names_load()
        }
        // "The load is on", "leave the load on".
        word if LOAD.contains(&word) => {
            let mut behind =
                words[nth + 1..].iter().skip_while(|word| BEING.contains(word) || **word == "still");
            behind.next() == Some(&"on") && !words.iter().any(|word| GEAR.contains(word))
        }
        _ => nth == 0 && words.len() <= 2 && is_tight(&words[0]),
    }
}

pub(super) fn is_negating(word: &str) -> bool {
    NEGATING.contains(&word) || word.ends_with("n't")
}

/// Whether a clause says that the load is taken away.
pub(super) fn takes_load_away(clause: &[ClauseWord]) -> bool {
    if is_without_load(clause) {
        return true;
    }
    let has = |words: &[&str]| clause.iter().any(|word| words.contains(&word.text.as_str()));
    let is_denied = clause.iter().any(|word| is_negating(&word.text));
    if is_denied
        || has(&NOT_YET)
        || clause[0].text == "until"
        || is_only_where_possible(clause)
        || is_off_gear(clause)
    {
        return false;
    }
    (0..clause.len()).any(|nth| {
        is_form(&clause[nth].text, "unload")
            || is_of_load(clause, nth)
            || is_on_gear(clause, nth)
            || is_form(&clause[nth].text, "relieve") && has(&GEAR)
    })
}

/// "Off the puller": what was taken away comes back.
pub(super) fn is_off_gear(clause: &[ClauseWord]) -> bool {
    let words: Vec<&str> =
        clause.iter().map(|word| word.text.as_str()).filter(|word| *word != "the").collect();
    words.windows(2).any(|pair| matches!(pair[0], "off" | "from") && GEAR.contains(&pair[1]))
}

/// Whether a clause is a condition that not everybody meets.
pub(super) fn is_only_where_possible(clause: &[ClauseWord]) -> bool {
    let has = |words: &[&str]| clause.iter().any(|word| words.contains(&word.text.as_str()));
    has(&CONDITION) && has(&MEANS) || has(&["if", "where"]) && has(&["have", "has", "got", "need"])
}

/// "With no tension on it", "without load": what it says of the line is that there is none.
fn is_without_load(clause: &[ClauseWord]) -> bool {
    let words: Vec<&str> = clause.iter().map(|word| word.text.as_str()).collect();
    let behind = match words[..] {
        ["with", "no", ref behind @ ..] | ["without" | "no", ref behind @ ..] => behind,
        _ => return false,
    };
    let behind = behind.strip_prefix(&["line"]).or(behind.strip_prefix(&["any"])).unwrap_or(behind);
    match behind {
        [load] => LOAD.contains(load),
        [load, "on" | "in" | "at" | "left", rest @ ..] => {
            LOAD.contains(load) && !rest.iter().any(|word| GEAR.contains(word))
        }
        _ => false,
    }
}

/// Whether the verb at a place takes a load away, and no part of the fitting.
pub(super) fn is_of_load(clause: &[ClauseWord], nth: usize) -> bool {
    let is_one = |verb: &&str| is_form(&clause[nth].text, verb);
    let Some(verb) = RELIEVING.into_iter().chain(LESSENING).find(is_one) else {
        return false;
    };
    let slackens = matches!(verb, "slacken" | "slack" | "ease");
    let is_load = |word: &str| LOAD.contains(&word) || slackens && LINE.contains(&word);
    let words = |from: usize| clause[from..].iter().map(|word| word.text.as_str()).collect::<Vec<_>>();
    let behind = words(nth + 1);
    let before = clause[..nth].iter().rev().find(|word| !BEING.contains(&word.text.as_str()));
    let is_done = clause[nth].text.ends_with("ed") || clause[nth].text.ends_with("en") && verb == "take";
    if is_done && before.is_some_and(|word| is_load(&word.text)) {
        return is_of_line(&behind) && (RELIEVING.contains(&verb) || leaves_nothing(&behind));
    }
    let behind = &behind[behind.iter().take_while(|word| FILLING.contains(word)).count()..];
    let rest = match behind {
        ["line", load, rest @ ..] if LOAD.contains(load) => rest,
        [load, rest @ ..] if is_load(load) => rest,
        _ => return false,
    };
    let is_whole = RELIEVING.contains(&verb) && !is_to_a_figure(rest) || leaves_nothing(rest);
    rest.first().is_none_or(|next| FOLLOWING.contains(next)) && is_of_line(rest) && is_whole
}

/// Whether what stands behind a load leaves it that of the line: "at the fitting" means the fitting's own screw, but
/// "with a puller" or "off the fitting" don't.
fn is_of_line(rest: &[&str]) -> bool {
    let is_off_it = matches!(rest, ["off" | "from", "the", "fitting", ..]);
    let names_gear = rest.iter().any(|word| GEAR.contains(word));
    names_gear || is_off_it || !rest.iter().any(|word| OF_FITTING.contains(word))
}

fn leaves_nothing(rest: &[&str]) -> bool {
    rest.iter().any(|word| ["zero", "nothing", "nil", "0"].contains(word))
}

/// "To 5 kN" leaves as much.
fn is_to_a_figure(rest: &[&str]) -> bool {
    let is_figure = |word: &str| word != "0" && word.starts_with(|first: char| first.is_ascii_digit());
    rest.windows(2).any(|pair| matches!(pair[0], "to" | "by") && is_figure(pair[1]))
}

/// Whether the word at a place is a load that is said to be on a puller, or off.
fn is_on_gear(clause: &[ClauseWord], nth: usize) -> bool {
    if !LOAD.contains(&clause[nth].text.as_str()) {
        return false;
    }
    let mut behind = clause[nth + 1..].iter().map(|word| word.text.as_str());
    let next = behind.find(|word| !BEING.contains(word) && *word != "goes");
    match next {
        Some("off" | "gone") => true,
        Some("on" | "onto" | "to" | "held" | "carried" | "taken") => behind.any(|word| GEAR.contains(&word)),
        _ => false,
    }
}

/// Whether the verb at a place brings something onto something.
pub(super) fn brings(clause: &[ClauseWord], nth: usize) -> bool {
    BRINGING.iter().any(|verb| is_form(&clause[nth].text, verb))
        && clause[nth + 1..].iter().any(|word| ONTO.contains(&word.text.as_str()))
}

/// Whether the verb at a place lets the line's load come onto the fitting: "ease the load onto the fitting".
pub(super) fn is_put_on(clause: &[ClauseWord], nth: usize) -> bool {
    let words: Vec<&str> = clause[nth + 1..].iter().map(|word| word.text.as_str()).collect();
    let load = words.iter().position(|word| LOAD.contains(word) || *word == "line").filter(|far| *far <= 2);
    let onto = load.and_then(|load| words.get(load + 1));
    brings(clause, nth) && onto.is_some_and(|word| ["onto", "into", "to", "over"].contains(word))
}

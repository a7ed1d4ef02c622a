//! The verbs that say to open a fitting, to take it apart, or to put another part in. English words alone are known.

use super::clauses_of_text::ClauseWord;
use super::load_words::{GEAR, OF_FITTING, is_of_load, is_put_on};
use super::verb_forms::is_form;

/// Verbs that open by themselves.
const OPENING: [&str; 47] = [
    "open",
    "reopen",
    "undo",
    "loosen",
    "losen",
    "slacken",
    "unscrew",
    "untighten",
    "unwind",
    "release",
    "dismantle",
    "disassemble",
    "dismount",
    "disconnect",
    "disengage",
    "uncouple",
    "remove",
    "unbolt",
    "unfasten",
    "unclamp",
    "unpin",
    "unhook",
    "unlock",
    "unseat",
    "unthread",
    "reseat",
    "rebuild",
    "detach",
    "ease",
    "cut",
    "sever",
    "shear",
    "strip",
    "hacksaw",
    "crop",
    "prise",
    "pry",
    "withdraw",
    "extract",
    "replace",
    "swap",
    "exchange",
    "backoff",
    "refit",
    "demount",
    "unclip",
    "unplug",
];
/// Beginnings that a hyphen parts from their verb: "un-screw". What "re-open" says, "open" says too.
const BEGINNINGS: [&str; 3] = ["un", "dis", "re"];
/// Verbs that open with a word behind them.
const WITH_PARTICLE: [(&str, &[&str]); 27] = [
    ("take", &["apart", "off", "out", "pieces"]),
    ("begin", &["again", "anew", "afresh"]),
    ("start", &["again", "anew", "afresh", "over"]),
    ("pull", &["apart", "off", "out", "loose"]),
    ("draw", &["off", "out"]),
    ("back", &["off", "out"]),
    ("screw", &["back", "out", "left"]),
    ("wind", &["back", "out"]),
    ("slack", &["off"]),
    ("knock", &["off", "out", "back", "loose", "free"]),
    ("hammer", &["off", "out", "back", "loose", "free"]),
    ("tap", &["off", "out", "back", "loose", "free"]),
    ("work", &["off", "out", "loose", "free"]),
    ("lift", &["off", "out"]),
    ("drive", &["out", "off", "back", "loose"]),
    ("press", &["out"]),
    ("push", &["out", "back"]),
    ("saw", &["off", "through"]),
    ("lever", &["off", "out", "loose", "free", "open", "apart"]),
    ("drift", &["off", "out", "back"]),
    ("punch", &["off", "out", "back"]),
    ("beat", &["off", "out", "back", "loose"]),
    ("break", &["loose", "free", "open"]),
    ("spin", &["off", "out", "back", "loose"]),
    ("twist", &["off", "out", "back", "loose"]),
    ("grind", &["off", "through"]),
    ("let", &["off"]),
];
/// Those that do so where their clause names a part too, or "it".
const PART_WITH_PARTICLE: [(&str, &[&str]); 7] = [
    ("make", &["loose", "free", "anew"]),
    ("turn", &["back", "out", "off", "left", "loose", "free"]),
    ("run", &["back", "out", "off"]),
    ("get", &["back", "out", "off", "loose", "free", "apart"]),
    ("let", &["out", "go"]),
    ("slip", &["out", "off"]),
    ("take", &["away", "back", "down"]),
];
/// Verbs that open where what they are done to is a part.
const WITH_PART: [&str; 8] = ["pull", "draw", "change", "free", "crack", "slack", "split", "saw"];
/// Words that do so in this form alone, each in a way of its own.
const NOT_BY_FORM: [&str; 10] =
    ["loose", "back", "new", "fresh", "spare", "fit", "insert", "put", "use", "mount"];
/// Words of a turn that opens.
const TURNED_BACK: [&str; 3] = ["apart", "anticlockwise", "counterclockwise"];
/// Parts that are held by being closed.
const PART: [&str; 24] = [
    "cone", "cones", "wedge", "wedges", "thimble", "ferrule", "sleeve", "grip", "grips", "part", "parts",
    "pin", "pins", "cotter", "screw", "screws", "nut", "nuts", "bolt", "bolts", "cap", "keeper", "clamp",
    "body",
];
/// Parts that hold the conductor: none of them is put in while it does.
const GRIPPING: [&str; 7] = ["cone", "cones", "wedge", "wedges", "thimble", "ferrule", "sleeve"];
/// Words that say of such a part that it is none that is in already.
const OTHER: [&str; 8] = ["right", "other", "another", "correct", "proper", "matching", "different", "own"];
/// Words between such a verb and its part.
const OF_PART: [&str; 8] = ["the", "a", "an", "its", "this", "that", "every", "split"];
/// Words between a verb and what is no part of the fitting.
const OF_TOOL: [&str; 13] =
    ["the", "a", "an", "your", "its", "all", "any", "both", "surplus", "off", "out", "away", "down"];
/// What may be taken off under tension: it holds nothing. Pins are secured by opening their legs.
const HOLDING_NOTHING: [&str; 21] = [
    "earth", "earths", "binding", "brake", "brakes", "tag", "label", "legs", "tool", "tools", "ladder",
    "spanner", "wrench", "tape", "grease", "rag", "rags", "gauge", "caliper", "brush", "hammer",
];

/// The last of the words that open something, where the first is the one at a place of a clause.
pub(super) fn opens(clause: &[ClauseWord], nth: usize) -> Option<usize> {
    let last = with_particle(clause, nth)
        .or_else(|| with_part(clause, nth))
        .or_else(|| in_two_words(clause, nth))
        .or_else(|| by_itself(&clause[nth].text).then_some(nth))?;
    let is_said_of_other = is_told_of_later(clause, nth)
        || is_of_load(clause, nth)
        || is_put_on(clause, nth)
        || is_done_to_other(clause, nth);
    (!is_said_of_other).then_some(last)
}

/// Whether a word is the bare form of a verb that opens something.
pub(super) fn is_bare(word: &str) -> bool {
    let of = |verbs: &[(&str, &[&str])]| verbs.iter().any(|(verb, _)| *verb == word);
    OPENING.contains(&word)
        || WITH_PART.contains(&word)
        || of(&WITH_PARTICLE)
        || of(&PART_WITH_PARTICLE)
        || BEGINNINGS.contains(&word)
        || matches!(word, "loose" | "fit" | "give" | "insert" | "put" | "use" | "mount")
}

/// "Before anything is cut", "until it is replaced": what is said of the time before is no order to do it.
fn is_told_of_later(clause: &[ClauseWord], nth: usize) -> bool {
    let words: Vec<&str> = clause[..nth].iter().map(|word| word.text.as_str()).collect();
    let is_told =
        matches!(words.last(), Some(&("is" | "are" | "being"))) || clause[nth].text.ends_with("ing");
    is_told && words.iter().any(|word| matches!(*word, "before" | "until"))
}

fn by_itself(word: &str) -> bool {
    OPENING.iter().any(|verb| is_form(word, verb)) || TURNED_BACK.contains(&word)
}

fn with_particle(clause: &[ClauseWord], nth: usize) -> Option<usize> {
    let word = &clause[nth].text;
    let find = |verbs: &[(&str, &[&str])]| {
        let particles =
            verbs.iter().find(|(verb, _)| is_form(word, verb)).map(|(_, particles)| *particles)?;
        let behind = clause[nth + 1..].iter().position(|word| particles.contains(&word.text.as_str()));
        behind.map(|far| nth + 1 + far)
    };
    let names_part = || {
        clause.iter().any(|word| {
            PART.contains(&word.text.as_str())
                || OF_FITTING.contains(&word.text.as_str())
                || matches!(word.text.as_str(), "it" | "them")
        })
    };
    // "Slip mark" is no verb.
    let is_mark = clause.get(nth + 1).is_some_and(|next| next.text == "mark");
    find(&WITH_PARTICLE).or_else(|| find(&PART_WITH_PARTICLE).filter(|_| !is_mark && names_part()))
}

fn with_part(clause: &[ClauseWord], nth: usize) -> Option<usize> {
    let word = clause[nth].text.as_str();
    let is_verb = WITH_PART.iter().any(|verb| is_form(word, verb)) || NOT_BY_FORM.contains(&word);
    if !is_verb {
        return None;
    }
    let between = clause[nth + 1..].iter().take_while(|word| OF_PART.contains(&word.text.as_str())).count();
    let named = |parts: &'static [&str]| {
        let is_one =
            move |at: &usize| clause.get(*at).is_some_and(|word| parts.contains(&word.text.as_str()));
        // "Crack the load screw" names what it is of before what it is.
        [nth + 1 + between, nth + 2 + between].into_iter().find(is_one)
    };
    match word {
        // "Loose screw" tells what is seen, "loose the screw" what is done; a "split pin" is a part.
        "loose" | "split" | "back" if between > 0 => named(&PART),
        "split" => None,
        "loose" => clause.get(nth + 1).filter(|next| next.text == "it").map(|_| nth + 1),
        // Before another cone goes in, the one that holds is taken out.
        "new" | "fresh" | "spare" => clause.get(nth + 1).filter(is_gripping).map(|_| nth + 1),
        "fit" | "insert" | "put" | "use" | "mount" => put_in(clause, nth).or_else(|| named(&GRIPPING)),
        "back" => None,
        _ => named(&PART),
    }
}

/// "Put in the right cone", "put another cone in".
fn put_in(clause: &[ClauseWord], nth: usize) -> Option<usize> {
    let is_other = |word: &ClauseWord| OTHER.contains(&word.text.as_str());
    let behind = &clause[nth + 1..];
    let far = behind.windows(2).position(|pair| is_other(&pair[0]) && is_gripping(&&pair[1]))?;
    Some(nth + 2 + far)
}

fn is_gripping(word: &&ClauseWord) -> bool {
    GRIPPING.contains(&word.text.as_str())
}

/// "Un-screw", "anti-clockwise".
fn in_two_words(clause: &[ClauseWord], nth: usize) -> Option<usize> {
    let (word, next) = (clause[nth].text.as_str(), clause.get(nth + 1)?.text.as_str());
    let is_one = match word {
        "anti" | "counter" => next == "clockwise",
        "re" => ["seat", "fit"].iter().any(|verb| is_form(next, verb)),
        _ => BEGINNINGS.contains(&word) && by_itself(&format!("{word}{next}")),
    };
    is_one.then_some(nth + 1)
}

/// Whether the verb at a place is done to a tool, or to what holds nothing, and to no part besides.
fn is_done_to_other(clause: &[ClauseWord], nth: usize) -> bool {
    let behind = &clause[nth + 1..];
    let between = behind.iter().take_while(|word| OF_TOOL.contains(&word.text.as_str())).count();
    let is_other = |word: &ClauseWord| {
        GEAR.contains(&word.text.as_str()) || HOLDING_NOTHING.contains(&word.text.as_str())
    };
    // A puller has a grip of its own.
    let names_part = |word: &ClauseWord| PART.contains(&word.text.as_str()) && !word.text.starts_with("grip");
    let next_names_part = behind.get(between + 1).is_some_and(names_part);
    if is_form(&clause[nth].text, "open") && clause.iter().any(|word| word.text == "legs") {
        return true;
    }
    behind.get(between).is_some_and(is_other) && !next_names_part
}

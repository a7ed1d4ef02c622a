//! The forms that an English verb takes in a text.

/// Forms of verbs that no ending makes.
const FORMS: [(&str, &str); 10] = [
    ("undone", "undo"),
    ("undid", "undo"),
    ("removal", "remove"),
    ("taken", "take"),
    ("took", "take"),
    ("driven", "drive"),
    ("drawn", "draw"),
    ("drew", "draw"),
    ("withdrawn", "withdraw"),
    ("pried", "pry"),
];

/// Whether a word is a verb in one of its forms.
pub(super) fn is_form(word: &str, verb: &str) -> bool {
    if FORMS.contains(&(word, verb)) || word == verb {
        return true;
    }
    let stem = verb.strip_suffix('e').unwrap_or(verb);
    let Some(end) = word.strip_prefix(stem) else { return false };
    let last = stem.chars().next_back();
    let doubled = |end: &str| end.chars().next() == last && matches!(&end[1..], "ed" | "ing");
    matches!(end, "s" | "es" | "ed" | "ing" | "ings") || end.is_ascii() && !end.is_empty() && doubled(end)
}

//! Texts as layouts get them: joined, capitalised, kept whole.

use crate::catalogue::Settings;
use crate::colour::{ColourCode, Srgb};
use crate::facts::MarkFacts;
use crate::register::Standing;
use serde_json::{Map, Value, json};

pub(in crate::cards) fn prefixed(prefix: &str, text: &str) -> String {
    if text.is_empty() { String::new() } else { format!("{prefix}{text}") }
}

/// A mark with the colours that it is printed in.
pub(super) fn mark(facts: &MarkFacts) -> Value {
    json!({
        "code": facts.code, "colour": facts.colour, "text": whole(&facts.text),
        "notches": facts.notches, "notches_words": plain(&facts.notches_words),
        "fill": paint(facts).hex(), "ink": ink(facts),
    })
}

/// The paint as it is printed; white where the colour is unknown.
pub(super) fn paint(mark: &MarkFacts) -> Srgb {
    ColourCode::from_letters(&mark.code).map_or(Srgb::WHITE, ColourCode::printed)
}

/// The colour of letters on the paint.
pub(super) fn ink(mark: &MarkFacts) -> String {
    paint(mark).text_on_it().hex()
}

pub(super) fn joined(texts: &[&str], between: &str) -> String {
    texts.iter().filter(|text| !text.is_empty()).copied().collect::<Vec<_>>().join(between)
}

/// A stamp or the text of a mark is never broken, not even at its spaces.
pub(in crate::cards) fn whole(stamp: &str) -> String {
    stamp.replace(' ', "\u{a0}")
}

pub(super) fn sentence(text: &str) -> String {
    let text = text.trim_end_matches('.');
    if text.is_empty() { String::new() } else { capital(text) + "." }
}

pub(super) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

pub(in crate::cards) fn object(values: Value) -> Map<String, Value> {
    match values {
        Value::Object(values) => values,
        _ => Map::new(),
    }
}

pub(super) fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

pub(super) fn listed(texts: &[&str]) -> String {
    joined(texts, ", ")
}

/// Issue, edition and check code; a card that no edition holds says so instead.
pub(in crate::cards) fn foot(standing: &Standing, settings: &Settings) -> Value {
    let date = settings.date.map_or_else(String::new, |date| date.to_string());
    match standing {
        Standing::Draft => json!({
            "draft": true, "standing": "draft, not issued", "edition": format!("edition {}", settings.edition),
            "date": date, "check_code": "",
        }),
        Standing::Issued { issue, edition, check_code } => json!({
            "draft": false, "standing": format!("issue {issue}"), "edition": format!("edition {edition}"),
            "date": date, "check_code": format!("check {check_code}"),
        }),
    }
}

//! Texts as layouts get them: joined, capitalised, kept whole.

use crate::catalogue::Settings;
use crate::colour::{ColourCode, Srgb};
use crate::facts::MarkFacts;
use crate::register::{Issued, Standing};
use crate::typeset::marked_value;
use jiff::civil::Date;
use serde_json::{Map, Value, json};

pub(in crate::cards) fn prefixed(prefix: &str, text: &str) -> String {
    if text.is_empty() { String::new() } else { format!("{prefix}{text}") }
}

/// A mark with the colours that it is printed in.
pub(in crate::cards) fn mark(facts: &MarkFacts) -> Value {
    json!({
        "code": facts.code, "colour": facts.colour, "text": whole(&facts.text),
        "notches": facts.notches, "notches_words": facts.notches_words,
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

/// Longer than any stamp or number that is struck or cast: what is longer may break where texts do.
const LONGEST_CODE: usize = 20;

/// Whether a stamp or number is short enough to be kept in one line.
pub(in crate::cards) fn is_kept_whole(code: &str) -> bool {
    code.chars().count() <= LONGEST_CODE
}

/// A stamp, a number or the text of a mark is never broken: not at its spaces, strokes or hyphens.
pub(in crate::cards) fn whole(stamp: &str) -> String {
    if !is_kept_whole(stamp) {
        return stamp.to_owned();
    }
    let mut whole = String::with_capacity(stamp.len());
    for letter in stamp.chars() {
        match letter {
            ' ' => whole.push('\u{a0}'),
            _ if letter.is_alphanumeric() => whole.push(letter),
            _ => whole.extend(['\u{2060}', letter, '\u{2060}']),
        }
    }
    whole
}

/// A text in which these stamps and numbers are never broken.
pub(super) fn kept_whole<'a>(text: &str, codes: impl IntoIterator<Item = &'a str>) -> String {
    let codes = codes.into_iter().filter(|code| !code.chars().all(char::is_alphanumeric));
    codes.fold(text.to_owned(), |text, code| text.replace(code, &whole(code)))
}

/// A text with the values marked that it has in this order and that no figure shows to be values.
pub(super) fn with_values(text: &str, values: &[String]) -> String {
    let (mut marked, mut rest) = (String::with_capacity(text.len()), text);
    for value in values {
        let Some(at) = rest.find(value.as_str()) else { continue };
        let (before, after) = (&rest[..at], &rest[at + value.len()..]);
        let shows = value.contains(char::is_numeric);
        marked.push_str(before);
        marked.push_str(&if shows { value.clone() } else { marked_value(value) });
        rest = after;
    }
    marked + rest
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

pub(super) fn listed(texts: &[&str]) -> String {
    joined(texts, ", ")
}

/// Issue, edition and check code; a card that no edition holds says so instead. `copy` says which copy it is; beside it
/// stands the issue before: never its code, which would make an old copy look good.
pub(in crate::cards) fn foot(standing: &Standing, copy: &str, settings: &Settings) -> Value {
    match standing {
        Standing::Draft => json!({
            "draft": true, "standing": "draft, not issued", "edition": format!("edition {}", settings.edition),
            "date": dated(settings.date), "check_code": "", "more": copy,
        }),
        Standing::Issued(issued) => json!({
            "draft": false, "standing": format!("issue {}", issued.issue),
            "edition": format!("edition {}", issued.edition), "date": dated(issued.date),
            "check_code": format!("check {}", issued.check_code),
            "more": joined(&[&superseded(issued), copy], " · "),
        }),
    }
}

fn superseded(issued: &Issued) -> String {
    match &issued.supersedes {
        Some((issue, edition)) => format!("supersedes issue\u{a0}{issue}, {edition}"),
        None => String::new(),
    }
}

/// A date as cards print it; empty where there is none.
pub(super) fn dated(date: Option<Date>) -> String {
    date.map_or_else(String::new, |date| date.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A line may break between the words of a text, and at the spaces and hyphens of a word: not in a code.
    #[test]
    fn codes_are_kept_whole_in_texts() {
        let (space, joiner) = ('\u{a0}', '\u{2060}');
        let text = kept_whole("Read BZ2 14.0 and A-7 twice", ["BZ2 14.0", "A-7", "twice"]);
        let kept = format!("Read BZ2{space}14{joiner}.{joiner}0 and A{joiner}-{joiner}7 twice");
        assert_eq!(text, kept);
        assert_eq!(kept_whole("Read A-8", ["A-7"]), "Read A-8");
        // What is longer than any stamp may break where texts do.
        let long = "A long name of a part, not a code";
        assert_eq!(kept_whole(long, [long]), long);
    }

    #[test]
    fn values_without_a_figure_are_marked_where_they_stand() {
        let values = ["two threads", "14.0", "KA"].map(str::to_owned);
        let text = with_values("KAPUT? Tracer two threads, 14.0, cone KA.", &values);
        let expected =
            format!("KAPUT? Tracer {}, 14.0, cone {}.", marked_value("two threads"), marked_value("KA"));
        assert_eq!(text, expected);
        assert_eq!(with_values("No value", &values), "No value");
    }
}

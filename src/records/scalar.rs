//! Names, texts, dates and truth values of records.

use super::field::{Read, Reader};
use super::node::{Content, Node, ScalarKind};
use super::schema::{schema, taking};
use crate::diagnostics::{is_hidden, shortened};
use jiff::civil::Date;
use schemars::{JsonSchema, Schema, SchemaGenerator};
use serde_json::{Value, json};
use std::borrow::Cow;

macro_rules! scalar {
    ($(#[$doc:meta])* $name:ident($inner:ty), $words:expr, $schema:expr) => {
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
        pub struct $name(pub $inner);

        impl JsonSchema for $name {
            fn inline_schema() -> bool {
                true
            }

            fn schema_name() -> Cow<'static, str> {
                stringify!($name).into()
            }

            fn json_schema(_: &mut SchemaGenerator) -> Schema {
                let value: Value = $schema;
                taking(schema(value), $words)
            }
        }
    };
}

scalar! {
    /// An id, number or edition: 1 to 40 of the letters A–Z and a–z, digits, `.`, `_` and `-`, the first
    /// a letter or digit; not a device name of Windows, since files are named after it.
    Identifier(String), "1 to 40 of A–Z, a–z, 0–9, `.`, `_` and `-`, the first a letter or digit",
    json!({ "type": ["string", "number"], "pattern": "^[A-Za-z0-9][A-Za-z0-9._-]{0,39}$" })
}
scalar! {
    /// One line of text that is not empty.
    Name(String), "one line of text, at most 200 characters",
    json!({ "type": ["string", "number"], "minLength": 1, "maxLength": LONGEST_LINE })
}
scalar! {
    /// One line of text; empty where there is nothing to say.
    Text(String), "one line of text, at most 200 characters; it may be empty",
    json!({ "type": ["string", "number"], "maxLength": LONGEST_LINE })
}
scalar! {
    /// A language tag of BCP 47, such as `en` or `en-GB`.
    Language(String), "a tag of BCP 47, such as `en` or `en-GB`",
    json!({ "type": "string", "pattern": "^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8})*$" })
}
scalar! {
    /// A paragraph: line breaks count as spaces.
    Prose(String), "a text, at most 4000 characters; it may be empty",
    json!({ "type": "string", "maxLength": LONGEST_PROSE })
}
scalar! {
    /// A paragraph that is not empty.
    Paragraph(String), "a text, at most 4000 characters",
    json!({ "type": "string", "minLength": 1, "maxLength": LONGEST_PROSE })
}
scalar! {
    /// A day of the calendar, as YYYY-MM-DD.
    Day(Date), "a day of the calendar as YYYY-MM-DD",
    json!({ "type": "string", "format": "date" })
}
scalar! {
    /// `true` or `false`; `yes` and `no` will do.
    Truth(bool), "`true` or `false`",
    json!({ "enum": [true, false, "yes", "no"] })
}

const LONGEST_LINE: usize = 200;
const LONGEST_PROSE: usize = 4000;

impl Read for Identifier {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let written = one_line(node, reader)?;
        let Some(wrong) = amiss_in_identifier(&written) else { return Some(Self(written)) };
        reader.fault("bad-id", node, format!("this can't be an id or number: {wrong}"), |finding| {
            finding
                .found(format!("\"{}\"", shortened(&written)))
                .expected("1 to 40 of A–Z, a–z, 0–9, `.`, `_` and `-`, the first a letter or digit")
        });
        None
    }
}

/// What is wrong with an id or number; none where it is well written.
#[must_use]
pub fn amiss_in_identifier(written: &str) -> Option<String> {
    let allowed = |letter: char| letter.is_ascii_alphanumeric() || "._-".contains(letter);
    if let Some(letter) = written.chars().find(|letter| !allowed(*letter)) {
        return Some(format!("`{letter}` is not allowed in it"));
    }
    if !written.starts_with(|first: char| first.is_ascii_alphanumeric()) {
        return Some("it does not start with a letter or digit".to_owned());
    }
    if written.len() > 40 {
        return Some(format!("it has {} characters", written.len()));
    }
    is_device(written).then(|| "Windows keeps this name for a device, so no file can carry it".to_owned())
}

fn is_device(written: &str) -> bool {
    let stem = written.split('.').next().unwrap_or(written).to_ascii_uppercase();
    let numbered = |device: &str| {
        stem.strip_prefix(device)
            .is_some_and(|rest| rest.len() == 1 && rest.chars().all(|digit| digit.is_ascii_digit()))
    };
    ["CON", "PRN", "AUX", "NUL"].contains(&stem.as_str()) || numbered("COM") || numbered("LPT")
}

impl Read for Name {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        one_line(node, reader).and_then(|written| not_empty(written, node, reader)).map(Self)
    }
}

impl Read for Paragraph {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let Prose(written) = Read::read(node, reader)?;
        not_empty(written, node, reader).map(Self)
    }
}

impl AsRef<str> for Name {
    fn as_ref(&self) -> &str {
        &self.0
    }
}

impl AsRef<str> for Prose {
    fn as_ref(&self) -> &str {
        &self.0
    }
}

impl Read for Language {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let written = one_line(node, reader)?;
        let sized = |part: &str, least| (least..=8).contains(&part.len());
        let letters = |part: &str| part.chars().all(|letter| letter.is_ascii_alphanumeric());
        let mut parts = written.split('-');
        let first = parts.next().unwrap_or_default();
        let good = sized(first, 2) && first.chars().all(|letter| letter.is_ascii_alphabetic());
        if good && parts.all(|part| sized(part, 1) && letters(part)) {
            return Some(Self(written));
        }
        reader.fault("bad-language", node, "this is not a language tag", |finding| {
            finding.found(shortened(&written)).expected("a tag of BCP 47, such as `en` or `en-GB`")
        });
        None
    }
}

impl Read for Text {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        one_line(node, reader).map(Self)
    }
}

impl Read for Prose {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let written = text(node, reader)?.split_whitespace().collect::<Vec<_>>().join(" ");
        not_too_long(&written, LONGEST_PROSE, node, reader)?;
        Some(Self(written))
    }
}

impl Read for Truth {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        match node.written() {
            Some("true" | "True" | "TRUE" | "yes") => Some(Self(true)),
            Some("false" | "False" | "FALSE" | "no") => Some(Self(false)),
            _ => {
                reader.fault("wrong-type", node, "`true` or `false` is expected here", |finding| {
                    finding.found(node.described())
                });
                None
            }
        }
    }
}

impl Read for Day {
    fn read(node: &Node, reader: &mut Reader<'_>) -> Option<Self> {
        let written = text(node, reader)?;
        if let Some(day) = day(&written) {
            return Some(Self(day));
        }
        reader.fault("not-a-date", node, "this is not a date", |finding| {
            finding
                .found(shortened(&written))
                .expected("a day of the calendar as YYYY-MM-DD, such as 2026-02-28")
                .help("year, month and day with hyphens; the month must have that day")
        });
        None
    }
}

/// The day that is written as YYYY-MM-DD and in no other way: none with a time, a zone, or without hyphens.
///
/// ```
/// use fittingcards::records::day;
/// assert!(day("2026-11-25").is_some());
/// assert_eq!(day("20261125"), None);
/// assert_eq!(day("2026-11-25 10:00"), None);
/// ```
#[must_use]
pub fn day(written: &str) -> Option<Date> {
    let day = written.parse::<Date>().ok()?;
    (day.to_string() == written && (1900..=2200).contains(&day.year())).then_some(day)
}

fn one_line(node: &Node, reader: &mut Reader<'_>) -> Option<String> {
    let written = text(node, reader)?.trim().to_owned();
    if written.contains('\n') {
        let help = match reader.is_row() {
            true => "write it in one line; longer texts go to the column for remarks",
            false => "use `>-` instead of `|`, or one line; longer texts go to notes",
        };
        reader.fault("bad-text", node, "this text has several lines", |finding| {
            finding.expected("one line").help(help)
        });
        return None;
    }
    not_too_long(&written, LONGEST_LINE, node, reader)?;
    Some(written)
}

fn not_empty(written: String, node: &Node, reader: &mut Reader<'_>) -> Option<String> {
    if written.is_empty() {
        reader.fault("bad-text", node, "this text is empty", |finding| finding.expected("some text"));
        return None;
    }
    Some(written)
}

fn not_too_long(written: &str, most: usize, node: &Node, reader: &mut Reader<'_>) -> Option<()> {
    let length = written.chars().count();
    if length <= most {
        return Some(());
    }
    reader.fault("bad-text", node, "this text is too long", |finding| {
        finding
            .found(format!("{length} characters"))
            .expected(format!("at most {most}"))
            .help("longer texts go to notes")
    });
    None
}

/// A single value as written: a number that stands where text is expected keeps its digits.
fn text(node: &Node, reader: &mut Reader<'_>) -> Option<String> {
    let Content::Scalar(scalar) = &node.content else {
        reader.fault("wrong-type", node, "text is expected here", |finding| {
            finding
                .found(node.described())
                .help("text that starts with `[` or `{`, or has `: ` in it, goes into quotes")
        });
        return None;
    };
    let hidden = |letter: &char| *letter != '\n' && is_hidden(*letter);
    let Some(letter) = scalar.written.chars().find(hidden) else {
        return Some(if scalar.kind == ScalarKind::Empty { String::new() } else { scalar.written.clone() });
    };
    reader.fault("bad-text", node, "this text has a character that can't be seen", |finding| {
        finding
            .found(format!("U+{:04X}", u32::from(letter)))
            .help("type the text again: it may have been copied from another document")
    });
    None
}

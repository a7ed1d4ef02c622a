//! A YAML value with its place: what the reader makes of a document.

use super::events::{self, Shape, Spot};
use super::raw::Raw;
use super::text::Trouble;
use crate::diagnostics::shortened;
use crate::source::{FilePath, Place};
use serde::Deserialize;
use std::collections::BTreeMap;

/// A value and where it stands.
#[derive(Debug, Clone)]
pub struct Node {
    /// Line, counted from 1.
    pub line: u32,
    /// Column in characters, counted from 1.
    pub column: u32,
    /// What stands there.
    pub content: Content,
}

/// What stands at a place.
#[derive(Debug, Clone)]
pub enum Content {
    /// A single value.
    Scalar(Scalar),
    /// A list.
    List(Vec<Node>),
    /// Keys with their values, in the order written, doubled keys included.
    Map(Vec<Entry>),
}

/// A single value: as written, and as YAML reads it.
#[derive(Debug, Clone)]
pub struct Scalar {
    /// The text in the file, without quotes and folds.
    pub written: String,
    /// Whether it stands in quotes or in a block.
    pub quoted: bool,
    /// What YAML makes of it.
    pub kind: ScalarKind,
}

impl Scalar {
    /// What it is, for messages.
    #[must_use]
    pub fn described(&self) -> String {
        let written = shortened(&self.written);
        match self.kind {
            ScalarKind::Empty => "nothing".to_owned(),
            ScalarKind::Truth(_) => format!("the truth value {written}"),
            ScalarKind::Number(_) => format!("the number {written}"),
            ScalarKind::Text => format!("the text \"{written}\""),
        }
    }
}

/// What YAML makes of a single value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum ScalarKind {
    /// Nothing, `~` or `null`.
    Empty,
    /// `true` or `false`.
    Truth(bool),
    /// A number; `.nan` and `.inf` are numbers to YAML.
    Number(f64),
    /// Anything else.
    Text,
}

/// A key with its value.
#[derive(Debug, Clone)]
pub struct Entry {
    /// The key.
    pub key: String,
    /// Line of the key.
    pub line: u32,
    /// Column of the key.
    pub column: u32,
    /// The value.
    pub value: Node,
}

/// A number as its record writes it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Written {
    /// The number.
    pub value: f64,
    /// Digits behind the decimal mark, zeros at the end among them.
    pub decimals: usize,
}

impl Written {
    /// A decimal number, with or without a power of ten; anything else is none.
    fn of(written: &str) -> Option<Self> {
        let digits = written.strip_prefix(['-', '+']).unwrap_or(written);
        let (digits, power) = match digits.split_once(['e', 'E']) {
            Some((digits, power)) => (digits, power.parse::<i32>().ok()?),
            None => (digits, 0),
        };
        let (whole, decimals) = digits.split_once('.').unwrap_or((digits, ""));
        let plain = |text: &str| text.chars().all(|digit| digit.is_ascii_digit());
        let is_number = plain(whole) && plain(decimals) && !(whole.is_empty() && decimals.is_empty());
        let value = is_number.then(|| written.parse().ok()).flatten()?;
        let decimals = i32::try_from(decimals.len()).ok()?.saturating_sub(power).clamp(0, 12);
        Some(Self { value, decimals: usize::try_from(decimals).ok()? })
    }
}

impl Node {
    /// Whether there is nothing: an empty value, `~` or `null`.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        matches!(&self.content, Content::Scalar(Scalar { kind: ScalarKind::Empty, .. }))
    }

    /// The value of a key.
    #[must_use]
    pub fn get(&self, key: &str) -> Option<&Node> {
        self.entries().iter().find(|entry| entry.key == key).map(|entry| &entry.value)
    }

    /// The keys with their values; none where it is no mapping.
    #[must_use]
    pub fn entries(&self) -> &[Entry] {
        match &self.content {
            Content::Map(entries) => entries,
            Content::Scalar(_) | Content::List(_) => &[],
        }
    }

    /// The text of a single value, as written.
    #[must_use]
    pub fn written(&self) -> Option<&str> {
        match &self.content {
            Content::Scalar(scalar) => Some(&scalar.written),
            _ => None,
        }
    }

    /// Where it stands.
    #[must_use]
    pub fn place(&self, file: &FilePath) -> Place {
        Place::at(file.clone(), self.line, self.column)
    }

    /// What it is, for messages.
    #[must_use]
    pub fn described(&self) -> String {
        match &self.content {
            Content::List(_) => "a list".to_owned(),
            Content::Map(_) => "a mapping of keys to values".to_owned(),
            Content::Scalar(scalar) => scalar.described(),
        }
    }

    /// The place of every value inside, by dotted path with list indices from 0.
    #[must_use]
    pub fn places(&self, file: &FilePath) -> BTreeMap<String, Place> {
        let mut places = BTreeMap::new();
        self.gather(&mut String::new(), file, &mut places);
        places
    }

    /// Every number inside as it is written, by dotted path; also one that stands as text, such as a die's.
    #[must_use]
    pub fn numbers(&self) -> BTreeMap<String, Written> {
        let mut numbers = BTreeMap::new();
        self.gather_numbers("", &mut numbers);
        numbers
    }

    fn gather_numbers(&self, path: &str, numbers: &mut BTreeMap<String, Written>) {
        let below = |step: &str| if path.is_empty() { step.to_owned() } else { format!("{path}.{step}") };
        match &self.content {
            Content::Scalar(scalar) => {
                if let Some(written) = Written::of(&scalar.written) {
                    numbers.entry(path.to_owned()).or_insert(written);
                }
            }
            Content::List(items) => {
                for (index, item) in items.iter().enumerate() {
                    item.gather_numbers(&below(&index.to_string()), numbers);
                }
            }
            Content::Map(entries) => {
                entries.iter().for_each(|entry| entry.value.gather_numbers(&below(&entry.key), numbers));
            }
        }
    }

    fn gather(&self, path: &mut String, file: &FilePath, places: &mut BTreeMap<String, Place>) {
        let length = path.len();
        let mut visit = |step: &str, node: &Node| {
            if length > 0 {
                path.push('.');
            }
            path.push_str(step);
            places.entry(path.clone()).or_insert_with(|| node.place(file));
            node.gather(path, file, places);
            path.truncate(length);
        };
        match &self.content {
            Content::Scalar(_) => {}
            Content::List(items) => {
                items.iter().enumerate().for_each(|(index, item)| visit(&index.to_string(), item));
            }
            Content::Map(entries) => entries.iter().for_each(|entry| visit(&entry.key, &entry.value)),
        }
    }
}

/// The documents of a text as they are written, up to the first that can't be read.
#[must_use]
pub fn nodes(text: &str) -> Vec<Node> {
    documents(text.strip_prefix('\u{feff}').unwrap_or(text)).0
}

/// The documents of a text, up to the first trouble, and that trouble.
///
/// Two parsers read the whole text: one for what values are, one for where they stand. A document on
/// which they do not agree is refused, and so is what one of them calls no YAML. That is the need for the
/// second: of 400 000 slips of a single character in records of the demo, each let 3 % pass that the other
/// refuses, and on 0.5 % both read something, but not the same. Handing the second one scalar at a time
/// would be as slow, and lose that.
pub(super) fn documents(text: &str) -> (Vec<Node>, Option<Trouble>) {
    let (spots, trouble) = events::trees(text);
    let mut nodes = Vec::with_capacity(spots.len());
    for (spot, document) in spots.into_iter().zip(serde_yaml::Deserializer::from_str(text)) {
        let (line, column) = (spot.line, spot.column);
        let node = match Raw::deserialize(document) {
            Ok(raw) => join(spot, raw),
            Err(error) => Err(unread(&error, line, column, text)),
        };
        match node {
            Ok(node) => nodes.push(node),
            Err(trouble) => return (nodes, Some(trouble)),
        }
    }
    (nodes, trouble)
}

fn unread(error: &serde_yaml::Error, line: u32, column: u32, text: &str) -> Trouble {
    let count = |value: usize| u32::try_from(value).unwrap_or(u32::MAX);
    let (line, column) = error.location().map_or((line, column), |at| (count(at.line()), count(at.column())));
    let words = error.to_string();
    let words = words.split(" at line ").next().unwrap_or(&words);
    Trouble::syntax(line, column, words, text)
}

fn join(spot: Spot, raw: Raw) -> Result<Node, Trouble> {
    let (line, column) = (spot.line, spot.column);
    let content = match (spot.shape, raw) {
        (Shape::List(spots), Raw::List(raws)) if spots.len() == raws.len() => Content::List(
            spots.into_iter().zip(raws).map(|(spot, raw)| join(spot, raw)).collect::<Result<_, _>>()?,
        ),
        (Shape::Map(spots), Raw::Map(raws)) if spots.len() == raws.len() => Content::Map(
            spots
                .into_iter()
                .zip(raws)
                .map(|((key, value), (raw_key, raw))| entry(key, value, &raw_key, raw))
                .collect::<Result<_, _>>()?,
        ),
        (Shape::Scalar { written, quoted }, raw) => match kind(&written, &raw) {
            Some(kind) => Content::Scalar(Scalar { written, quoted, kind }),
            None => return Err(disagreement(line, column)),
        },
        _ => return Err(disagreement(line, column)),
    };
    Ok(Node { line, column, content })
}

fn entry(key: Spot, value: Spot, raw_key: &Raw, raw: Raw) -> Result<Entry, Trouble> {
    let Shape::Scalar { written, .. } = key.shape else {
        let message = "a list or mapping stands where a key is expected";
        let help = "a key is one word; text that starts with `{` or `[` goes into quotes";
        return Err(Trouble::new("not-yaml", key.line, key.column, message).help(help));
    };
    if kind(&written, raw_key).is_none() {
        return Err(disagreement(key.line, key.column));
    }
    Ok(Entry { key: written, line: key.line, column: key.column, value: join(value, raw)? })
}

fn kind(written: &str, raw: &Raw) -> Option<ScalarKind> {
    match raw {
        Raw::Empty => Some(ScalarKind::Empty),
        Raw::Truth(truth) => Some(ScalarKind::Truth(*truth)),
        Raw::Number(number) => Some(ScalarKind::Number(*number)),
        Raw::Text(text) => (text == written).then_some(ScalarKind::Text),
        Raw::List(_) | Raw::Map(_) => None,
    }
}

fn disagreement(line: u32, column: u32) -> Trouble {
    let message = "YAML programs read this differently";
    Trouble::new("not-yaml", line, column, message)
        .help("put the text into quotes, or write it in a simpler way")
}

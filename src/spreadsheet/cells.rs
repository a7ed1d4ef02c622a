//! A record as cells: one a value, by the path of its keys.

use crate::records::{Content, Node, ScalarKind};

/// What stands in a cell.
#[derive(Debug, Clone, PartialEq)]
pub struct CellValue {
    /// The text, as the record writes it.
    pub text: String,
    /// The number that it is, where it stands there as one.
    pub number: Option<f64>,
    /// Whether it stands there as true or false.
    pub is_truth: bool,
}

/// Entries of lists that say one thing more, which stands behind the first in their cell: a part how many of it, a step
/// its stage. List, keys, and what stands before and behind the second.
const ENTRIES: [(&str, [&str; 2], [&str; 2]); 2] =
    [("parts", ["part", "quantity"], [" x", ""]), ("steps", ["text", "stage"], [" [", "]"])];

/// Lists of sentences, which have commas of their own: a line each.
const BY_LINE: [&str; 2] = ["steps", "reject_if"];

/// The cells of a record, in the order in which they stand in it.
pub(super) fn cells(record: &Node) -> Vec<(String, CellValue)> {
    let mut cells = Vec::new();
    gather("", record, &mut cells);
    cells
}

fn gather(path: &str, node: &Node, cells: &mut Vec<(String, CellValue)>) {
    match &node.content {
        Content::Map(entries) if !entries.is_empty() => {
            for entry in entries {
                gather(&below(path, &entry.key), &entry.value, cells);
            }
        }
        Content::List(items) if items.iter().any(|item| is_mapping(path, item)) => {
            for (nth, item) in items.iter().enumerate() {
                gather(&below(path, &(nth + 1).to_string()), item, cells);
            }
        }
        _ if node.is_empty() => {}
        _ => cells.push((path.to_owned(), value(path, node))),
    }
}

pub(super) fn below(path: &str, step: &str) -> String {
    if path.is_empty() { step.to_owned() } else { format!("{path}.{step}") }
}

/// Whether an entry of a list has keys that need columns of their own.
fn is_mapping(path: &str, item: &Node) -> bool {
    match &item.content {
        Content::Map(_) => entry_text(path, item).is_none(),
        Content::List(_) => true,
        Content::Scalar(_) => false,
    }
}

/// An entry that says one thing more as it stands in its cell, or no more than its first.
fn entry_text(path: &str, item: &Node) -> Option<String> {
    let (_, [first, second], [before, behind]) = ENTRIES.iter().find(|(list, ..)| *list == path)?;
    let is_known = item.entries().iter().all(|entry| [*first, *second].contains(&entry.key.as_str()));
    let text = item.get(first).filter(|_| is_known)?.written()?.trim();
    match item.get(second) {
        None => Some(text.to_owned()),
        Some(more) => Some(format!("{text}{before}{}{behind}", more.written()?)),
    }
}

/// Whether the entries of a list can say one thing more in its one cell.
pub(super) fn is_in_one_cell(path: &str) -> bool {
    ENTRIES.iter().any(|(list, ..)| *list == path)
}

/// The keys and values of an entry that says one thing more.
pub(super) fn taken_apart<'t>(path: &str, item: &'t str) -> Option<[(&'static str, &'t str); 2]> {
    let (_, [first, second], [before, behind]) = ENTRIES.iter().find(|(list, ..)| *list == path)?;
    let (text, more) = item.strip_suffix(behind)?.rsplit_once(before)?;
    let is_word = |byte: u8| byte.is_ascii_lowercase() || byte == b'-';
    let is_count = |byte: u8| byte.is_ascii_digit();
    let is_more = match *second {
        "quantity" => more.bytes().all(is_count),
        _ => more.bytes().all(is_word),
    };
    (is_more && !more.is_empty()).then_some([(*first, text), (*second, more)])
}

fn value(path: &str, node: &Node) -> CellValue {
    let plain = |text: String| CellValue { text, number: None, is_truth: false };
    match &node.content {
        Content::Scalar(scalar) => CellValue {
            text: scalar.written.trim_end().to_owned(),
            number: match scalar.kind {
                ScalarKind::Number(number) if !scalar.quoted => Some(number),
                _ => None,
            },
            is_truth: matches!(scalar.kind, ScalarKind::Truth(_)),
        },
        Content::Map(_) => plain("{}".to_owned()),
        Content::List(items) if items.is_empty() => plain("[]".to_owned()),
        Content::List(items) => {
            plain(items.iter().map(|item| item_text(path, item)).collect::<Vec<_>>().join(joint(path)))
        }
    }
}

fn item_text(path: &str, item: &Node) -> String {
    entry_text(path, item).unwrap_or_else(|| item.written().unwrap_or_default().trim().to_owned())
}

fn joint(path: &str) -> &'static str {
    if is_by_line(path) { "\n" } else { ", " }
}

fn is_by_line(path: &str) -> bool {
    BY_LINE.contains(&path)
}

/// The entries of a list that stand in one cell.
pub(super) fn items<'t>(path: &str, text: &'t str) -> Vec<&'t str> {
    let by: char = if is_by_line(path) { '\n' } else { ',' };
    text.split(by).map(str::trim).filter(|item| !item.is_empty()).collect()
}

/// A list in one cell as it is written out, whatever spaces and empty entries somebody has put in.
pub(super) fn as_written_out(path: &str, text: &str) -> String {
    items(path, text).join(joint(path))
}

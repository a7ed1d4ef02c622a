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

/// A part that stands in a list more than once.
const TIMES: &str = " x";

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
        Content::List(items) if items.iter().any(is_mapping) => {
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

/// Whether an entry of a list has keys that need columns of their own; a part with its number of pieces does not.
fn is_mapping(item: &Node) -> bool {
    match &item.content {
        Content::Map(_) => quantity(item).is_none(),
        Content::List(_) => true,
        Content::Scalar(_) => false,
    }
}

/// A part and how many of it, where an entry says no more than that.
fn quantity(item: &Node) -> Option<(&str, &str)> {
    let known = item.entries().iter().all(|entry| ["part", "quantity"].contains(&entry.key.as_str()));
    let (part, quantity) = (item.get("part")?.written()?, item.get("quantity")?.written()?);
    known.then_some((part, quantity))
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
        Content::List(items) => plain(items.iter().map(item_text).collect::<Vec<_>>().join(joint(path))),
    }
}

fn item_text(item: &Node) -> String {
    match quantity(item) {
        Some((part, quantity)) => format!("{part}{TIMES}{quantity}"),
        None => item.written().unwrap_or_default().trim().to_owned(),
    }
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

/// A part and how many of it, from an entry of a cell.
pub(super) fn times(item: &str) -> Option<(&str, &str)> {
    let (part, quantity) = item.rsplit_once(TIMES)?;
    let is_count = !quantity.is_empty() && quantity.bytes().all(|byte| byte.is_ascii_digit());
    is_count.then_some((part, quantity))
}

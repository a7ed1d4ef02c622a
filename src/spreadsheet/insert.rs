//! A record that is new, as a file of its own.

use super::columns::Columns;
use super::value::{Tree, Value};

/// The text of a file with one record; sentences stand line by line.
pub(super) fn new_record(tree: &Tree, columns: &Columns) -> String {
    let mut text = String::new();
    for (path, step, branch) in tree.ordered("", columns) {
        let Some(value) = Value::of_branch(&path, branch, columns) else { continue };
        match &value {
            Value::List(items) if !items.is_empty() && is_long(&value) => {
                text.push_str(&format!("{step}:\n"));
                for item in items {
                    text.push_str(&format!("  - {}\n", item.in_line(false)));
                }
            }
            Value::Map(entries) if is_long(&value) => {
                text.push_str(&format!("{step}:\n"));
                for (key, value) in entries {
                    text.push_str(&format!("  {key}: {}\n", value.in_line(false)));
                }
            }
            value => text.push_str(&format!("{step}: {}\n", value.in_line(false))),
        }
    }
    text
}

/// Whether a value is too long for a line.
fn is_long(value: &Value) -> bool {
    value.in_line(false).chars().count() > 80
}

/// Where a new record goes, none of these files having that name.
pub(super) fn path(folder: &str, id: &str, is_taken: impl Fn(&str) -> bool) -> String {
    let first = format!("{folder}/{id}.yaml");
    let more = (2..1000).map(|nth| format!("{folder}/{id}-{nth}.yaml"));
    [first]
        .into_iter()
        .chain(more)
        .find(|path| !is_taken(path))
        .unwrap_or_else(|| format!("{folder}/{id}-new.yaml"))
}

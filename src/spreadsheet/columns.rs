//! The columns that a kind of record can have, and their order.

use super::cells::is_in_one_cell;
use super::kind::SheetKind;
use crate::explain::keys;
use std::collections::{BTreeMap, BTreeSet};

/// Ends and sides of values, which are no keys of their own.
const SIDES: [&str; 4] = ["min", "max", "width", "height"];

/// The keys of a kind of record, by their paths without the numbers of entries.
#[derive(Debug, Clone)]
pub(super) struct Columns {
    /// Each key's place in the order of the declarations.
    order: BTreeMap<String, usize>,
    /// Keys that take a list, by whether its entries are mappings.
    lists: BTreeMap<String, bool>,
    /// Keys that take a number.
    numbers: BTreeSet<String>,
}

impl Columns {
    pub(super) fn of(kind: SheetKind) -> Self {
        let start = format!("{}.", kind.folder());
        let all = keys();
        let keys: Vec<_> = all.iter().filter_map(|key| Some((key.path.strip_prefix(&start)?, key))).collect();
        let order = keys.iter().enumerate().map(|(nth, (path, _))| ((*path).to_owned(), nth)).collect();
        let has_below = |path: &str| keys.iter().any(|(other, _)| other.starts_with(&format!("{path}.")));
        let lists = keys.iter().filter(|(_, key)| key.takes.contains("a list, each entry"));
        let lists =
            lists.map(|(path, _)| ((*path).to_owned(), has_below(path) && !is_in_one_cell(path))).collect();
        let numbers =
            keys.iter().filter(|(_, key)| key.takes.contains("number") && !key.takes.contains("a list"));
        Self { order, lists, numbers: numbers.map(|(path, _)| (*path).to_owned()).collect() }
    }

    /// Whether the records have such a key: an entry of a list of mappings is counted from 1, and a value that has
    /// sides or ends may be given by them.
    pub(super) fn knows(&self, column: &str) -> bool {
        let plain = plain(column);
        let side = side(&plain);
        let known =
            self.order.contains_key(&plain) || side.is_some_and(|(key, _)| self.order.contains_key(key));
        known && self.is_counted(column)
    }

    /// Whether numbers stand where entries of lists of mappings do, and nowhere else.
    fn is_counted(&self, column: &str) -> bool {
        let steps: Vec<&str> = column.split('.').collect();
        (1..=steps.len()).all(|upto| {
            let path = plain(&steps[..upto].join("."));
            let is_number = is_count(steps[upto - 1]);
            let counted = self.lists.get(&path).copied().unwrap_or(false);
            match (is_number, counted) {
                (true, counted) => counted,
                (false, true) => steps.get(upto).is_some_and(|next| is_count(next)),
                (false, false) => true,
            }
        })
    }

    /// Whether the key takes a list that stands in one cell.
    pub(super) fn is_list(&self, path: &str) -> bool {
        self.lists.get(&plain(path)).is_some_and(|counted| !counted)
    }

    /// Whether the key takes a list of mappings, whose entries are counted.
    pub(super) fn is_list_of_mappings(&self, path: &str) -> bool {
        self.lists.get(&plain(path)).copied().unwrap_or(false)
    }

    /// Sorts columns as the declarations have them, entries of a list behind each other.
    pub(super) fn place(&self, column: &str) -> Vec<(usize, usize)> {
        let steps: Vec<&str> = column.split('.').collect();
        let place = |upto: usize| {
            let count = steps[upto - 1].parse().ok().filter(|_| is_count(steps[upto - 1])).unwrap_or(0);
            let known = self.order.get(&plain(&steps[..upto].join("."))).copied();
            // Ends and sides of a value are no keys of their own.
            let side = SIDES.iter().position(|side| *side == steps[upto - 1]);
            (known.or(side).unwrap_or(usize::MAX), count)
        };
        (1..=steps.len()).map(place).collect()
    }

    /// Whether the key takes a number, by itself or for an end or side.
    pub(super) fn is_number(&self, column: &str) -> bool {
        let plain = plain(column);
        self.numbers.contains(&plain) || side(&plain).is_some_and(|(key, _)| self.numbers.contains(key))
    }

    /// Every key, for suggestions.
    pub(super) fn names(&self) -> impl Iterator<Item = &str> {
        self.order.keys().map(String::as_str)
    }
}

/// A value's key, and which of its ends or sides a column is.
fn side(plain: &str) -> Option<(&str, &str)> {
    plain.rsplit_once('.').filter(|(_, end)| SIDES.contains(end))
}

/// Whether a step counts the entries of a list.
pub(super) fn is_count(step: &str) -> bool {
    !step.is_empty() && !step.starts_with('0') && step.bytes().all(|byte| byte.is_ascii_digit())
}

/// A path without the numbers of entries.
fn plain(column: &str) -> String {
    column.split('.').filter(|step| !is_count(step)).collect::<Vec<_>>().join(".")
}

//! Values that are new to a record, from cells to YAML.

use super::cells::{below, items, taken_apart};
use super::columns::{Columns, is_count};
use super::plain::scalar;
use crate::records::Quoting;
use std::collections::BTreeMap;

/// What cells change, by the steps of their columns.
#[derive(Debug, Clone, Default)]
pub(super) struct Tree {
    branches: BTreeMap<String, Branch>,
}

/// What changes at a key.
#[derive(Debug, Clone, Default)]
pub(super) struct Branch {
    /// What becomes of its own value: set, or cleared.
    pub(super) own: Option<Option<String>>,
    /// What changes below it.
    pub(super) below: Tree,
}

impl Tree {
    /// Adds what a column changes.
    pub(super) fn add(&mut self, column: &str, text: Option<String>) {
        let (step, rest) = column.split_once('.').unwrap_or((column, ""));
        let branch = self.branches.entry(step.to_owned()).or_default();
        if rest.is_empty() { branch.own = Some(text) } else { branch.below.add(rest, text) }
    }

    /// What changes at one step.
    pub(super) fn get(&self, step: &str) -> Option<&Branch> {
        self.branches.get(step)
    }

    pub(super) fn is_empty(&self) -> bool {
        self.branches.is_empty()
    }

    /// The branches in the order of the declarations, with their paths.
    pub(super) fn ordered(&self, path: &str, columns: &Columns) -> Vec<(String, &String, &Branch)> {
        let mut all: Vec<_> =
            self.branches.iter().map(|(step, branch)| (below(path, step), step, branch)).collect();
        all.sort_by_cached_key(|(path, ..)| columns.place(path));
        all
    }
}

impl Branch {
    /// Whether it sets anything.
    pub(super) fn sets(&self) -> bool {
        matches!(self.own, Some(Some(_))) || self.below.branches.values().any(Self::sets)
    }
}

/// A value to be written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Value {
    Text(String),
    List(Vec<Value>),
    Map(Vec<(String, Value)>),
}

impl Value {
    /// The value that a cell stands for.
    pub(super) fn of_cell(path: &str, text: &str, columns: &Columns) -> Self {
        match text {
            "[]" => Self::List(Vec::new()),
            "{}" => Self::Map(Vec::new()),
            _ if columns.is_list(path) => {
                Self::List(items(path, text).into_iter().map(|item| Self::of_item(path, item)).collect())
            }
            _ => Self::Text(text.to_owned()),
        }
    }

    /// An entry of a list in one cell.
    pub(super) fn of_item(path: &str, item: &str) -> Self {
        match taken_apart(path, item) {
            None => Self::Text(item.to_owned()),
            Some(both) => {
                Self::Map(both.map(|(key, text)| (key.to_owned(), Self::Text(text.to_owned()))).into())
            }
        }
    }

    /// What a branch sets, where nothing was; `None` where it sets nothing.
    pub(super) fn of_branch(path: &str, branch: &Branch, columns: &Columns) -> Option<Self> {
        if let Some(Some(text)) = &branch.own {
            return Some(Self::of_cell(path, text, columns));
        }
        let set = branch.below.ordered(path, columns).into_iter();
        let entries: Vec<(String, Self)> = set
            .filter_map(|(path, step, branch)| Some((step.clone(), Self::of_branch(&path, branch, columns)?)))
            .collect();
        if entries.is_empty() {
            return None;
        }
        let is_entry = path.rsplit('.').next().is_some_and(is_count);
        Some(match columns.is_list_of_mappings(path) && !is_entry {
            true => Self::List(entries.into_iter().map(|(_, value)| value).collect()),
            false => Self::Map(entries),
        })
    }

    /// In one line, with brackets round lists and mappings.
    pub(super) fn in_line(&self, in_brackets: bool) -> String {
        match self {
            Self::Text(text) => scalar(text, Quoting::Plain, in_brackets),
            Self::List(items) => {
                let items: Vec<String> = items.iter().map(|item| item.in_line(true)).collect();
                format!("[{}]", items.join(", "))
            }
            Self::Map(entries) if entries.is_empty() => "{}".to_owned(),
            Self::Map(entries) => {
                let entries: Vec<String> =
                    entries.iter().map(|(key, value)| format!("{key}: {}", value.in_line(true))).collect();
                format!("{{ {} }}", entries.join(", "))
            }
        }
    }
}

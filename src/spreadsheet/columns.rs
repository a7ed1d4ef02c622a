//! The columns that a kind of record can have, and their order.

use super::cells::is_in_one_cell;
use super::kind::SheetKind;
use crate::explain::keys;
use std::collections::BTreeMap;

/// Ends and sides of values, which are no keys of their own.
const SIDES: [&str; 4] = ["min", "max", "width", "height"];

/// What the value of a key is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Sort {
    /// A number, by itself or for an end or side.
    Number,
    /// A day of the calendar.
    Day,
    /// True or false.
    Truth,
    /// A text of any letters, or a list of such texts: each letter counts, zeros at the end too.
    Letters,
    /// One of some words, a list of numbers, a mapping.
    Other,
}

/// The keys of a kind of record, by their paths without the numbers of entries.
#[derive(Debug, Clone)]
pub(super) struct Columns {
    /// Each key's place in the order of the declarations.
    order: BTreeMap<String, usize>,
    /// Keys that take a list, by whether its entries are mappings.
    lists: BTreeMap<String, bool>,
    /// What the keys take.
    sorts: BTreeMap<String, Sort>,
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
        let sorts = keys.iter().map(|(path, key)| ((*path).to_owned(), sort_of(&key.takes))).collect();
        Self { order, lists, sorts }
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

    /// What the values of a column are.
    pub(super) fn sort(&self, column: &str) -> Sort {
        let plain = plain(column);
        let of_side = || side(&plain).and_then(|(key, _)| self.sorts.get(key));
        self.sorts.get(&plain).or_else(of_side).copied().unwrap_or(Sort::Other)
    }

    /// Every key, for suggestions.
    pub(super) fn names(&self) -> impl Iterator<Item = &str> {
        self.order.keys().map(String::as_str)
    }
}

/// What a key takes, by the words that say it.
fn sort_of(takes: &str) -> Sort {
    let says = |words: &[&str]| words.iter().any(|words| takes.contains(words));
    if says(&["one line of text", "a text, at most", "1 to 40 of"]) {
        Sort::Letters
    } else if says(&["a list"]) {
        Sort::Other
    } else if says(&["number"]) {
        Sort::Number
    } else if says(&["a day of the calendar"]) {
        Sort::Day
    } else if says(&["`true` or `false`"]) {
        Sort::Truth
    } else {
        Sort::Other
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

#[cfg(test)]
mod tests {
    use super::*;

    /// The sorts are read off the words of `explain`: other words there would have stamps written as numbers.
    #[test]
    fn what_a_column_holds_is_known() {
        let sort = |kind, column| Columns::of(kind).sort(column);
        let parts = |column| sort(SheetKind::Parts, column);
        for column in ["number", "name", "stamp", "mark.text", "drawing", "interface", "proven_on.2.report"] {
            assert_eq!(parts(column), Sort::Letters, "{column}");
        }
        for column in ["geometry.collet.bore_mm", "geometry.collet.slits", "geometry.ferrule.pressed_mm.max"]
        {
            assert_eq!(parts(column), Sort::Number, "{column}");
        }
        assert_eq!(parts("proven_on.1.date"), Sort::Day);
        assert_eq!(parts("mark.seen_after_assembly"), Sort::Truth);
        assert_eq!(parts("mark.colour"), Sort::Other);
        let fittings = |column| sort(SheetKind::Fittings, column);
        for column in ["tightening.1.thread", "tightening.1.grease", "parts", "steps", "witness", "conductor"]
        {
            assert_eq!(fittings(column), Sort::Letters, "{column}");
        }
        assert_eq!(fittings("tightening.1.torque_Nm.min"), Sort::Number);
        assert_eq!(sort(SheetKind::Conductors, "id"), Sort::Letters);
        assert_eq!(sort(SheetKind::Conductors, "construction.stranded.layers"), Sort::Other);
    }
}

//! Two lists of printed texts against each other, text by text.
//!
//! Texts that stand in a row under one name with a number ("step 3"), or several times under the same name, are laid
//! beside each other by their longest common sequence, so that a step put in between changes one text and not all
//! that follow.

use super::change::Change;
use crate::catalogue::{Grade, IssuedText};
use std::collections::{BTreeMap, BTreeSet};

/// Texts under one name.
type Row<'a> = Vec<&'a IssuedText>;

/// What is new, gone or another, those of grade safety first, else in the order of the card. Empty only where both
/// lists are the same.
pub(super) fn differences(was: &[IssuedText], is: &[IssuedText]) -> Vec<Change> {
    if same(was, is) {
        return Vec::new();
    }
    let (before, after) = (rows(was), rows(is));
    let mut changes: Vec<Change> = Vec::new();
    for family in families(was, is) {
        let none = Row::new();
        let (one, other) = (before.get(family).unwrap_or(&none), after.get(family).unwrap_or(&none));
        beside_each_other(one, other, &mut changes);
    }
    if changes.is_empty() {
        changes.push(Change {
            what: "order of texts".to_owned(),
            was: String::new(),
            is: String::new(),
            grade: Grade::Text,
            notices: Vec::new(),
            about: Vec::new(),
        });
    }
    changes.sort_by_key(|change| change.grade);
    changes
}

/// Names of the texts that are new or others than before.
pub(super) fn changed_names(was: &[IssuedText], is: &[IssuedText]) -> BTreeSet<String> {
    differences(was, is).into_iter().map(|change| change.what).collect()
}

fn same(was: &[IssuedText], is: &[IssuedText]) -> bool {
    was.len() == is.len() && was.iter().zip(is).all(|(one, other)| is_the_same(one, other))
}

fn is_the_same(one: &IssuedText, other: &IssuedText) -> bool {
    one.name == other.name && one.text == other.text
}

/// Names that stand in a row, each text with its number.
const ROWS: [&str; 3] = ["step", "reject if", "before work"];

/// The name, without the number where it stands in a row.
fn family(name: &str) -> &str {
    name.rsplit_once(' ').map(|(row, _)| row).filter(|row| ROWS.contains(row)).unwrap_or(name)
}

fn rows(texts: &[IssuedText]) -> BTreeMap<&str, Row<'_>> {
    let mut rows: BTreeMap<&str, Row<'_>> = BTreeMap::new();
    for text in texts {
        rows.entry(family(&text.name)).or_default().push(text);
    }
    rows
}

/// The names of rows in the order of the present card, then those that are gone.
fn families<'a>(was: &'a [IssuedText], is: &'a [IssuedText]) -> Vec<&'a str> {
    let mut seen = BTreeSet::new();
    is.iter().chain(was).map(|text| family(&text.name)).filter(|family| seen.insert(*family)).collect()
}

/// Lays two rows beside each other; what stands between two texts that both have is told pair by pair.
fn beside_each_other(was: &Row<'_>, is: &Row<'_>, changes: &mut Vec<Change>) {
    let mut shared = shared(was, is);
    shared.push((was.len(), is.len()));
    let (mut left, mut right) = (0, 0);
    for (next_left, next_right) in shared {
        let (gone, new) = (&was[left..next_left], &is[right..next_right]);
        for nth in 0..gone.len().max(new.len()) {
            changes.push(change(gone.get(nth).copied(), new.get(nth).copied()));
        }
        (left, right) = (next_left + 1, next_right + 1);
    }
}

fn change(was: Option<&IssuedText>, is: Option<&IssuedText>) -> Change {
    let text = |text: Option<&IssuedText>| text.map(|text| text.text.clone()).unwrap_or_default();
    let both = || is.into_iter().chain(was);
    let mut about: Vec<String> = both().flat_map(|text| text.about.iter().cloned()).collect();
    about.sort();
    about.dedup();
    Change {
        what: both().next().map(|text| text.name.clone()).unwrap_or_default(),
        was: text(was),
        is: text(is),
        // The weightier of the grade that it had and the one that it has.
        grade: both().map(|text| text.grade).min().unwrap_or(Grade::Safety),
        notices: Vec::new(),
        about,
    }
}

/// Pairs of places of texts that both rows have, in order: a longest common sequence.
fn shared(was: &Row<'_>, is: &Row<'_>) -> Vec<(usize, usize)> {
    let mut longest = vec![vec![0_usize; is.len() + 1]; was.len() + 1];
    for left in (0..was.len()).rev() {
        for right in (0..is.len()).rev() {
            longest[left][right] = if was[left].text == is[right].text {
                longest[left + 1][right + 1] + 1
            } else {
                longest[left + 1][right].max(longest[left][right + 1])
            };
        }
    }
    let (mut left, mut right, mut pairs) = (0, 0, Vec::new());
    while left < was.len() && right < is.len() {
        if was[left].text == is[right].text {
            pairs.push((left, right));
            (left, right) = (left + 1, right + 1);
        } else if longest[left + 1][right] >= longest[left][right + 1] {
            left += 1;
        } else {
            right += 1;
        }
    }
    pairs
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(pairs: &[(&str, &str)]) -> Vec<IssuedText> {
        let text = |(name, text): &(&str, &str)| IssuedText {
            grade: if *name == "name" { Grade::Text } else { Grade::Safety },
            name: (*name).to_owned(),
            text: (*text).to_owned(),
            about: Vec::new(),
        };
        pairs.iter().map(text).collect()
    }

    fn told(was: &[(&str, &str)], is: &[(&str, &str)]) -> Vec<String> {
        differences(&texts(was), &texts(is)).iter().map(Change::words).collect()
    }

    #[test]
    fn a_step_put_in_between_is_one_change() {
        let was = [("name", "A"), ("step 1", "Read"), ("step 2", "Push"), ("step 3", "Close")];
        let is = [
            ("name", "B"),
            ("step 1", "Read"),
            ("step 2", "Grease"),
            ("step 3", "Push"),
            ("step 4", "Close"),
        ];
        assert_eq!(told(&was, &is), ["step 2, new: Grease", "name A → B"]);
        assert_eq!(told(&is, &was), ["step 2, gone: Grease", "name B → A"]);
    }

    #[test]
    fn what_only_changes_places_is_told_too() {
        assert_eq!(told(&[("a", "1"), ("b", "2")], &[("b", "2"), ("a", "1")]), ["order of texts"]);
        assert_eq!(told(&[("a", "1")], &[("a", "1")]), Vec::<String>::new());
    }
}

//! The mark of each part, and whether two of them can be told apart.

use super::deciding::deciding;
use crate::catalogue::{Catalogue, Limits, Part};
use crate::colour::{Mark, MarkLimits, compare};
use std::collections::{BTreeMap, HashMap};

/// The mark of a part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct PartMark<'a> {
    /// The mark.
    pub(super) mark: &'a Mark,
    /// Whether it is stated to be seen on the assembled fitting.
    pub(super) seen: bool,
}

/// The mark of every part that has one, by its number: stated on it, else that of the first fitting it
/// grips for; a part that works with the gripping part has the mark that all of its fittings state.
#[must_use]
pub fn marks(catalogue: &Catalogue) -> BTreeMap<&str, &Mark> {
    part_marks(catalogue).into_iter().map(|(number, part)| (number, part.mark)).collect()
}

/// The same with whether each is seen on the assembled fitting.
fn part_marks(catalogue: &Catalogue) -> BTreeMap<&str, PartMark<'_>> {
    let stated = |part: &'_ Part| part.mark_seen_after_assembly == Some(true);
    let mut marks: BTreeMap<&str, PartMark<'_>> = BTreeMap::new();
    for part in catalogue.parts.values() {
        if let Some(mark) = &part.mark {
            marks.insert(&part.number, PartMark { mark, seen: stated(part) });
        }
    }
    for fitting in catalogue.fittings.values() {
        let Some(mark) = &fitting.mark else { continue };
        let seen = fitting.mark_seen_after_assembly == Some(true);
        for item in fitting.gripping() {
            marks.entry(&item.part.number).or_insert(PartMark { mark, seen });
        }
    }
    for (number, mark) in stated_alike(catalogue) {
        marks.entry(number).or_insert(mark);
    }
    marks
}

/// For the parts that decide and do not grip: the mark that every fitting they are in states, where it is
/// the same. What is painted on the gripping part alone is not on them.
fn stated_alike(catalogue: &Catalogue) -> BTreeMap<&str, PartMark<'_>> {
    let mut found: BTreeMap<&str, Vec<Option<PartMark<'_>>>> = BTreeMap::new();
    for fitting in catalogue.fittings.values() {
        let stated = fitting.mark.as_ref().filter(|_| fitting.origin.fields.contains_key("mark"));
        let seen = fitting.mark_seen_after_assembly == Some(true);
        for part in deciding(fitting).filter(|part| !part.role.grips()) {
            found.entry(&part.number).or_default().push(stated.map(|mark| PartMark { mark, seen }));
        }
    }
    found.into_iter().filter_map(|(number, marks)| Some((number, the_one(&marks)?))).collect()
}

fn the_one<'m>(marks: &[Option<PartMark<'m>>]) -> Option<PartMark<'m>> {
    let first = (*marks.first()?)?;
    marks.iter().all(|mark| mark.is_some_and(|mark| mark == first)).then_some(first)
}

/// What marks are measured by.
#[must_use]
pub fn mark_limits(limits: &Limits) -> MarkLimits {
    MarkLimits { difference: limits.mark_difference }
}

/// Marks of a catalogue, with the comparisons that were made.
pub(super) struct Marks<'a> {
    by_part: BTreeMap<&'a str, PartMark<'a>>,
    limits: MarkLimits,
    compared: HashMap<(&'a Mark, &'a Mark), bool>,
}

impl<'a> Marks<'a> {
    pub(super) fn of(catalogue: &'a Catalogue) -> Self {
        let limits = mark_limits(&catalogue.settings.limits);
        Self { by_part: part_marks(catalogue), limits, compared: HashMap::new() }
    }

    pub(super) fn of_part(&self, part: &Part) -> Option<PartMark<'a>> {
        self.by_part.get(part.number.as_str()).copied()
    }

    /// Whether both parts have a mark, and nobody can take one for the other.
    pub(super) fn distinct(&mut self, one: &Part, two: &Part) -> bool {
        let (Some(one), Some(two)) = (self.of_part(one), self.of_part(two)) else { return false };
        let (one, two, limits) = (one.mark, two.mark, self.limits);
        *self.compared.entry((one, two)).or_insert_with(|| compare(one, two, limits).distinct())
    }
}

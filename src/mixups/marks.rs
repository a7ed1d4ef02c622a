//! The mark of each part, and whether two of them can be told apart.

use crate::catalogue::{Catalogue, Limits, Part};
use crate::colour::{Mark, MarkLimits, compare};
use std::collections::{BTreeMap, HashMap};

/// The mark of every gripping part that has one, by its number: stated on it, else that of the first
/// fitting it is right for.
#[must_use]
pub fn marks(catalogue: &Catalogue) -> BTreeMap<&str, &Mark> {
    let mut marks: BTreeMap<&str, &Mark> = catalogue
        .parts
        .values()
        .filter_map(|part| part.mark.as_ref().map(|mark| (part.number.as_str(), mark)))
        .collect();
    for fitting in catalogue.fittings.values() {
        let Some(mark) = &fitting.mark else { continue };
        for item in fitting.gripping() {
            marks.entry(&item.part.number).or_insert(mark);
        }
    }
    marks
}

/// What marks are measured by.
#[must_use]
pub fn mark_limits(limits: &Limits) -> MarkLimits {
    MarkLimits { difference: limits.mark_difference }
}

/// Marks of a catalogue, with the comparisons that were made.
pub(super) struct Marks<'a> {
    by_part: BTreeMap<&'a str, &'a Mark>,
    limits: MarkLimits,
    compared: HashMap<(&'a Mark, &'a Mark), bool>,
}

impl<'a> Marks<'a> {
    pub(super) fn of(catalogue: &'a Catalogue) -> Self {
        let limits = mark_limits(&catalogue.settings.limits);
        Self { by_part: marks(catalogue), limits, compared: HashMap::new() }
    }

    pub(super) fn of_part(&self, part: &Part) -> Option<&'a Mark> {
        self.by_part.get(part.number.as_str()).copied()
    }

    /// Whether both parts have a mark, and nobody can take one for the other.
    pub(super) fn distinct(&mut self, one: &Part, two: &Part) -> bool {
        let (Some(one), Some(two)) = (self.of_part(one), self.of_part(two)) else { return false };
        let limits = self.limits;
        *self.compared.entry((one, two)).or_insert_with(|| compare(one, two, limits).distinct())
    }
}

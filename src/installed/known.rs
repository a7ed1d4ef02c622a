//! What is known of each fitting beforehand: parts that could be in it, and what goes together in its closed body.

use crate::catalogue::{Fitting, Part};
use crate::mixups::{Mixups, PossibleInside, Summary, closed_with};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Fittings by their numbers, as far as they were asked for.
pub(super) struct Known<'a> {
    mixups: &'a Mixups,
    parts: BTreeMap<&'a str, Parts<'a>>,
    closed: BTreeMap<String, Arc<Vec<PossibleInside>>>,
}

/// The gripping parts that could be in a fitting, each with what it comes to at its best.
type Parts<'a> = BTreeMap<&'a str, (&'a Arc<Part>, Summary)>;

impl<'a> Known<'a> {
    pub(super) fn of(mixups: &'a Mixups) -> Self {
        let mut parts: BTreeMap<&str, Parts<'_>> = BTreeMap::new();
        for case in mixups.cases().filter(|case| case.part.role.grips()) {
            let of_fitting = parts.entry(&case.fitting.number).or_default();
            let found = of_fitting.entry(&case.part.number).or_insert((&case.part, case.summary));
            found.1 = found.1.min(case.summary);
        }
        Self { mixups, parts, closed: BTreeMap::new() }
    }

    /// The gripping part of this number that could be in a fitting, with what it comes to at its best; `None` where
    /// it goes nowhere there.
    pub(super) fn part(&self, fitting: &'a Fitting, number: &str) -> Option<(Arc<Part>, Summary)> {
        let found = self.parts.get(fitting.number.as_str()).and_then(|parts| parts.get(number));
        let own = || fitting.gripping().find(|item| item.part.number == number);
        match found {
            Some((part, summary)) => Some((Arc::clone(part), *summary)),
            None => own().map(|item| (Arc::clone(&item.part), Summary::Right)),
        }
    }

    /// The numbers of the gripping parts that could be in a fitting.
    pub(super) fn numbers(&self, fitting: &Fitting) -> Vec<String> {
        let parts = self.parts.get(fitting.number.as_str()).into_iter().flatten();
        let own = fitting.gripping().map(|item| item.part.number.clone());
        let mut numbers: Vec<String> = parts.map(|(number, _)| (*number).to_owned()).chain(own).collect();
        numbers.sort();
        numbers.dedup();
        numbers
    }

    /// All that goes together in the closed body of a fitting, as `identify` looks it up.
    pub(super) fn closed(&mut self, fitting: &Fitting) -> Arc<Vec<PossibleInside>> {
        let mixups = self.mixups;
        let found = self.closed.entry(fitting.number.clone()).or_insert_with(|| {
            let bodies = fitting.bodies().filter_map(|item| mixups.body(&item.part.number));
            let inside = bodies.flat_map(|body| {
                fitting.conductors.iter().flat_map(move |conductor| closed_with(body, &conductor.id))
            });
            Arc::new(inside.collect())
        });
        Arc::clone(found)
    }
}

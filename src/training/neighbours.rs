//! Which parts must never lie beside each other in stores: one goes in for the other, and no measurement shows it.

use crate::catalogue::{Catalogue, Part};
use crate::mixups::{Mixups, alike_in_place, decides};
use std::collections::BTreeMap;
use std::sync::Arc;

/// The parts that must never lie beside each other.
pub(super) struct Neighbours<'a> {
    pairs: BTreeMap<&'a str, BTreeMap<&'a str, &'a Part>>,
}

impl<'a> Neighbours<'a> {
    /// Of each hidden mix-up, the part that is put in and the own one whose place it takes.
    pub fn of(catalogue: &'a Catalogue, mixups: &'a Mixups) -> Self {
        let mut pairs: BTreeMap<&str, BTreeMap<&str, &Part>> = BTreeMap::new();
        let mut add = |one: &'a Arc<Part>, other: &'a Arc<Part>| {
            if one.number != other.number {
                pairs.entry(&one.number).or_default().insert(&other.number, other);
                pairs.entry(&other.number).or_default().insert(&one.number, one);
            }
        };
        for case in mixups.cases().filter(|case| case.hidden) {
            let Some(part) = catalogue.parts.get(&case.part.number) else { continue };
            let Some(fitting) = catalogue.fittings.get(&case.fitting.number) else { continue };
            let own = fitting.items.iter().map(|item| &item.part);
            for own in own.filter(|own| decides(own) && alike_in_place(own, part)) {
                add(own, part);
            }
        }
        Self { pairs }
    }

    /// The parts that must never lie beside this one, in the order of their numbers.
    pub fn never_beside(&self, number: &str) -> Vec<&'a Part> {
        self.pairs.get(number).map(|others| others.values().copied().collect()).unwrap_or_default()
    }
}

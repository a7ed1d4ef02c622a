//! What all cards of a catalogue are made from, worked out once for all of them.

use crate::catalogue::{Catalogue, Fitting};
use crate::mixups::{self, LookAlike, Mixups};
use crate::units::Numerals;
use std::collections::BTreeMap;
use std::sync::Arc;

/// What all cards are made from.
pub(super) struct Ground<'a> {
    pub(super) catalogue: &'a Catalogue,
    pub(super) mixups: &'a Mixups,
    pub(super) alikes: Vec<LookAlike>,
    pub(super) numerals: Numerals,
    /// The fittings of each part, by the part's number; every card would otherwise look through all fittings.
    built_with: BTreeMap<&'a str, Vec<&'a Arc<Fitting>>>,
    /// The fittings that each fitting supersedes, by its number.
    superseded: BTreeMap<&'a str, Vec<&'a str>>,
}

impl<'a> Ground<'a> {
    pub(super) fn of(catalogue: &'a Catalogue, mixups: &'a Mixups) -> Self {
        let mut built_with: BTreeMap<&str, Vec<&Arc<Fitting>>> = BTreeMap::new();
        let mut superseded: BTreeMap<&str, Vec<&str>> = BTreeMap::new();
        for fitting in catalogue.fittings.values() {
            for item in &fitting.items {
                built_with.entry(&item.part.number).or_default().push(fitting);
            }
            if let Some(by) = &fitting.superseded_by {
                superseded.entry(by).or_default().push(&fitting.number);
            }
        }
        let numerals = Numerals::new(catalogue.settings.decimal_mark);
        Self { catalogue, mixups, alikes: mixups::look_alikes(catalogue), numerals, built_with, superseded }
    }

    /// The fittings that a part is of, in the order of their numbers.
    pub(super) fn built_with(&self, part: &str) -> &[&'a Arc<Fitting>] {
        self.built_with.get(part).map(Vec::as_slice).unwrap_or_default()
    }

    /// The numbers of the fittings that a fitting supersedes, in their order.
    pub(super) fn superseded_by(&self, fitting: &str) -> Vec<String> {
        let numbers = self.superseded.get(fitting).map(Vec::as_slice).unwrap_or_default();
        numbers.iter().map(|number| (*number).to_owned()).collect()
    }
}

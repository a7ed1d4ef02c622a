//! What belongs together, looked up from the other end: who uses a part, what a notice concerns.

use crate::catalogue::{Catalogue, Conductor, Fitting, Part};
use crate::mixups::Mixups;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Uses of records, by id or number; lists in the order of numbers.
#[derive(Debug, Clone, Default)]
pub(super) struct Uses {
    pub by_conductor: BTreeMap<String, Vec<Arc<Fitting>>>,
    pub by_part: BTreeMap<String, Vec<Arc<Fitting>>>,
    pub by_notice: BTreeMap<String, Vec<Arc<Fitting>>>,
    /// What a fitting replaces.
    pub replaced: BTreeMap<String, Vec<Arc<Fitting>>>,
    /// The shared bodies that a gripping part goes into.
    pub bodies: BTreeMap<String, Vec<Arc<Part>>>,
}

impl Uses {
    pub fn of(catalogue: &Catalogue, mixups: &Mixups) -> Self {
        let mut uses = Self::default();
        for fitting in catalogue.fittings.values() {
            uses.add(fitting);
        }
        for body in &mixups.bodies {
            for part in &body.parts {
                uses.bodies.entry(part.number.clone()).or_default().push(Arc::clone(&body.body));
            }
        }
        uses
    }

    fn add(&mut self, fitting: &Arc<Fitting>) {
        let note = |list: &mut BTreeMap<String, Vec<Arc<Fitting>>>, name: &str| {
            let list = list.entry(name.to_owned()).or_default();
            // Fittings come one after the other.
            if list.last().is_none_or(|last| last.number != fitting.number) {
                list.push(Arc::clone(fitting));
            }
        };
        for conductor in &fitting.conductors {
            note(&mut self.by_conductor, &conductor.id);
        }
        for item in &fitting.items {
            note(&mut self.by_part, &item.part.number);
        }
        for notice in &fitting.notices {
            note(&mut self.by_notice, &notice.number);
        }
        if let Some(number) = &fitting.superseded_by {
            note(&mut self.replaced, number);
        }
    }

    /// The fittings that use a part.
    pub fn of_part(&self, number: &str) -> &[Arc<Fitting>] {
        self.by_part.get(number).map_or(&[], Vec::as_slice)
    }

    /// The conductors that a gripping part is right for, in words.
    pub fn conductors_of(&self, part: &Part) -> Vec<Arc<Conductor>> {
        let mut conductors: Vec<Arc<Conductor>> = Vec::new();
        for conductor in self.of_part(&part.number).iter().flat_map(|fitting| &fitting.conductors) {
            if !conductors.iter().any(|known| known.id == conductor.id) {
                conductors.push(Arc::clone(conductor));
            }
        }
        conductors
    }
}

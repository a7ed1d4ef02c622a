//! Conductors that a caliper can't tell apart.

use super::clues::{Clue, clues, labelled_alike, told_apart};
use crate::catalogue::{Catalogue, Conductor};
use crate::colour::reads_worn;
use crate::units::{Length, Numerals, Range};
use std::sync::Arc;

/// Two conductors whose overall diameters overlap.
#[derive(Debug, Clone)]
pub struct LookAlike {
    /// The one with the earlier id.
    pub one: Arc<Conductor>,
    /// The other.
    pub other: Arc<Conductor>,
    /// The diameters that both can have.
    pub overlap: Range<Length>,
    /// What tells them apart by hand, surest first; empty where nothing does.
    pub clues: Vec<Clue>,
}

impl LookAlike {
    /// Whether something by hand tells them apart.
    #[must_use]
    pub fn settled_by_hand(&self) -> bool {
        !self.clues.is_empty()
    }

    /// Whether their drum tags say the same, and no tracer tells them apart.
    #[must_use]
    pub fn labelled_alike(&self) -> bool {
        labelled_alike(&self.one, &self.other)
    }

    /// Whether their drum tags read the same, be it where they are worn or dirty.
    #[must_use]
    pub fn tags_read_alike(&self) -> bool {
        let [one, other] = [&self.one, &self.other].map(|wire| reads_worn(&wire.identity.drum_tag));
        !one.is_empty() && one == other
    }

    /// What tells them apart in words, or what to do where nothing by hand does; labels where known.
    #[must_use]
    pub fn words(&self, numerals: Numerals) -> String {
        told_apart(&self.one, &self.other, numerals)
    }
}

/// Every two conductors whose overall diameters overlap, in the order of their ids.
///
/// A diameter may be off by its record's tolerance, or by the catalogue's where it states none: a
/// caliper on a line reads no better.
#[must_use]
pub fn look_alikes(catalogue: &Catalogue) -> Vec<LookAlike> {
    let spare = catalogue.settings.limits.diameter_tolerance;
    let numerals = Numerals::new(catalogue.settings.decimal_mark);
    let mut wires: Vec<(Range<Length>, &Arc<Conductor>)> =
        catalogue.conductors.values().map(|wire| (diameters(wire, spare), wire)).collect();
    wires.sort_by(|a, b| a.0.least().total_cmp(&b.0.least()));
    let mut found = Vec::new();
    for (nth, (interval, wire)) in wires.iter().enumerate() {
        let both = |(next, other): &(Range<Length>, _)| Some((interval.overlap(*next)?, *other));
        for (overlap, other) in wires[nth + 1..].iter().map_while(both) {
            found.push(look_alike(wire, other, overlap, numerals));
        }
    }
    found.sort_by(|a, b| (&a.one.id, &a.other.id).cmp(&(&b.one.id, &b.other.id)));
    found
}

fn look_alike(
    wire: &Arc<Conductor>,
    other: &Arc<Conductor>,
    overlap: Range<Length>,
    numerals: Numerals,
) -> LookAlike {
    let (one, other) = if wire.id < other.id { (wire, other) } else { (other, wire) };
    LookAlike { one: Arc::clone(one), other: Arc::clone(other), overlap, clues: clues(one, other, numerals) }
}

fn diameters(wire: &Conductor, spare: Length) -> Range<Length> {
    let (middle, off) = (wire.section.overall_diameter, wire.diameter_tolerance.unwrap_or(spare));
    Range::around(middle, off)
}

//! What a measured conductor can be.

use super::acceptance::{Acceptance, Read, Reading, Test};
use super::clues::{Signs, common_json, signs};
use super::features::{Scratch, Shape};
use super::json::number;
use super::measured::{acceptance, limits, remarks, shape_word};
use crate::catalogue::{Catalogue, Conductor, Fitting, Gaps};
use crate::section::Magnetic;
use crate::units::{Length, Numerals};
use serde_json::{Value, json};
use std::sync::Arc;

/// What is said where no conductor agrees.
const NONE: &str = "no conductor of the catalogue agrees: stop; take no fitting of the catalogue for it";

/// The same where conductors are left out.
const NONE_READ: &str = "no conductor that could be read agrees: stop and ask";
/// What may be otherwise where records are left out.
const OTHERWISE: &str = "it can be another conductor, and there can be other fittings for it";

/// What was measured and seen on a conductor; what was not looked at is `None`.
#[derive(Debug, Clone, PartialEq)]
pub struct Readings {
    /// One caliper reading, or two at right angles.
    pub diameters: Vec<Length>,
    /// How far a reading may be off; 0.1 mm by default.
    pub tolerance: Length,
    /// Wires altogether.
    pub wires: Option<u32>,
    /// Wires seen from outside.
    pub outer_wires: Option<u32>,
    /// Diameter of an outer wire.
    pub wire_diameter: Option<Length>,
    /// Round, grooved, strands of wires.
    pub shape: Option<Shape>,
    /// What a magnet did.
    pub magnetic: Option<Magnetic>,
    /// Colour under a fresh scratch.
    pub scratch: Option<Scratch>,
}

impl Default for Readings {
    fn default() -> Self {
        Self {
            diameters: Vec::new(),
            tolerance: Length::from_mm(0.1),
            wires: None,
            outer_wires: None,
            wire_diameter: None,
            shape: None,
            magnetic: None,
            scratch: None,
        }
    }
}

/// A question that can't be answered, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unanswerable(pub(super) String);

impl std::fmt::Display for Unanswerable {
    fn fmt(&self, formatter: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        formatter.write_str(&self.0)
    }
}

impl std::error::Error for Unanswerable {}

/// What a measured conductor can be.
#[derive(Debug, Clone)]
pub struct Identified {
    /// The conductors that agree with every reading, nearest first.
    pub candidates: Vec<Candidate>,
    /// What the readings themselves give to think about.
    pub remarks: Vec<String>,
    /// What is to be said first where records could not be looked at.
    pub incomplete: Option<String>,
}

/// A conductor that agrees with every reading.
#[derive(Debug, Clone)]
pub struct Candidate {
    /// The conductor.
    pub conductor: Arc<Conductor>,
    /// The fittings for it that may be used.
    pub fittings: Vec<Arc<Fitting>>,
    /// How far its overall diameter is from the reading; of a contact wire that may be worn, its width or the nearest
    /// height.
    pub difference: Length,
    /// What would tell it from the other candidates, or that nothing by hand does.
    pub tell_apart: Vec<String>,
    /// What its own agreement gives to think about, such as that it would be worn.
    pub remarks: Vec<&'static str>,
}

/// Looks for the conductors that agree with readings.
///
/// The mean of the readings may be off a conductor's overall diameter by the tolerance of the reading
/// and that of its record together. A grooved wire may be worn: with two readings its width counts,
/// and its height may be anything down to its stop height.
///
/// # Errors
/// Where a reading is no reading: none or more than two diameters, or one beyond reason.
pub fn identify(catalogue: &Catalogue, readings: &Readings) -> Result<Identified, Unanswerable> {
    if readings.diameters.is_empty() || readings.diameters.len() > 2 {
        return Err(Unanswerable("give one diameter, or two measured at right angles".into()));
    }
    let numerals = Numerals::new(catalogue.settings.decimal_mark);
    let read = read(readings);
    refuse(&limits(), &read, numerals)?;
    let all = catalogue.conductors.values().map(|wire| (wire, acceptance(wire, numerals)));
    let mut found: Vec<(&Arc<Conductor>, Acceptance)> =
        all.filter(|(_, takes)| takes.agrees(&read)).collect();
    found.sort_by(|a, b| {
        (a.1.distance(&read).total_cmp(&b.1.distance(&read))).then_with(|| a.0.id.cmp(&b.0.id))
    });
    let shown: Vec<(&str, Signs)> =
        found.iter().map(|(wire, _)| (wire.id.as_str(), signs(wire, numerals))).collect();
    let candidates = found.iter().zip(&shown).map(|((wire, takes), (_, own))| Candidate {
        conductor: Arc::clone(wire),
        fittings: fittings(catalogue, wire),
        difference: Length::from_mm(takes.distance(&read)),
        tell_apart: tell_apart(&wire.id, own, &shown),
        remarks: takes.remarks(&read),
    });
    let candidates: Vec<Candidate> = candidates.collect();
    let mut said: Vec<String> =
        remarks(catalogue).iter().filter_map(|remark| remark.against(&read, numerals)).collect();
    let incomplete = Gaps::stop(catalogue.gaps.deciding, OTHERWISE);
    if candidates.is_empty() {
        said.push(if incomplete.is_some() { NONE_READ } else { NONE }.to_owned());
    }
    Ok(Identified { candidates, remarks: said, incomplete })
}

/// What a look-up goes by: what every conductor takes and shows, by its id, and what is common to them.
#[must_use]
pub fn measured_json(catalogue: &Catalogue) -> Value {
    let numerals = Numerals::new(catalogue.settings.decimal_mark);
    let tests = |tests: &[Test]| tests.iter().map(Test::to_json).collect::<Vec<_>>();
    let entry = |wire: &Arc<Conductor>| {
        let mut entry = acceptance(wire, numerals).to_json();
        entry["id"] = wire.id.as_str().into();
        entry["signs"] = signs(wire, numerals).to_json();
        entry
    };
    json!({
        "limits": tests(&limits()),
        "remarks": tests(&remarks(catalogue)),
        "none": NONE,
        "apart": common_json(),
        "mark": catalogue.settings.decimal_mark,
        "conductors": catalogue.conductors.values().map(entry).collect::<Vec<_>>(),
    })
}

/// The fittings for a conductor that may be used, or will be again.
pub fn fittings_for<'a>(
    catalogue: &'a Catalogue,
    wire: &'a Conductor,
) -> impl Iterator<Item = &'a Arc<Fitting>> {
    let usable = catalogue.fittings.values();
    let usable = usable.filter(|fitting| !fitting.status.is_out_of_use());
    usable.filter(|fitting| fitting.conductors.iter().any(|held| held.id == wire.id))
}

impl Identified {
    /// As JSON for other programs.
    #[must_use]
    pub fn to_json(&self) -> Value {
        let candidates: Vec<Value> = self
            .candidates
            .iter()
            .map(|candidate| {
                let fittings: Vec<&str> =
                    candidate.fittings.iter().map(|fitting| fitting.number.as_str()).collect();
                let mut entry = json!({
                    "conductor": candidate.conductor.id,
                    "fittings": fittings,
                    "difference_mm": number(candidate.difference),
                    "tell_apart": candidate.tell_apart,
                });
                if !candidate.remarks.is_empty() {
                    entry["remarks"] = json!(candidate.remarks);
                }
                entry
            })
            .collect();
        let remarks: Vec<&String> = self.incomplete.iter().chain(&self.remarks).collect();
        if remarks.is_empty() {
            json!({ "candidates": candidates })
        } else {
            json!({ "candidates": candidates, "remarks": remarks })
        }
    }
}

/// Stops at the first reading that is none.
pub(super) fn refuse(limits: &[Test], read: &Read, numerals: Numerals) -> Result<(), Unanswerable> {
    let refused = |test: &Test| {
        let expected = test.against(read, numerals)?;
        let found = test.of.say(*read.numbers.get(&test.of)?, numerals);
        Some(Unanswerable(format!("found {found}, expected: {expected}")))
    };
    limits.iter().find_map(refused).map_or(Ok(()), Err)
}

fn read(readings: &Readings) -> Read {
    let mut read = Read::default();
    let sizes: Vec<f64> = readings.diameters.iter().map(|diameter| diameter.mm()).collect();
    let (low, high) = sizes
        .iter()
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), size| (size.min(low), size.max(high)));
    let count = f64::from(u32::try_from(sizes.len()).unwrap_or(u32::MAX));
    let counted = |wires: Option<u32>| wires.map(f64::from);
    let numbers = [
        (Reading::Count, Some(count)),
        (Reading::Mean, Some(sizes.iter().sum::<f64>() / count)),
        (Reading::Low, Some(low)),
        (Reading::High, Some(high)),
        (Reading::Apart, Some(high - low)),
        (Reading::Tolerance, Some(readings.tolerance.mm())),
        (Reading::Wires, counted(readings.wires)),
        (Reading::Outer, counted(readings.outer_wires)),
        (Reading::Wire, readings.wire_diameter.map(Length::mm)),
    ];
    read.numbers.extend(numbers.into_iter().filter_map(|(of, number)| Some((of, number?))));
    let words = [
        (Reading::Shape, readings.shape.map(shape_word)),
        (Reading::Magnet, readings.magnetic.map(Magnetic::word)),
        (Reading::Scratch, readings.scratch.map(Scratch::word)),
    ];
    read.words.extend(words.into_iter().filter_map(|(of, word)| Some((of, word?))));
    read
}

fn fittings(catalogue: &Catalogue, wire: &Conductor) -> Vec<Arc<Fitting>> {
    fittings_for(catalogue, wire).cloned().collect()
}

fn tell_apart(id: &str, own: &Signs, all: &[(&str, Signs)]) -> Vec<String> {
    let others = all.iter().filter(|(other, _)| *other != id);
    others.map(|(other, shows)| format!("from {other}: {}", own.against(shows))).collect()
}

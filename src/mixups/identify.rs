//! What a measured conductor can be.

use super::features::{
    Scratch, Shape, magnetic, outer_wires, scratch, shape, told_apart, wire_diameter, wires,
};
use super::json::number;
use crate::catalogue::{Catalogue, Conductor, Fitting, Status};
use crate::section::{Construction, Grooved, Magnetic};
use crate::units::{Length, Numerals};
use serde_json::{Value, json};
use std::sync::Arc;

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
}

/// A conductor that agrees with every reading.
#[derive(Debug, Clone)]
pub struct Candidate {
    /// The conductor.
    pub conductor: Arc<Conductor>,
    /// The fittings for it that may be used.
    pub fittings: Vec<Arc<Fitting>>,
    /// How far its overall diameter is from the reading.
    pub difference: Length,
    /// What would tell it from the other candidates, or that nothing by hand does.
    pub tell_apart: Vec<String>,
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
    check(readings)?;
    let mut found: Vec<(Length, &Arc<Conductor>)> = catalogue
        .conductors
        .values()
        .filter(|wire| agrees(wire, readings))
        .filter_map(|wire| difference(wire, readings).map(|difference| (difference, wire)))
        .collect();
    found.sort_by(|a, b| a.0.total_cmp(&b.0).then_with(|| a.1.id.cmp(&b.1.id)));
    let numerals = Numerals::new(catalogue.settings.decimal_mark);
    let wires: Vec<&Arc<Conductor>> = found.iter().map(|(_, wire)| *wire).collect();
    let candidates = found
        .iter()
        .map(|(difference, wire)| Candidate {
            conductor: Arc::clone(wire),
            fittings: fittings(catalogue, wire),
            difference: *difference,
            tell_apart: tell_apart(wire, &wires, numerals),
        })
        .collect();
    Ok(Identified { candidates, remarks: remarks(readings, wires.len(), numerals) })
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
                json!({
                    "conductor": candidate.conductor.id,
                    "fittings": fittings,
                    "difference_mm": number(candidate.difference),
                    "tell_apart": candidate.tell_apart,
                })
            })
            .collect();
        if self.remarks.is_empty() {
            json!({ "candidates": candidates })
        } else {
            json!({ "candidates": candidates, "remarks": self.remarks })
        }
    }
}

/// A conductor of a line is no thinner than a hair and no thicker than an arm.
pub(super) fn check_length(what: &str, length: Length, most: f64) -> Result<(), Unanswerable> {
    if length.is_finite() && length.mm().abs() <= most {
        Ok(())
    } else {
        Err(Unanswerable(format!("a {what} of {} mm is not possible", length.mm())))
    }
}

fn check(readings: &Readings) -> Result<(), Unanswerable> {
    if readings.diameters.is_empty() || readings.diameters.len() > 2 {
        return Err(Unanswerable("give one diameter, or two measured at right angles".into()));
    }
    for size in readings.diameters.iter().chain(&readings.wire_diameter) {
        check_length("diameter", *size, 200.0)?;
        if size.mm() < 0.1 {
            return Err(Unanswerable(format!("a diameter of {} mm is not possible", size.mm())));
        }
    }
    check_length("tolerance", readings.tolerance, 10.0)?;
    if readings.tolerance < Length::ZERO {
        return Err(Unanswerable("a tolerance can't be negative".into()));
    }
    if [readings.wires, readings.outer_wires].into_iter().flatten().any(|wires| wires == 0 || wires > 2000) {
        return Err(Unanswerable("a conductor has at least one wire, and no more than 2000".into()));
    }
    Ok(())
}

/// Whether everything but the diameter agrees; what a record does not say excludes nothing.
fn agrees(wire: &Conductor, readings: &Readings) -> bool {
    let same = |seen: Option<u32>, known: Option<u32>| seen.is_none() || known.is_none() || seen == known;
    let near = readings.wire_diameter.is_none_or(|seen| {
        let off = readings.tolerance + wire.wire_diameter_tolerance.unwrap_or(Length::ZERO);
        wire_diameter(wire).is_none_or(|known| within(seen - known, off))
    });
    same(readings.wires, wires(wire))
        && same(readings.outer_wires, outer_wires(wire))
        && near
        && readings.shape.is_none_or(|seen| seen == shape(wire))
        && readings.magnetic.is_none_or(|seen| magnetic(wire).is_none_or(|known| pulls_alike(seen, known)))
        && readings.scratch.is_none_or(|seen| scratch(wire).is_none_or(|known| seen == known))
}

/// A slight pull on a hand magnet is told from none and from a strong one only with luck.
fn pulls_alike(seen: Magnetic, known: Magnetic) -> bool {
    seen == known || known == Magnetic::Slight || (seen, known) == (Magnetic::Slight, Magnetic::Yes)
}

/// How far a conductor is from the readings; `None` where it is out of reach.
fn difference(wire: &Conductor, readings: &Readings) -> Option<Length> {
    let off = readings.tolerance + wire.diameter_tolerance.unwrap_or(Length::ZERO);
    let mean = mean(&readings.diameters);
    let plain = (mean - wire.section.overall_diameter).abs();
    if within(plain, off) {
        return Some(plain);
    }
    match &wire.construction {
        Construction::Grooved(grooved) => worn(wire, grooved, readings, off),
        _ => None,
    }
}

/// A worn grooved wire: its width stays, its height lies between new and its stop height.
fn worn(wire: &Conductor, grooved: &Grooved, readings: &Readings, off: Length) -> Option<Length> {
    let stop = wire.wear.as_ref().and_then(|wear| wear.stop_height);
    let lowest = stop.unwrap_or(grooved.height / 2.0) - off;
    match readings.diameters[..] {
        [one, two] => {
            let (low, high) = (one.min(two), one.max(two));
            let across = (high - grooved.width).abs();
            (within(across, off) && low >= lowest && low <= grooved.height + off).then_some(across)
        }
        [only] => {
            let across = (only - grooved.width).abs();
            if within(across, off) {
                return Some(across);
            }
            let seen_as_grooved = readings.shape == Some(Shape::Grooved);
            (seen_as_grooved && only >= lowest && only <= grooved.height).then(|| grooved.height - only)
        }
        _ => None,
    }
}

/// Up to a nanometre over: a reading at the limit counts, whatever the last binary digit.
fn within(difference: Length, most: Length) -> bool {
    difference.abs() <= most + Length::from_mm(1e-9)
}

fn mean(readings: &[Length]) -> Length {
    let sum: Length = readings.iter().copied().sum();
    sum * (1.0 / f64::from(u32::try_from(readings.len()).unwrap_or(1)))
}

fn fittings(catalogue: &Catalogue, wire: &Conductor) -> Vec<Arc<Fitting>> {
    catalogue
        .fittings
        .values()
        .filter(|fitting| matches!(fitting.status, Status::Current | Status::OnHold))
        .filter(|fitting| fitting.conductors.iter().any(|held| held.id == wire.id))
        .cloned()
        .collect()
}

fn tell_apart(wire: &Conductor, candidates: &[&Arc<Conductor>], numerals: Numerals) -> Vec<String> {
    candidates
        .iter()
        .filter(|other| other.id != wire.id)
        .map(|other| format!("from {}: {}", other.id, told_apart(wire, other, numerals)))
        .collect()
}

fn remarks(readings: &Readings, candidates: usize, numerals: Numerals) -> Vec<String> {
    let mut remarks = Vec::new();
    if let [one, two] = readings.diameters[..] {
        let out_of_round = (one - two).abs();
        if out_of_round > readings.tolerance * 2.0 {
            remarks.push(format!(
                "the readings differ by {}: worn, crushed or not round; measure again elsewhere",
                numerals.length(out_of_round, 2)
            ));
        }
    }
    if candidates == 0 {
        remarks
            .push("no conductor of the catalogue agrees: stop; no fitting of the catalogue is for it".into());
    }
    remarks
}

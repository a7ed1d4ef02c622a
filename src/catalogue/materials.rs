//! Materials: the built-in ones, and the catalogue's own.

use super::check::Check;
use super::quantities::{citation, prose, quantity, word};
use crate::records::{Document, Field, MaterialRecord, StrengthRecord, StrengthStepRecord};
use crate::section::{Material, Strength, StrengthStep};

/// What stranding leaves of wires of which no record says it: as of copper by DIN 48201-1.
const STRAND_EFFICIENCY: f64 = 0.95;

/// The material that a document states, where it is sound.
pub(super) fn material(document: &Document<MaterialRecord>, check: &mut Check<'_>) -> Option<Material> {
    let record = document.record.as_ref()?;
    let strength = record.strength.as_ref().map(|field| strength(field, check));
    let strength_as_core = record.strength_as_core.as_ref().map(|field| self::strength(field, check));
    if !check.is_sound() {
        return None;
    }
    Some(Material {
        id: record.id.as_ref()?.value.0.clone(),
        name: record.name.as_ref()?.value.0.clone(),
        group: record.group.as_ref()?.value.into(),
        density: quantity(record.density.as_ref()),
        resistivity_20c: quantity(record.resistivity.as_ref()),
        temperature_coefficient_per_k: word(record.temperature_coefficient.as_ref())
            .map(|number| number.bare()),
        strength,
        contact_wire_strength: Vec::new(),
        strand_efficiency: word(record.strand_efficiency.as_ref())
            .map_or(STRAND_EFFICIENCY, |number| number.bare()),
        strength_as_core,
        magnetic: quantity(record.magnetic.as_ref()),
        hardness_hb: word(record.hardness_hb.as_ref()).map(|number| number.bare()),
        caution: prose(record.caution.as_ref()),
        source: citation(record.source.as_ref()),
    })
}

fn strength(field: &Field<StrengthRecord>, check: &mut Check<'_>) -> Strength {
    let rows = match &field.value {
        StrengthRecord::Constant(strength) => return Strength::Constant((*strength).into()),
        StrengthRecord::Rows(rows) => rows,
    };
    let steps: Vec<StrengthStep> = rows.iter().filter_map(|row| step(&row.value)).collect();
    if rows.is_empty() {
        check.fault("empty-list", field, "this list of strengths is empty", |finding| {
            finding.help("leave the key out, or give a number")
        });
    }
    for (index, pair) in steps.windows(2).enumerate() {
        let rising = matches!((pair[0].up_to, pair[1].up_to), (Some(a), Some(b)) if a < b)
            || pair[0].up_to.is_some() && pair[1].up_to.is_none();
        if !rising {
            check.fault(
                "rows-not-rising",
                &rows[index + 1],
                "this row is not larger than the row above",
                |finding| {
                    finding.expected("a larger `up_to_mm` in each row; only the last row may leave it out")
                },
            );
        }
    }
    Strength::ByDiameter(steps)
}

fn step(row: &StrengthStepRecord) -> Option<StrengthStep> {
    Some(StrengthStep { up_to: quantity(row.up_to.as_ref()), strength: row.strength.as_ref()?.value.into() })
}

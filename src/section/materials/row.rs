//! What rows of built-in materials are written with.

use crate::section::{Citation, Magnetic, Material, MaterialGroup, SizeStep, Strength, StrengthStep};
use crate::units::{Area, Density, Length, Resistivity, Stress};

/// What every material starts from: its name, family, density and source; nothing else is known yet.
pub(super) fn material(
    id: &str,
    name: &str,
    group: MaterialGroup,
    kg_per_m3: f64,
    source: Citation,
) -> Material {
    let magnetic = if group == MaterialGroup::Steel { Magnetic::Yes } else { Magnetic::No };
    Material {
        id: id.into(),
        name: name.into(),
        group,
        density: Some(Density::from_kg_per_m3(kg_per_m3)),
        resistivity_20c: None,
        temperature_coefficient_per_k: None,
        strength: None,
        contact_wire_strength: Vec::new(),
        strand_efficiency: 1.0,
        strength_as_core: None,
        magnetic: Some(magnetic),
        hardness_hb: None,
        caution: String::new(),
        source,
    }
}

pub(super) fn resistivity(nohm_m: f64) -> Option<Resistivity> {
    Some(Resistivity::from_nohm_m(nohm_m))
}

/// One strength for all diameters.
pub(super) fn constant(n_per_mm2: f64) -> Option<Strength> {
    Some(Strength::Constant(Stress::from_n_per_mm2(n_per_mm2)))
}

/// Strength of wires up to each diameter in mm.
pub(super) fn steps(rows: &[(f64, f64)]) -> Option<Strength> {
    let step = |(up_to, strength): &(f64, f64)| StrengthStep {
        up_to: Some(Length::from_mm(*up_to)),
        strength: Stress::from_n_per_mm2(*strength),
    };
    Some(Strength::ByDiameter(rows.iter().map(step).collect()))
}

/// As [`steps`], and a strength of all thicker wires.
pub(super) fn open_steps(rows: &[(f64, f64)], above: f64) -> Option<Strength> {
    let Some(Strength::ByDiameter(mut steps)) = steps(rows) else { return None };
    steps.push(StrengthStep { up_to: None, strength: Stress::from_n_per_mm2(above) });
    Some(Strength::ByDiameter(steps))
}

/// Strength of contact wires up to each nominal section in mm².
pub(super) fn sizes(rows: &[(f64, f64)]) -> Vec<SizeStep> {
    let step = |(up_to, strength): &(f64, f64)| SizeStep {
        up_to: Area::from_mm2(*up_to),
        strength: Stress::from_n_per_mm2(*strength),
    };
    rows.iter().map(step).collect()
}

pub(super) fn cite(standard: &str, edition: &str, note: &str) -> Citation {
    Citation { standard: standard.into(), edition: edition.into(), table: String::new(), note: note.into() }
}

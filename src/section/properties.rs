//! Mass, resistance and breaking load of what is metal.

use super::increments::Increment;
use super::{Citation, LayerRole, Material, Section, Strength};
use crate::units::{Area, Force, Length, LinearMass, LinearResistance, Stress};

/// Metal of one material and one wire diameter.
#[derive(Debug, Clone)]
pub(super) struct Metal<'a> {
    pub area: Area,
    /// Diameter of its round wires; none of a tube or a bar.
    pub wire: Option<Length>,
    pub material: Option<&'a Material>,
    pub increment: Increment,
    pub role: LayerRole,
    pub wires: u32,
}

/// Adds mass, resistance and breaking load where every metal states what they need.
pub(super) fn properties(mut section: Section, metals: &[Metal<'_>]) -> Section {
    section.mass = metals.iter().map(mass).sum::<Option<LinearMass>>();
    section.resistance_20c = resistance(metals);
    section.temperature_coefficient_per_k = section.resistance_20c.and_then(|_| coefficient(metals));
    section.breaking_load = metals.iter().map(load).sum::<Option<Force>>();
    say_increments(&mut section, metals);
    say_properties(&mut section, metals);
    section
}

fn mass(metal: &Metal<'_>) -> Option<LinearMass> {
    let density = metal.material?.density?;
    Some(metal.area * density * metal.increment.mass)
}

/// Resistance of the metals that conduct, side by side.
fn resistance(metals: &[Metal<'_>]) -> Option<LinearResistance> {
    let total = metals.iter().filter(|metal| conducts(metal)).map(conductance).sum::<Option<f64>>()?;
    (total > 0.0).then(|| LinearResistance::from_ohm_per_km(1.0 / total))
}

/// Temperature coefficient of metals side by side at 20 °C: each counts by what it conducts.
fn coefficient(metals: &[Metal<'_>]) -> Option<f64> {
    let parts = metals.iter().filter(|metal| conducts(metal)).map(|metal| {
        let conductance = conductance(metal)?;
        Some((conductance, conductance * metal.material?.temperature_coefficient_per_k?))
    });
    let parts = parts.collect::<Option<Vec<(f64, f64)>>>()?;
    let total: f64 = parts.iter().map(|part| part.0).sum();
    Some(parts.iter().map(|part| part.1).sum::<f64>() / total)
}

/// Whether it counts as a conductor: of cores those that EN 50182 counts, and what may be one of them.
fn conducts(metal: &Metal<'_>) -> bool {
    metal.role == LayerRole::Outer || metal.material.is_none_or(Material::conducts_as_core)
}

/// In km/Ω, with the metal's own stranding increment.
fn conductance(metal: &Metal<'_>) -> Option<f64> {
    let resistance = metal.material?.resistivity_20c? / metal.area * metal.increment.resistance;
    Some(1.0 / resistance.ohm_per_km())
}

fn load(metal: &Metal<'_>) -> Option<Force> {
    Some(metal.area * stress(metal)? * efficiency(metal))
}

/// Strength of its wires; what is no round wire has only a strength that holds whatever the diameter.
fn stress(metal: &Metal<'_>) -> Option<Stress> {
    let material = metal.material?;
    let table = match metal.role {
        LayerRole::Core => material.strength_as_core.as_ref()?,
        LayerRole::Outer => material.strength.as_ref()?,
    };
    match (table, metal.wire) {
        (Strength::Constant(strength), _) => Some(*strength),
        (table, wire) => table.of_wire(wire?),
    }
}

/// A single wire keeps all its strength; a core's is measured in the strand.
fn efficiency(metal: &Metal<'_>) -> f64 {
    match metal.material {
        Some(material) if metal.role == LayerRole::Outer && metal.wires > 1 => material.strand_efficiency,
        _ => 1.0,
    }
}

fn say_increments(section: &mut Section, metals: &[Metal<'_>]) {
    if section.mass.is_none() && section.resistance_20c.is_none() {
        return;
    }
    for metal in metals.iter().filter(|metal| !metal.increment.source.is_empty()) {
        let group = if metals.len() == 1 { "" } else { group_word(metal.role) };
        section.sources.push(format!("stranding increment{group}: {}", metal.increment.source));
    }
}

fn group_word(role: LayerRole) -> &'static str {
    match role {
        LayerRole::Core => " of the core",
        LayerRole::Outer => " of the outer group",
    }
}

fn say_properties(section: &mut Section, metals: &[Metal<'_>]) {
    let mut sources = Vec::new();
    for metal in metals {
        let Some(material) = metal.material else { continue };
        say_mass(section, material, &mut sources);
        say_resistance(section, metal, material, &mut sources);
        if let Some(stress) = stress(metal).filter(|_| section.breaking_load.is_some()) {
            sources.push(say_load(metal, material, stress));
        }
    }
    if !sources.is_empty() {
        sources.extend(cite(metals.iter().filter_map(|metal| metal.material)));
    }
    section.sources.extend(sources);
}

/// Where the figures of materials come from: said once, after what was made of them.
pub(super) fn cite<'a>(materials: impl IntoIterator<Item = &'a Material>) -> Vec<String> {
    let cited = materials.into_iter().filter(|one| one.source != Citation::default());
    cited.map(|material| format!("{}: {}", material.name, material.source)).collect()
}

fn say_mass(section: &Section, material: &Material, sources: &mut Vec<String>) {
    if let Some(density) = material.density.filter(|_| section.mass.is_some()) {
        sources.push(format!("mass: {} kg/m³ of {}", density.kg_per_m3(), material.name));
    }
}

fn say_resistance(section: &Section, metal: &Metal<'_>, material: &Material, sources: &mut Vec<String>) {
    if section.resistance_20c.is_none() {
        return;
    }
    if !conducts(metal) {
        sources.push(format!("resistance: the core of {} is not counted, as in EN 50182", material.name));
    } else if let Some(resistivity) = material.resistivity_20c {
        sources.push(format!("resistance: {} nΩ·m at 20 °C of {}", resistivity.nohm_m(), material.name));
    }
}

fn say_load(metal: &Metal<'_>, material: &Material, stress: Stress) -> String {
    let kind = match metal.role {
        LayerRole::Core => "at 1 % elongation",
        LayerRole::Outer => "wire strength",
    };
    match efficiency(metal) {
        1.0 => say_load_of(stress, kind, material),
        part => say_load_of(stress, &format!("{kind} × {part} for stranding"), material),
    }
}

/// What a breaking load was made of.
pub(super) fn say_load_of(stress: Stress, kind: &str, material: &Material) -> String {
    format!("breaking load: {:.0} N/mm² {kind} of {}", stress.n_per_mm2(), material.name)
}

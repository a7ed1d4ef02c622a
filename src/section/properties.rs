//! Mass, resistance and breaking load of what is metal.

use super::increments::Increment;
use super::{Citation, LayerRole, Material, Section};
use crate::units::{Area, Force, Length, LinearMass, LinearResistance};

/// Metal of one material and one wire diameter.
#[derive(Debug, Clone)]
pub(super) struct Metal<'a> {
    pub area: Area,
    pub diameter: Length,
    pub material: Option<&'a Material>,
    pub increment: Increment,
    pub role: LayerRole,
    pub wires: u32,
}

/// Adds mass, resistance and breaking load where every metal states what they need.
pub(super) fn properties(mut section: Section, metals: &[Metal<'_>]) -> Section {
    section.mass = metals.iter().map(mass).sum::<Option<LinearMass>>();
    section.resistance_20c = resistance(metals);
    let outer = metals.iter().find(|metal| metal.role == LayerRole::Outer).and_then(|metal| metal.material);
    section.temperature_coefficient_per_k =
        section.resistance_20c.and(outer).and_then(|material| material.temperature_coefficient_per_k);
    section.breaking_load = metals.iter().map(load).sum::<Option<Force>>();
    say_increments(&mut section, metals);
    say_properties(&mut section, metals);
    section
}

fn mass(metal: &Metal<'_>) -> Option<LinearMass> {
    let density = metal.material?.density?;
    Some(metal.area * density * metal.increment.mass)
}

/// The metals that conduct, side by side; a steel core is not counted, as EN 50182 does.
fn resistance(metals: &[Metal<'_>]) -> Option<LinearResistance> {
    let mut conductance = 0.0;
    for metal in metals {
        if metal.role == LayerRole::Core && metal.material.is_none_or(|material| material.group.is_iron()) {
            continue;
        }
        let one = metal.material?.resistivity_20c? / metal.area * metal.increment.resistance;
        conductance += 1.0 / one.ohm_per_km();
    }
    (conductance > 0.0).then(|| LinearResistance::from_ohm_per_km(1.0 / conductance))
}

fn load(metal: &Metal<'_>) -> Option<Force> {
    let material = metal.material?;
    let stress = match metal.role {
        LayerRole::Core => material.strength_as_core.as_ref()?.of_wire(metal.diameter)?,
        LayerRole::Outer => material.strength.as_ref()?.of_wire(metal.diameter)?,
    };
    Some(metal.area * stress * efficiency(metal))
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
        if let Some(load) = load(metal).filter(|_| section.breaking_load.is_some()) {
            sources.push(say_load(metal, material, load));
        }
    }
    // Where a material's figures come from is said once, after what was made of them.
    let cited =
        metals.iter().filter_map(|metal| metal.material).filter(|one| one.source != Citation::default());
    let cited: Vec<String> =
        cited.map(|material| format!("{}: {}", material.name, material.source)).collect();
    if !sources.is_empty() {
        sources.extend(cited);
    }
    section.sources.extend(sources);
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
    if metal.role == LayerRole::Core && material.group.is_iron() {
        sources.push(format!("resistance: the core of {} is not counted, as in EN 50182", material.name));
    } else if let Some(resistivity) = material.resistivity_20c {
        sources.push(format!("resistance: {} nΩ·m at 20 °C of {}", resistivity.nohm_m(), material.name));
    }
}

fn say_load(metal: &Metal<'_>, material: &Material, load: Force) -> String {
    let stress = load / metal.area / efficiency(metal);
    let kept = match efficiency(metal) {
        1.0 => String::new(),
        part => format!(" × {part} for stranding"),
    };
    let kind = match metal.role {
        LayerRole::Core => "at 1 % elongation",
        LayerRole::Outer => "wire strength",
    };
    format!("breaking load: {:.0} N/mm² {kind}{kept} of {}", stress.n_per_mm2(), material.name)
}

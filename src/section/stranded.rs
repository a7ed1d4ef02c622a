//! Conductors of round wires in layers: of one group, or of a core and an outer group.

use super::increments::{self, Increment};
use super::layers::{from_centre, outer_radius, round_core};
use super::properties::{Metal, properties};
use super::result::plain;
use super::{Composite, Group, Layer, LayerRole, Material, Section, SectionError};
use crate::units::{Area, Length};

/// Computes a conductor of one group of wires.
pub(super) fn stranded(group: &Group, material: Option<&Material>) -> Result<Section, SectionError> {
    let key = "construction.stranded";
    let layers = from_centre(group, LayerRole::Outer, key)?;
    let increment = increments::of_stranded(group, &layers, key)?;
    let mut section = round_wires(layers);
    section.sources.push("metal section: Σ n·πd²/4 over the layers".into());
    let metal = wires_of(group, &section.layers, LayerRole::Outer, material, increment);
    Ok(properties(section, &[metal]))
}

/// Computes a conductor of a core and an outer group.
pub(super) fn composite(composite: &Composite, material: Option<&Material>) -> Result<Section, SectionError> {
    let (core_key, outer_key) = ("construction.composite.core", "construction.composite.outer");
    let core = from_centre(&composite.core, LayerRole::Core, core_key)?;
    let core_radius = core.last().map_or(Length::ZERO, outer_radius);
    let outer = round_core(&composite.outer, core_radius, outer_key)?;
    let core_increment = increments::of_core(&composite.core, &core, core_key)?;
    let outer_increment =
        increments::of_outer(&composite.outer, &outer, increments::count(&core), outer_key)?;
    let mut section = round_wires([core, outer].concat());
    let core_material = composite.core_material.as_deref();
    let core = wires_of(&composite.core, &section.layers, LayerRole::Core, core_material, core_increment);
    let outer = wires_of(&composite.outer, &section.layers, LayerRole::Outer, material, outer_increment);
    section.core = Some(core.area);
    section.outer = Some(outer.area);
    section.sources.push("metal section: Σ n·πd²/4 over the layers of core and outer group".into());
    Ok(properties(section, &[core, outer]))
}

/// The geometry of layers of round wires.
fn round_wires(layers: Vec<Layer>) -> Section {
    let metal = layers.iter().map(area).sum();
    let radius = layers.last().map_or(Length::ZERO, outer_radius);
    let mut section = plain(metal, radius * 2.0);
    section.layers = layers;
    section
}

fn area(layer: &Layer) -> Area {
    layer.wire_diameter.circle_area() * f64::from(layer.wires)
}

fn wires_of<'a>(
    group: &Group,
    layers: &[Layer],
    role: LayerRole,
    material: Option<&'a Material>,
    increment: Increment,
) -> Metal<'a> {
    let of_role = || layers.iter().filter(|layer| layer.role == role);
    Metal {
        area: of_role().map(area).sum(),
        wire: Some(group.wire_diameter),
        material,
        increment,
        role,
        wires: of_role().map(|layer| layer.wires).sum(),
    }
}

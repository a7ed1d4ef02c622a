//! Everything that is computed of a conductor, from its construction and its material.

use super::error::check_size;
use super::increments::{self, Increment};
use super::layers::{from_centre, outer_radius, round_core};
use super::properties::{Metal, properties};
use super::{Composite, Construction, Grooved, Group, Layer, LayerRole, Material, Section, SectionError};
use super::{profile, rope};
use crate::units::{Area, Length};

/// Computes a conductor.
///
/// Geometry needs no material; mass, resistance and breaking load are there where the material states
/// what they need. A rope has mass and breaking load of its own (EN 12385-2, -4). The formulas and
/// standards that were used are named in [`Section::sources`]. For the section of a conductor whose
/// wires have a tolerance see [`super::with_wire_tolerance`].
///
/// # Errors
/// Where a size is no size, wires have no usual arrangement, or a layer does not fit: with the key concerned.
///
/// # Examples
/// ```
/// use fittingcards::section::{Construction, Group, Strands, compute, materials};
/// use fittingcards::units::Length;
///
/// let construction = Construction::Stranded(Group {
///     strands: Strands::Wires(19),
///     wire_diameter: Length::from_mm(2.80),
///     lay_ratios: Vec::new(),
/// });
/// let copper = materials::find("copper-hard-drawn").expect("built in");
/// let section = compute(&construction, Some(copper))?;
/// assert_eq!(format!("{:.2} mm²", section.metal.mm2()), "116.99 mm²");
/// assert_eq!(format!("{:.1} mm", section.overall_diameter.mm()), "14.0 mm");
/// assert_eq!(format!("{:.2} mm²", section.circle.mm2()), "153.94 mm²");
/// assert_eq!(format!("{:.2}", section.fill_ratio), "0.76");
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
pub fn compute(construction: &Construction, material: Option<&Material>) -> Result<Section, SectionError> {
    match construction {
        Construction::Solid { diameter } => solid(*diameter, material),
        Construction::Stranded(group) => stranded(group, material),
        Construction::Composite(composite) => self::composite(composite, material),
        Construction::Rope(rope) => rope::section(rope, material),
        Construction::Grooved(grooved) => self::grooved(grooved, material),
        Construction::Tube { outside_diameter, wall } => tube(*outside_diameter, *wall, material),
        Construction::Bar { width, thickness, corner_radius } => {
            bar(*width, *thickness, *corner_radius, material)
        }
    }
}

/// A section with its geometry only.
pub(super) fn plain(metal: Area, overall_diameter: Length) -> Section {
    let circle = overall_diameter.circle_area();
    Section {
        metal,
        band: None,
        overall_diameter,
        circle,
        fill_ratio: metal / circle,
        outer: None,
        core: None,
        mass: None,
        resistance_20c: None,
        temperature_coefficient_per_k: None,
        breaking_load: None,
        layers: Vec::new(),
        neck: None,
        sources: Vec::new(),
    }
}

/// Adds the properties of a conductor that is one piece of metal.
fn one_piece(section: Section, metal: Area, diameter: Length, material: Option<&Material>) -> Section {
    let increment = Increment { mass: 1.0, resistance: 1.0, source: String::new() };
    properties(
        section,
        &[Metal { area: metal, diameter, material, increment, role: LayerRole::Outer, wires: 1 }],
    )
}

fn solid(diameter: Length, material: Option<&Material>) -> Result<Section, SectionError> {
    check_size("construction.solid", "diameter_mm", diameter)?;
    let mut section = plain(diameter.circle_area(), diameter);
    section.layers =
        vec![Layer { wires: 1, pitch_radius: Length::ZERO, wire_diameter: diameter, role: LayerRole::Outer }];
    section.sources.push("metal section: πd²/4".into());
    let metal = section.metal;
    Ok(one_piece(section, metal, diameter, material))
}

fn grooved(grooved: &Grooved, material: Option<&Material>) -> Result<Section, SectionError> {
    let profile = profile::profile(grooved)?;
    let mut section = plain(profile.area, grooved.height);
    section.neck = profile.groove.map(|groove| groove.neck);
    section.sources.push("metal section: circle on the height less two grooves, exact arcs and lines".into());
    let difference = grooved.width - grooved.height;
    if difference.abs() > Length::from_mm(0.005) {
        section.sources.push(format!(
            "the profile is the circle on the height; the stated width departs from it by {:+.2} mm",
            difference.mm()
        ));
    }
    Ok(one_piece(section, profile.area, grooved.height, material))
}

fn tube(outside: Length, wall: Length, material: Option<&Material>) -> Result<Section, SectionError> {
    check_size("construction.tube", "outside_diameter_mm", outside)?;
    check_size("construction.tube", "wall_mm", wall)?;
    if wall > outside / 2.0 {
        return Err(SectionError::new(
            "construction.tube.wall_mm",
            "the wall is thicker than the tube's radius",
        )
        .found(format!("{} mm", wall.mm()))
        .expected(format!("at most {} mm", outside.mm() / 2.0)));
    }
    let mut section = plain((outside - wall) * wall * std::f64::consts::PI, outside);
    section.sources.push("metal section: π(D − w)w".into());
    let metal = section.metal;
    Ok(one_piece(section, metal, outside, material))
}

fn bar(
    width: Length,
    thickness: Length,
    corner: Length,
    material: Option<&Material>,
) -> Result<Section, SectionError> {
    check_size("construction.bar", "width_mm", width)?;
    check_size("construction.bar", "thickness_mm", thickness)?;
    let shorter = width.min(thickness);
    if !(corner >= Length::ZERO && corner <= shorter / 2.0) {
        return Err(SectionError::new(
            "construction.bar.corner_radius_mm",
            "such corners do not fit the bar",
        )
        .found(format!("{} mm", corner.mm()))
        .expected(format!("0 to {} mm", shorter.mm() / 2.0)));
    }
    let rounding = corner * 2.0;
    let diagonal = (width - rounding).mm().hypot((thickness - rounding).mm());
    let metal = width * thickness - corner * corner * (4.0 - std::f64::consts::PI);
    let mut section = plain(metal, Length::from_mm(diagonal) + rounding);
    section.sources.push("metal section: ab − (4 − π)r²".into());
    Ok(one_piece(section, metal, shorter, material))
}

pub(super) fn stranded(group: &Group, material: Option<&Material>) -> Result<Section, SectionError> {
    let key = "construction.stranded";
    let layers = from_centre(group, LayerRole::Outer, key)?;
    let increment = increments::of_stranded(group, &layers, key)?;
    let mut section = round_wires(layers);
    section.sources.push("metal section: Σ n·πd²/4 over the layers".into());
    let metal = wires_of(group, &section.layers, LayerRole::Outer, material, increment);
    Ok(properties(section, &[metal]))
}

fn composite(composite: &Composite, material: Option<&Material>) -> Result<Section, SectionError> {
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
        diameter: group.wire_diameter,
        material,
        increment,
        role,
        wires: of_role().map(|layer| layer.wires).sum(),
    }
}

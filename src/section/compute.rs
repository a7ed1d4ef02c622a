//! Everything that is computed of a conductor, from its construction and its material.

use super::error::check_size;
use super::increments::Increment;
use super::properties::{Metal, properties};
use super::result::plain;
use super::{Construction, Layer, LayerRole, Material, Section, SectionError};
use super::{contact_wire, rope, stranded};
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
        Construction::Stranded(group) => stranded::stranded(group, material),
        Construction::Composite(composite) => stranded::composite(composite, material),
        Construction::Rope(rope) => rope::section(rope, material),
        Construction::Grooved(grooved) => contact_wire::section(grooved, material, None),
        Construction::Tube { outside_diameter, wall } => tube(*outside_diameter, *wall, material),
        Construction::Bar { width, thickness, corner_radius } => {
            bar(*width, *thickness, *corner_radius, material)
        }
    }
}

/// Computes a conductor that has a nominal size: as [`compute`], but a grooved contact wire of an EN 50149 material
/// has the load and the resistance that the standard gives for that size, F = 0.97·S·R_m and R = ρ/(0.97·S). Its
/// section stays the computed one.
///
/// # Errors
/// As [`compute`].
///
/// # Examples
/// ```
/// use fittingcards::section::{Construction, Grooved, compute_for_size, materials};
/// use fittingcards::units::{Angle, Area, Length};
///
/// let wire = Construction::Grooved(Grooved {
///     height: Length::from_mm(12.85),
///     width: Length::from_mm(12.85),
///     apex_width: Length::from_mm(6.80),
///     apex_depth: Length::from_mm(4.35),
///     fillet: Length::from_mm(0.40),
///     lower_flank: Angle::from_degrees(27.0),
///     upper_flank: Angle::from_degrees(51.0),
/// });
/// let material = materials::find("copper-silver-0.1");
/// let section = compute_for_size(&wire, material, Some(Area::from_mm2(120.0)))?;
/// // EN 50149:2012, copper-silver 120 mm²: at least 41.9 kN, at most 0.153 Ω/km.
/// assert_eq!(format!("{:.1}", section.breaking_load.expect("known").kn()), "41.9");
/// assert_eq!(format!("{:.3}", section.resistance_20c.expect("known").ohm_per_km()), "0.153");
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
pub fn compute_for_size(
    construction: &Construction,
    material: Option<&Material>,
    nominal: Option<Area>,
) -> Result<Section, SectionError> {
    match construction {
        Construction::Grooved(grooved) => contact_wire::section(grooved, material, nominal),
        _ => compute(construction, material),
    }
}

/// Adds the properties of a conductor that is one piece of metal.
///
/// `wire` is the diameter of a round wire; what is none has no strength of a wire.
fn one_piece(section: Section, wire: Option<Length>, material: Option<&Material>) -> Section {
    let area = section.metal;
    let increment = Increment { mass: 1.0, resistance: 1.0, source: String::new() };
    properties(section, &[Metal { area, wire, material, increment, role: LayerRole::Outer, wires: 1 }])
}

fn solid(diameter: Length, material: Option<&Material>) -> Result<Section, SectionError> {
    check_size("construction.solid", "diameter_mm", diameter)?;
    let mut section = plain(diameter.circle_area(), diameter);
    section.layers =
        vec![Layer { wires: 1, pitch_radius: Length::ZERO, wire_diameter: diameter, role: LayerRole::Outer }];
    section.sources.push("metal section: πd²/4".into());
    Ok(one_piece(section, Some(diameter), material))
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
    Ok(one_piece(section, None, material))
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
            "these corners do not fit the bar",
        )
        .found(format!("{} mm", corner.mm()))
        .expected(format!("0 to {} mm", shorter.mm() / 2.0)));
    }
    let rounding = corner * 2.0;
    let diagonal = (width - rounding).mm().hypot((thickness - rounding).mm());
    let metal = width * thickness - corner * corner * (4.0 - std::f64::consts::PI);
    let mut section = plain(metal, Length::from_mm(diagonal) + rounding);
    section.sources.push("metal section: ab − (4 − π)r²".into());
    Ok(one_piece(section, None, material))
}

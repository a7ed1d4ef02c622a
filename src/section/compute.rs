//! Everything that is computed of a conductor, from its construction and its material.

use super::error::check_size;
use super::increments::Increment;
use super::properties::{Metal, properties};
use super::result::plain;
use super::{Construction, Grooved, Layer, LayerRole, Material, Section, SectionError};
use super::{profile, rope, stranded};
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
        Construction::Grooved(grooved) => self::grooved(grooved, material),
        Construction::Tube { outside_diameter, wall } => tube(*outside_diameter, *wall, material),
        Construction::Bar { width, thickness, corner_radius } => {
            bar(*width, *thickness, *corner_radius, material)
        }
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

//! Everything that is computed of a conductor, from its construction and its material.

use super::error::check_size;
use super::increments::{self, Increment};
use super::layers::{from_centre, outer_radius, round_core};
use super::properties::{Metal, properties};
use super::{Band, Composite, Construction, Group, Layer, LayerRole, Material, Rope, Section, SectionError};
use super::{profile, rope};
use crate::units::{Area, Density, Force, Length, LinearMass};

/// Computes a conductor.
///
/// Geometry needs no material; mass, resistance and breaking load are there where the material states
/// what they need. A rope has mass and breaking load of its own (EN 12385-2, -4). The formulas and
/// standards that were used are named in [`Section::sources`]. For the section of a conductor whose
/// wires have a tolerance see [`with_wire_tolerance`].
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
        Construction::Rope(rope) => self::rope(rope, material),
        Construction::Grooved(grooved) => {
            let profile = profile::profile(grooved)?;
            let mut section = plain(profile.area, grooved.height);
            section.neck = profile.groove.as_ref().map(|groove| groove.neck);
            section
                .sources
                .push("metal section: circle on the height less two grooves, exact arcs and lines".into());
            if (grooved.width - grooved.height).abs() > Length::from_mm(0.005) {
                section.sources.push(format!(
                    "the profile is taken as the circle on the height; the stated width differs from it by {:.2} mm",
                    (grooved.width - grooved.height).mm()
                ));
            }
            Ok(one_piece(section, profile.area, grooved.height, material))
        }
        Construction::Tube { outside_diameter, wall } => tube(*outside_diameter, *wall, material),
        Construction::Bar { width, thickness, corner_radius } => {
            bar(*width, *thickness, *corner_radius, material)
        }
    }
}

/// Computes a conductor whose round wires have a tolerance on their diameter.
///
/// The same as [`compute`], with [`Section::band`] filled for solid, stranded and composite conductors:
/// S(1 ± 2t/d) to first order, group by group.
///
/// # Errors
/// As [`compute`]; and where the tolerance is negative or not smaller than the wire.
///
/// # Examples
/// ```
/// use fittingcards::section::{Construction, with_wire_tolerance};
/// use fittingcards::units::Length;
///
/// let wire = Construction::Solid { diameter: Length::from_mm(8.0) };
/// let band = with_wire_tolerance(&wire, None, Length::from_mm(0.04))?.band.expect("a round wire");
/// assert!((band.most.mm2() / band.least.mm2() - 1.01 / 0.99).abs() < 1e-9);
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
pub fn with_wire_tolerance(
    construction: &Construction,
    material: Option<&Material>,
    tolerance: Length,
) -> Result<Section, SectionError> {
    let mut section = compute(construction, material)?;
    let groups: Vec<(Area, Length)> = match construction {
        Construction::Solid { diameter } => vec![(section.metal, *diameter)],
        Construction::Stranded(group) => vec![(section.metal, group.wire_diameter)],
        Construction::Composite(composite) => {
            let areas = [section.core, section.outer].map(Option::unwrap_or_default);
            vec![(areas[0], composite.core.wire_diameter), (areas[1], composite.outer.wire_diameter)]
        }
        _ => return Ok(section),
    };
    if groups.iter().any(|(_, wire)| !(tolerance >= Length::ZERO && tolerance < *wire / 2.0)) {
        return Err(SectionError::new("tolerance.wire_diameter_mm", "this is no tolerance on these wires")
            .found(format!("{} mm", tolerance.mm()))
            .expected("0 mm or more, and far less than the wire's diameter"));
    }
    let spread: Area = groups.iter().map(|(area, wire)| *area * (2.0 * (tolerance / *wire))).sum();
    section.band = Some(Band { least: section.metal - spread, most: section.metal + spread });
    section
        .sources
        .push(format!("tolerance band: S(1 ± 2t/d) with t = {} mm on the wire diameter", tolerance.mm()));
    Ok(section)
}

/// A section with its geometry only.
fn plain(metal: Area, overall_diameter: Length) -> Section {
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

fn stranded(group: &Group, material: Option<&Material>) -> Result<Section, SectionError> {
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

/// Density of steel that the mass factors of EN 12385-2 hold for.
const ROPE_STEEL: Density = Density::from_kg_per_m3(7850.0);

fn rope(rope: &Rope, material: Option<&Material>) -> Result<Section, SectionError> {
    let class = rope::class(rope)?;
    if rope::is_single(class) {
        return single_strand(rope, class, material);
    }
    let (factors, row) = rope::factors(class, rope.core).ok_or_else(|| {
        SectionError::new(
            "construction.rope.core",
            format!("there are no factors for {} with this core", rope.class),
        )
        .expected("wsc, iwrc or fibre")
    })?;
    let square = rope.diameter * rope.diameter;
    let metal = factors.area.map_or(Area::ZERO, |factor| square * factor);
    let mut section = plain(metal, rope.diameter);
    section
        .sources
        .push(format!("metal section: C·d², EN 12385-4 {row}, C = {}", factors.area.unwrap_or_default()));
    if let Some(factor) = factors.mass {
        let steel = material.and_then(|material| material.density).unwrap_or(ROPE_STEEL);
        let heavier =
            if material.is_some_and(|material| material.group.is_iron()) { 1.0 } else { steel / ROPE_STEEL };
        section.mass = Some(LinearMass::from_kg_per_100m(square.mm2() * factor * heavier));
        section.sources.push(format!("mass: W·d², EN 12385-4 {row}, W = {factor} kg/100 m"));
    }
    if let (Some(factor), Some(grade)) = (factors.breaking, rope.grade) {
        section.breaking_load = Some(Force::from_newtons(square.mm2() * factor * grade.n_per_mm2()));
        section.sources.push(format!(
            "breaking load: K·d²·R, EN 12385-4 {row}, K = {factor}, rope grade {} N/mm²",
            grade.n_per_mm2()
        ));
    }
    Ok(section)
}

/// A rope that is one strand has the section of its wires; the standard gives it no breaking load.
fn single_strand(
    rope: &Rope,
    class: rope::Class,
    material: Option<&Material>,
) -> Result<Section, SectionError> {
    let mut section = stranded(&rope::single_strand(rope, class)?, material)?;
    section.breaking_load = None;
    section.sources.retain(|source| !source.starts_with("breaking load"));
    Ok(section)
}

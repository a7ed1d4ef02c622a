//! Wire ropes: classes as written, and what the standard's factors make of them.

use super::error::check_size;
use super::rope_factors::{self, Factors};
use super::{Group, Material, Rope, RopeCore, Section, SectionError, Strands, result, stranded};
use crate::units::{Area, Density, Force, LinearMass};

/// A class, taken apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Class {
    /// Strands round the core; 1 for a single strand.
    pub strands: u32,
    /// Wires in a strand.
    pub wires: u32,
    /// How a strand's wires lie.
    pub lay: Lay,
}

/// How the wires of a strand lie.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Lay {
    /// As the class leaves it.
    Plain,
    /// Cross lay in layers of equal wires, M.
    Cross,
    /// Compound lay, N.
    Compound,
    /// Seale, S.
    Seale,
    /// Warrington, W.
    Warrington,
    /// Filler, F.
    Filler,
    /// Warrington-Seale, WS.
    WarringtonSeale,
}

const KNOWN: &str = "1x7, 1x19, 1x37, 6x7, 7x7, 8x7, 18x7, 34x7, 6x19, 6x19M, 7x19, 8x19, 6x35N, 6x36, 6x37M, 8x36, \
                     or a construction of these classes such as 6x36WS";

/// Takes a rope's class apart, and refuses a class, core or diameter that no rope has.
pub(super) fn class(rope: &Rope) -> Result<Class, SectionError> {
    check_size("construction.rope", "diameter_mm", rope.diameter)?;
    if rope.grade.is_some_and(|grade| !(100.0..=4000.0).contains(&grade.n_per_mm2())) {
        return Err(SectionError::new("construction.rope.grade_N_per_mm2", "this can't be a rope grade")
            .expected("100 to 4000 N/mm²; usually 1570, 1770 or 1960"));
    }
    let class = parse(&rope.class).filter(|class| is_single(*class) || table_class(*class).is_some());
    let class = class.ok_or_else(|| {
        SectionError::new(
            "construction.rope.construction",
            format!("no class of ropes is called `{}`", rope.class),
        )
        .found(rope.class.clone())
        .expected(KNOWN)
        .help(no_factors(&rope.class))
    })?;
    if class.strands == 7 && rope.core != RopeCore::Wsc {
        return Err(SectionError::new(
            "construction.rope.core",
            "seven equal strands have a strand as their core",
        )
        .expected("wsc")
        .help(format!("write `core: wsc`, or `construction: 6x{}` for another core", class.wires)));
    }
    Ok(class)
}

/// Why a class that ropes do have has no factors here.
fn no_factors(class: &str) -> &'static str {
    if class.contains(['K', 'k']) {
        "K says that strands or rope are compacted: EN 12385-4 has no factors for that; take section, mass and load \
         from the rope's certificate"
    } else {
        ""
    }
}

/// One strand alone: its section is geometric.
pub(super) fn is_single(class: Class) -> bool {
    class.strands == 1
}

fn parse(text: &str) -> Option<Class> {
    let text = text.trim();
    let (strands, rest) = text.split_once(['x', 'X', '×'])?;
    let digits = rest.find(|letter: char| !letter.is_ascii_digit()).unwrap_or(rest.len());
    let lay = match &rest[digits..] {
        "" => Lay::Plain,
        "M" => Lay::Cross,
        "N" => Lay::Compound,
        "S" => Lay::Seale,
        "W" => Lay::Warrington,
        "F" | "Fi" => Lay::Filler,
        "WS" => Lay::WarringtonSeale,
        _ => return None,
    };
    Some(Class { strands: strands.parse().ok()?, wires: rest[..digits].parse().ok()?, lay })
}

/// The class of the standard that a construction belongs to. Classes 6x19 and 8x19 cover Seale, Warrington
/// and Filler strands of 15 to 26 wires, 6x36 and 8x36 Warrington-Seale strands of 29 to 57 (from memory).
fn table_class(class: Class) -> Option<&'static str> {
    let parallel = matches!(class.lay, Lay::Seale | Lay::Warrington | Lay::Filler | Lay::WarringtonSeale);
    match (class.strands, class.wires, class.lay) {
        (6 | 7, 7, Lay::Plain) => Some("6x7"),
        (8, 7, Lay::Plain) => Some("8x7"),
        (18, 7, Lay::Plain) => Some("18x7"),
        (34, 7, Lay::Plain) => Some("34x7"),
        (7, 19, Lay::Plain | Lay::Cross) | (6, 19, Lay::Cross) => Some("6x19M"),
        (6, 35, Lay::Compound) => Some("6x35N"),
        (6, 37, Lay::Cross) => Some("6x37M"),
        (6, 19, Lay::Plain) => Some("6x19"),
        (8, 19, Lay::Plain) => Some("8x19"),
        (6, 36, Lay::Plain) => Some("6x36"),
        (8, 36, Lay::Plain) => Some("8x36"),
        (6, 15..=26, _) if parallel => Some("6x19"),
        (8, 15..=26, _) if parallel => Some("8x19"),
        (6, 29..=57, _) if parallel => Some("6x36"),
        (8, 29..=57, _) if parallel => Some("8x36"),
        _ => None,
    }
    .filter(|_| !is_single(class))
}

/// The wires of a rope that is one strand.
pub(super) fn single_strand(rope: &Rope, class: Class) -> Result<Group, SectionError> {
    let layers = [7_u32, 19, 37].into_iter().zip([3.0, 5.0, 7.0]).find(|(wires, _)| *wires == class.wires);
    match layers {
        Some((wires, across)) if matches!(class.lay, Lay::Plain) => Ok(Group {
            strands: Strands::Wires(wires),
            wire_diameter: rope.diameter / across,
            lay_ratios: Vec::new(),
        }),
        _ => {
            Err(SectionError::new("construction.rope.construction", "a single strand has 7, 19 or 37 wires")
                .found(rope.class.clone())
                .expected("1x7, 1x19 or 1x37"))
        }
    }
}

/// Metal section of a rope of several strands, C·d².
pub(super) fn metal(rope: &Rope, class: Class) -> Option<Area> {
    let (factors, _) = factors(rope, class)?;
    Some(rope.diameter * rope.diameter * factors.area)
}

/// Density of steel that the mass factors of EN 12385-4 hold for.
const STEEL: Density = Density::from_kg_per_m3(7850.0);

/// Computes a rope: section, mass and breaking load by the factors of its class and core.
pub(super) fn section(rope: &Rope, material: Option<&Material>) -> Result<Section, SectionError> {
    let class = class(rope)?;
    if is_single(class) {
        return single_section(rope, class, material);
    }
    let Some((factors, row)) = factors(rope, class) else {
        return Err(SectionError::new(
            "construction.rope.core",
            format!("there are no factors for {} with this core", rope.class),
        ));
    };
    let square = rope.diameter * rope.diameter;
    let mut section = result::plain(square * factors.area, rope.diameter);
    section.sources.push(format!("metal section: C·d², EN 12385-4 {row}, C = {}", factors.area));
    section.mass = Some(LinearMass::from_kg_per_100m(square.mm2() * factors.mass) * against_steel(material));
    section.sources.push(say_mass(factors.mass, &row, against_steel(material)));
    if let Some(grade) = rope.grade {
        let (factor, grade) = (factors.breaking, grade.n_per_mm2());
        section.breaking_load = Some(Force::from_newtons(square.mm2() * factor * grade));
        section
            .sources
            .push(format!("breaking load: K·d²·R, EN 12385-4 {row}, K = {factor}, rope grade {grade} N/mm²"));
    }
    Ok(section)
}

/// How much heavier than steel a rope's material is; every iron counts as steel.
fn against_steel(material: Option<&Material>) -> f64 {
    let other = material.filter(|material| !material.group.is_iron());
    other.and_then(|material| material.density).map_or(1.0, |density| density / STEEL)
}

fn say_mass(factor: f64, row: &str, against_steel: f64) -> String {
    let scaled = match against_steel {
        1.0 => String::new(),
        other => format!(", × {other:.3} for a material that is not steel"),
    };
    format!("mass: W·d², EN 12385-4 {row}, W = {factor} kg/100 m{scaled}")
}

/// A rope that is one strand has the section of its wires; the standard gives it no breaking load.
fn single_section(rope: &Rope, class: Class, material: Option<&Material>) -> Result<Section, SectionError> {
    let mut section = stranded::stranded(&single_strand(rope, class)?, material)?;
    section.breaking_load = None;
    section.sources.retain(|source| !source.starts_with("breaking load"));
    Ok(section)
}

fn factors(rope: &Rope, class: Class) -> Option<(Factors, String)> {
    rope_factors::factors(table_class(class)?, rope.core)
}

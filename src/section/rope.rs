//! Wire ropes: classes as written, and the factors that EN 12385-4 gives a class with its core.

use super::error::check_size;
use super::{Group, Rope, RopeCore, SectionError, Strands};
use crate::units::Area;

/// What the standard says of a class with its core; what it does not print is `None`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Factors {
    /// kg per 100 m and mm² of nominal diameter squared.
    pub mass: Option<f64>,
    /// Metal section over the square of the nominal diameter.
    pub area: Option<f64>,
    /// Breaking load over the square of the nominal diameter and the rope grade.
    pub breaking: Option<f64>,
}

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
    /// Seale, S.
    Seale,
    /// Warrington, W.
    Warrington,
    /// Filler, F.
    Filler,
    /// Warrington-Seale, WS.
    WarringtonSeale,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Core {
    Fibre,
    Steel,
    Strand,
}

type Row = (&'static str, Core, Option<f64>, Option<f64>, Option<f64>);

/// EN 12385-4, read in reprints: W, C and K by class and core. Two reprints disagree on W of 6x19M and
/// 6x37M; the first one is kept.
#[allow(clippy::approx_constant, reason = "0.318 is a factor of the standard, not 1/π")]
const FACTORS: &[Row] = &[
    ("6x7", Core::Fibre, Some(0.345), Some(0.369), Some(0.332)),
    ("6x7", Core::Steel, Some(0.384), Some(0.432), Some(0.359)),
    ("6x7", Core::Strand, Some(0.384), Some(0.432), Some(0.388)),
    ("8x7", Core::Fibre, Some(0.327), Some(0.335), Some(0.291)),
    ("8x7", Core::Steel, Some(0.391), Some(0.439), Some(0.359)),
    ("6x19", Core::Fibre, Some(0.359), Some(0.384), Some(0.330)),
    ("6x19", Core::Steel, Some(0.400), Some(0.449), Some(0.356)),
    ("8x19", Core::Fibre, Some(0.340), Some(0.349), Some(0.293)),
    ("8x19", Core::Steel, Some(0.407), Some(0.457), Some(0.356)),
    ("6x36", Core::Fibre, Some(0.367), Some(0.393), Some(0.330)),
    ("6x36", Core::Steel, Some(0.409), Some(0.460), Some(0.356)),
    ("8x36", Core::Fibre, Some(0.348), Some(0.357), Some(0.293)),
    ("8x36", Core::Steel, Some(0.417), Some(0.468), Some(0.356)),
    ("6x35M", Core::Fibre, Some(0.352), Some(0.377), Some(0.317)),
    ("6x35M", Core::Steel, Some(0.392), Some(0.441), Some(0.345)),
    ("6x19M", Core::Fibre, Some(0.346), Some(0.357), Some(0.307)),
    ("6x19M", Core::Steel, Some(0.372), Some(0.418), Some(0.332)),
    ("6x19M", Core::Strand, Some(0.381), Some(0.418), Some(0.362)),
    ("6x37M", Core::Fibre, Some(0.346), Some(0.357), Some(0.295)),
    ("6x37M", Core::Steel, Some(0.381), Some(0.418), Some(0.319)),
    ("6x37M", Core::Strand, Some(0.381), Some(0.418), Some(0.346)),
    ("18x7", Core::Fibre, Some(0.382), Some(0.408), Some(0.328)),
    ("18x7", Core::Steel, Some(0.401), Some(0.433), Some(0.328)),
    ("34x7", Core::Fibre, Some(0.390), Some(0.416), Some(0.318)),
    ("34x7", Core::Steel, Some(0.401), Some(0.428), Some(0.318)),
];

const KNOWN: &str = "1x7, 1x19, 6x7, 7x7, 8x7, 18x7, 34x7, 6x19, 6x19M, 7x19, 8x19, 6x35M, 6x36, 6x37M, 8x36, \
                     or a construction of these classes such as 6x36WS";

/// Takes a rope's class apart, and refuses a class, core or diameter that no rope has.
pub(super) fn class(rope: &Rope) -> Result<Class, SectionError> {
    check_size("construction.rope", "diameter_mm", rope.diameter)?;
    if rope.grade.is_some_and(|grade| !(100.0..=4000.0).contains(&grade.n_per_mm2())) {
        return Err(SectionError::new("construction.rope.grade_N_per_mm2", "this is no rope grade")
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

/// One strand alone: its section is geometric.
pub(super) fn is_single(class: Class) -> bool {
    class.strands == 1
}

/// The factors of a class with a core, and the row they stand in.
///
/// Every figure is the first that the reprints give for the class and the core, so that a figure left
/// out by one comes from the other.
pub(super) fn factors(class: Class, core: RopeCore) -> Option<(Factors, String)> {
    let name = table_class(class)?;
    let row = row(name, core)?;
    let words = match row.1 {
        Core::Fibre => "fibre core",
        Core::Steel => "steel core",
        Core::Strand => "strand core",
    };
    Some((Factors { mass: row.2, area: row.3, breaking: row.4 }, format!("class {name} with {words}")))
}

/// A strand core that the standard does not list apart counts as a steel core.
fn row(name: &str, core: RopeCore) -> Option<&'static Row> {
    let find = |wanted: Core| FACTORS.iter().find(|row| row.0 == name && row.1 == wanted);
    match core {
        RopeCore::Fibre => find(Core::Fibre),
        RopeCore::Iwrc => find(Core::Steel),
        RopeCore::Wsc => find(Core::Strand).or_else(|| find(Core::Steel)),
    }
}

fn parse(text: &str) -> Option<Class> {
    let text = text.trim();
    let (strands, rest) = text.split_once(['x', 'X', '×'])?;
    let digits = rest.find(|letter: char| !letter.is_ascii_digit()).unwrap_or(rest.len());
    let lay = match &rest[digits..] {
        "" => Lay::Plain,
        "M" => Lay::Cross,
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
        (6, 35, Lay::Cross) => Some("6x35M"),
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
    let (factors, _) = factors(class, rope.core)?;
    factors.area.map(|factor| rope.diameter * rope.diameter * factor)
}

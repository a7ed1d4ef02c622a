//! The factors that EN 12385-4 gives a class of ropes with its core.

use super::RopeCore;

/// What the standard says of a class with its core.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Factors {
    /// kg per 100 m and mm² of nominal diameter squared.
    pub mass: f64,
    /// Metal section over the square of the nominal diameter.
    pub area: f64,
    /// Breaking load over the square of the nominal diameter and the rope grade.
    pub breaking: f64,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Core {
    Fibre,
    Steel,
    Strand,
}

type Row = (&'static str, Core, f64, f64, f64);

/// EN 12385-4, read in reprints: W, C and K by class and core. Two reprints disagree on W of 6x19M and
/// 6x37M; the first one is kept.
#[expect(clippy::approx_constant, reason = "0.318 is a factor of the standard, not 1/π")]
const FACTORS: &[Row] = &[
    ("6x7", Core::Fibre, 0.345, 0.369, 0.332),
    ("6x7", Core::Steel, 0.384, 0.432, 0.359),
    ("6x7", Core::Strand, 0.384, 0.432, 0.388),
    ("8x7", Core::Fibre, 0.327, 0.335, 0.291),
    ("8x7", Core::Steel, 0.391, 0.439, 0.359),
    ("6x19", Core::Fibre, 0.359, 0.384, 0.330),
    ("6x19", Core::Steel, 0.400, 0.449, 0.356),
    ("8x19", Core::Fibre, 0.340, 0.349, 0.293),
    ("8x19", Core::Steel, 0.407, 0.457, 0.356),
    ("6x36", Core::Fibre, 0.367, 0.393, 0.330),
    ("6x36", Core::Steel, 0.409, 0.460, 0.356),
    ("8x36", Core::Fibre, 0.348, 0.357, 0.293),
    ("8x36", Core::Steel, 0.417, 0.468, 0.356),
    ("6x35N", Core::Fibre, 0.352, 0.377, 0.317),
    ("6x35N", Core::Steel, 0.392, 0.441, 0.345),
    ("6x19M", Core::Fibre, 0.346, 0.357, 0.307),
    ("6x19M", Core::Steel, 0.372, 0.418, 0.332),
    ("6x19M", Core::Strand, 0.381, 0.418, 0.362),
    ("6x37M", Core::Fibre, 0.346, 0.357, 0.295),
    ("6x37M", Core::Steel, 0.381, 0.418, 0.319),
    ("6x37M", Core::Strand, 0.381, 0.418, 0.346),
    ("18x7", Core::Fibre, 0.382, 0.408, 0.328),
    ("18x7", Core::Steel, 0.401, 0.433, 0.328),
    ("34x7", Core::Fibre, 0.390, 0.416, 0.318),
    ("34x7", Core::Steel, 0.401, 0.428, 0.318),
];

/// The factors of a class with a core, and the row they stand in.
///
/// Every figure is the first that the reprints give for the class and the core, so that a figure left
/// out by one comes from the other.
pub(super) fn factors(name: &str, core: RopeCore) -> Option<(Factors, String)> {
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

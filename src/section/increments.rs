//! What the helix of the layers adds to mass and resistance.

use super::layers::{outer_radius, usual};
use super::{Group, Layer, SectionError};
use std::f64::consts::PI;

/// Factors on mass and resistance, and where they come from.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Increment {
    pub mass: f64,
    pub resistance: f64,
    pub source: String,
}

/// Implied by the tables of EN 50182:2001: outer wires, core wires, factor on resistance, on mass.
/// A composite's outer group has one factor for both.
const IMPLIED: &[(u32, u32, f64, f64)] = &[
    (7, 0, 1.0111, 1.0111),
    (19, 0, 1.0167, 1.0168),
    (37, 0, 1.0203, 1.0203),
    (61, 0, 1.0237, 1.0236),
    (91, 0, 1.0282, 1.0278),
    (6, 1, 1.0139, 1.0139),
    (12, 7, 1.0217, 1.0217),
    (14, 7, 1.023, 1.023),
    (24, 7, 1.0214, 1.0214),
    (26, 7, 1.0218, 1.0218),
    (30, 7, 1.0228, 1.0228),
    (45, 7, 1.022, 1.022),
    (48, 7, 1.0228, 1.0228),
    (54, 7, 1.0232, 1.0232),
    (14, 19, 1.025, 1.025),
    (54, 19, 1.0228, 1.0228),
];

/// Taken where nothing is stated and no table has a row.
const ASSUMED_LAY_RATIO: f64 = 12.5;
/// Lay ratio of a composite's steel core that the masses of EN 50182 imply.
const CORE_LAY_RATIO: f64 = 19.0;

/// Increment of a stranded conductor.
pub(super) fn of_stranded(group: &Group, layers: &[Layer], key: &str) -> Result<Increment, SectionError> {
    let wires = count(layers);
    let arrangement: Vec<u32> = layers.iter().map(|layer| layer.wires).collect();
    let implied = usual(wires).filter(|usual| *usual == arrangement).and_then(|_| implied(wires, 0));
    increment(group, layers, implied, ASSUMED_LAY_RATIO, key)
}

/// Increment of a composite's outer group.
pub(super) fn of_outer(
    group: &Group,
    layers: &[Layer],
    core_wires: u32,
    key: &str,
) -> Result<Increment, SectionError> {
    increment(group, layers, implied(count(layers), core_wires), ASSUMED_LAY_RATIO, key)
}

/// Increment of a composite's core.
pub(super) fn of_core(group: &Group, layers: &[Layer], key: &str) -> Result<Increment, SectionError> {
    increment(group, layers, None, CORE_LAY_RATIO, key)
}

/// How many wires there are in layers.
pub(super) fn count(layers: &[Layer]) -> u32 {
    layers.iter().map(|layer| layer.wires).sum()
}

fn implied(outer: u32, core: u32) -> Option<Increment> {
    IMPLIED.iter().find(|row| (row.0, row.1) == (outer, core)).map(|row| Increment {
        resistance: row.2,
        mass: row.3,
        source: match core {
            0 => format!("{outer} wires: resistance × {}, mass × {}, implied by EN 50182:2001", row.2, row.3),
            _ => format!("{outer} wires round {core}: × {}, implied by EN 50182:2001", row.2),
        },
    })
}

fn increment(
    group: &Group,
    layers: &[Layer],
    implied: Option<Increment>,
    assumed: f64,
    key: &str,
) -> Result<Increment, SectionError> {
    check_lay_ratios(group, layers, key)?;
    let helical = layers.iter().any(|layer| layer.wires > 1);
    if group.lay_ratios.is_empty() {
        let from_assumed = || {
            let source = match helical {
                true => format!("{} wires: lay ratio {assumed} assumed", count(layers)),
                false => String::new(),
            };
            from_ratios(layers, |_| assumed, source)
        };
        return Ok(implied.unwrap_or_else(from_assumed));
    }
    let ratio = |index: usize| stated_ratio(group, layers, index).unwrap_or(assumed);
    let list: Vec<String> = group.lay_ratios.iter().map(f64::to_string).collect();
    Ok(from_ratios(layers, ratio, format!("{} wires: stated lay ratios {}", count(layers), list.join(", "))))
}

/// Ratios belong to the outermost layers: a single centre wire has none, and a centre of several may go without.
fn stated_ratio(group: &Group, layers: &[Layer], index: usize) -> Option<f64> {
    let without = layers.len() - group.lay_ratios.len();
    index.checked_sub(without).map(|position| group.lay_ratios[position])
}

fn from_ratios(layers: &[Layer], ratio: impl Fn(usize) -> f64, source: String) -> Increment {
    let wires = f64::from(count(layers));
    let (mut longer, mut conducting) = (0.0, 0.0);
    for (index, layer) in layers.iter().enumerate() {
        let turn = PI * (layer.pitch_radius / outer_radius(layer)) / ratio(index);
        let factor = turn.hypot(1.0);
        longer += f64::from(layer.wires) * factor;
        conducting += f64::from(layer.wires) / factor;
    }
    Increment { mass: longer / wires, resistance: wires / conducting, source }
}

fn check_lay_ratios(group: &Group, layers: &[Layer], key: &str) -> Result<(), SectionError> {
    let field = || format!("{key}.lay_ratios");
    let stated = group.lay_ratios.len();
    let helical = layers.iter().filter(|layer| layer.pitch_radius.is_positive()).count();
    let round_centre =
        if layers[0].pitch_radius.is_positive() && helical > 0 { helical - 1 } else { helical };
    let expected = if key.ends_with("outer") { helical..=helical } else { round_centre..=helical };
    if stated > 0 && !expected.contains(&stated) {
        return Err(SectionError::new(
            field(),
            "there must be one lay ratio for each layer round the centre",
        )
        .found(format!("{stated} lay ratios"))
        .expected(expected.start().to_string()));
    }
    match group.lay_ratios.iter().position(|ratio| !(3.0..=200.0).contains(ratio)) {
        Some(index) => Err(SectionError::new(format!("{}.{index}", field()), "this is not a lay ratio")
            .found(group.lay_ratios[index].to_string())
            .expected("3 to 200; usually 10 to 16")),
        None => Ok(()),
    }
}

//! Layers of round wires: usual arrangements, and whether a layer fits round those inside it.

use super::error::check_size;
use super::{Construction, Group, Layer, LayerRole, SectionError, Strands};
use crate::units::Length;
use std::f64::consts::PI;

/// Numbers of wires that have one usual arrangement, with the layers of each.
const USUAL: &[(u32, &[u32])] = &[
    (1, &[1]),
    (2, &[2]),
    (3, &[3]),
    (4, &[4]),
    (7, &[1, 6]),
    (12, &[3, 9]),
    (19, &[1, 6, 12]),
    (37, &[1, 6, 12, 18]),
    (61, &[1, 6, 12, 18, 24]),
    (91, &[1, 6, 12, 18, 24, 30]),
];

/// How much tighter than geometry a layer may be: wires give a little when they are laid.
const CROWDING: f64 = 1.005;

/// More wires than any conductor has.
const MOST_WIRES: u32 = 1000;

/// Layers of a stranded conductor or of a core, from the centre out.
pub(super) fn from_centre(group: &Group, role: LayerRole, key: &str) -> Result<Vec<Layer>, SectionError> {
    check_size(key, "wire_diameter_mm", group.wire_diameter)?;
    let counts = match &group.strands {
        Strands::Wires(wires) => usual(*wires).ok_or_else(|| no_usual_arrangement(*wires, key))?.to_vec(),
        Strands::Layers(counts) => counts.clone(),
    };
    check_counts(&counts, key)?;
    let centre = centre(counts[0], group.wire_diameter, role);
    let mut layers = vec![centre];
    add_layers(&mut layers, outer_radius(&centre), &counts[1..], 1, (group, role, key))?;
    Ok(layers)
}

/// Layers of a composite's outer group, from the core out.
pub(super) fn round_core(group: &Group, core_radius: Length, key: &str) -> Result<Vec<Layer>, SectionError> {
    check_size(key, "wire_diameter_mm", group.wire_diameter)?;
    let counts = match &group.strands {
        Strands::Wires(wires) => spread(*wires, group, core_radius, key)?,
        Strands::Layers(counts) => counts.clone(),
    };
    check_counts(&counts, key)?;
    let mut layers = Vec::new();
    add_layers(&mut layers, core_radius, &counts, 0, (group, LayerRole::Outer, key))?;
    Ok(layers)
}

/// Radius of the circle round a layer.
pub(super) fn outer_radius(layer: &Layer) -> Length {
    layer.pitch_radius + layer.wire_diameter / 2.0
}

/// The layers that a number of wires usually has.
pub(super) fn usual(wires: u32) -> Option<&'static [u32]> {
    USUAL.iter().find(|(number, _)| *number == wires).map(|(_, layers)| *layers)
}

fn no_usual_arrangement(wires: u32, key: &str) -> SectionError {
    SectionError::new(format!("{key}.wires"), format!("{wires} wires have no usual arrangement"))
        .found(wires.to_string())
        .expected("1, 2, 3, 4, 7, 12, 19, 37, 61 or 91")
        .help("give the wires layer by layer, such as `layers: [1, 6, 12]`")
}

fn check_counts(counts: &[u32], key: &str) -> Result<(), SectionError> {
    let field = || format!("{key}.layers");
    if counts.is_empty() {
        return Err(SectionError::new(field(), "there are no layers").expected("wires layer by layer"));
    }
    if let Some(index) = counts.iter().position(|count| *count == 0) {
        return Err(SectionError::new(format!("{}.{index}", field()), "a layer has no wires").found("0"));
    }
    let total = counts.iter().fold(0_u32, |sum, count| sum.saturating_add(*count));
    if total > MOST_WIRES {
        return Err(SectionError::new(field(), "no conductor has so many wires")
            .found(total.to_string())
            .expected(format!("at most {MOST_WIRES}")));
    }
    Ok(())
}

/// One wire, or two and more that touch in a ring.
fn centre(wires: u32, wire_diameter: Length, role: LayerRole) -> Layer {
    let pitch_radius = if wires == 1 { Length::ZERO } else { touching(wires, wire_diameter) };
    Layer { wires, pitch_radius, wire_diameter, role }
}

/// Pitch radius of wires that touch in a ring.
fn touching(wires: u32, wire_diameter: Length) -> Length {
    if wires < 2 { Length::ZERO } else { wire_diameter / (2.0 * (PI / f64::from(wires)).sin()) }
}

fn add_layers(
    layers: &mut Vec<Layer>,
    inner: Length,
    counts: &[u32],
    first_index: usize,
    (group, role, key): (&Group, LayerRole, &str),
) -> Result<(), SectionError> {
    let mut radius = inner;
    for (index, wires) in counts.iter().enumerate() {
        let layer = ring(*wires, radius, group.wire_diameter, role).ok_or_else(|| {
            does_not_fit(*wires, radius, group, &format!("{key}.layers.{}", first_index + index))
        })?;
        radius = outer_radius(&layer);
        layers.push(layer);
    }
    Ok(())
}

/// A layer round `inner`, where it fits.
fn ring(wires: u32, inner: Length, wire_diameter: Length, role: LayerRole) -> Option<Layer> {
    let lying = inner + wire_diameter / 2.0;
    let touching = touching(wires, wire_diameter);
    let fits = touching <= lying * CROWDING;
    fits.then(|| Layer { wires, pitch_radius: lying.max(touching), wire_diameter, role })
}

/// How many wires fit round `inner`.
fn most_round(inner: Length, wire_diameter: Length) -> u32 {
    (1..=MOST_WIRES)
        .take_while(|wires| ring(*wires, inner, wire_diameter, LayerRole::Outer).is_some())
        .last()
        .unwrap_or(0)
}

/// A layer that has room for more wires.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LooseLayer {
    /// The dotted key of the layer, or of the number that it comes from.
    pub field: String,
    /// How many wires it has.
    pub wires: u32,
    /// How many are full.
    pub full: u32,
}

impl LooseLayer {
    /// What to do about it.
    pub const HELP: &str = "check the number of wires and their diameter against the specification";

    /// What is the matter, in one sentence without a full stop.
    #[must_use]
    pub fn message(&self) -> String {
        format!("a layer of {} wires has room for {} more", self.wires, self.full - self.wires)
    }

    /// What would do.
    #[must_use]
    pub fn expected(&self) -> String {
        format!("{} wires make this layer full", self.full)
    }
}

/// The layers of a conductor that have room for more than one wire beyond their own, innermost first: such a layer
/// lies loose, or its number of wires is wrong.
///
/// # Errors
/// As [`super::compute`].
///
/// # Examples
/// ```
/// use fittingcards::section::{Construction, Group, Strands, loose_layers};
/// use fittingcards::units::Length;
///
/// let conductor = |layers: &[u32]| {
///     let (strands, wire_diameter) = (Strands::Layers(layers.to_vec()), Length::from_mm(2.5));
///     Construction::Stranded(Group { strands, wire_diameter, lay_ratios: Vec::new() })
/// };
/// assert!(loose_layers(&conductor(&[1, 6, 12]))?.is_empty());
/// assert!(loose_layers(&conductor(&[1, 6, 11]))?.is_empty());
/// assert_eq!(loose_layers(&conductor(&[1, 6, 10]))?[0].full, 12);
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
pub fn loose_layers(construction: &Construction) -> Result<Vec<LooseLayer>, SectionError> {
    match construction {
        Construction::Stranded(group) => {
            let key = "construction.stranded";
            Ok(loose(group, &from_centre(group, LayerRole::Outer, key)?, None, key))
        }
        Construction::Composite(composite) => {
            let (core_key, outer_key) = ("construction.composite.core", "construction.composite.outer");
            let core = from_centre(&composite.core, LayerRole::Core, core_key)?;
            let radius = core.last().map_or(Length::ZERO, outer_radius);
            let outer = round_core(&composite.outer, radius, outer_key)?;
            let mut all = loose(&composite.core, &core, None, core_key);
            all.extend(loose(&composite.outer, &outer, Some(radius), outer_key));
            Ok(all)
        }
        _ => Ok(Vec::new()),
    }
}

/// Layers of a group with room, round a core of radius `inner` where there is one; a centre is never loose.
fn loose(group: &Group, layers: &[Layer], inner: Option<Length>, key: &str) -> Vec<LooseLayer> {
    let first = usize::from(inner.is_none());
    let inside = inner.into_iter().chain(layers.iter().map(outer_radius));
    let all = layers.iter().enumerate().skip(first).zip(inside).map(|((index, layer), inside)| LooseLayer {
        field: match group.strands {
            Strands::Wires(_) => format!("{key}.wires"),
            Strands::Layers(_) => format!("{key}.layers.{index}"),
        },
        wires: layer.wires,
        full: most_round(inside, group.wire_diameter),
    });
    all.filter(|layer| layer.full > layer.wires + 1).collect()
}

fn does_not_fit(wires: u32, inner: Length, group: &Group, field: &str) -> SectionError {
    let most = most_round(inner, group.wire_diameter);
    let size = group.wire_diameter.mm();
    let round = inner.mm() * 2.0;
    SectionError::new(field, format!("{wires} wires of {size} mm do not fit round {round:.2} mm"))
        .found(wires.to_string())
        .expected(format!("at most {most}"))
        .help(format!("{most} wires of {size} mm fit in this layer; check the number and the wire diameter"))
}

/// The fewest layers, each of six wires more than the one inside it, that hold so many wires round a core.
fn spread(wires: u32, group: &Group, core_radius: Length, key: &str) -> Result<Vec<u32>, SectionError> {
    (1..=20_u32)
        .find_map(|count| arithmetic(wires, count).filter(|counts| all_fit(counts, group, core_radius)))
        .ok_or_else(|| {
            let most = most_round(core_radius, group.wire_diameter);
            let size = group.wire_diameter.mm();
            SectionError::new(
                format!("{key}.wires"),
                format!(
                    "{wires} wires of {size} mm do not make whole layers round a core of {:.2} mm",
                    core_radius.mm() * 2.0
                ),
            )
            .found(wires.to_string())
            .expected(format!("a first layer of at most {most} wires, and six more in each that follows"))
            .help("give the wires layer by layer, such as `layers: [10, 16]`")
        })
}

fn arithmetic(wires: u32, layers: u32) -> Option<Vec<u32>> {
    let first =
        wires.is_multiple_of(layers).then(|| (wires / layers).checked_sub(3 * (layers - 1))).flatten()?;
    (first >= 1).then(|| (0..layers).map(|layer| first + 6 * layer).collect())
}

fn all_fit(counts: &[u32], group: &Group, core_radius: Length) -> bool {
    let mut radius = core_radius;
    counts.iter().all(|wires| match ring(*wires, radius, group.wire_diameter, LayerRole::Outer) {
        Some(layer) => {
            radius = outer_radius(&layer);
            true
        }
        None => false,
    })
}

//! Which inner wires of a conductor can be in the hole of a spreading cone.

use super::closure::Closure;
use super::compare::{less, more};
use super::{HeldConductor, SpreadingCone};
use crate::section::Layer;
use crate::units::Length;

/// A whole set of inner layers in the hole.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Inner {
    /// Layers in the hole, the centre among them; none where not even the centre goes in.
    pub(super) layers: usize,
    /// Whether they go in only where the slits are prised open.
    pub(super) forced: bool,
    /// Whether they go in for some sizes within the tolerances alone.
    pub(super) unsure: bool,
}

impl Inner {
    /// How far the sizes of hole and inner wires may be off: the hole's tolerance, and a wire's for each
    /// wire across.
    pub(super) fn tolerance(self, cone: &SpreadingCone, held: &HeldConductor) -> Length {
        off(self.layers, cone, held)
    }
}

/// How many of the layers, from the centre out, go through a hole as a whole set.
#[must_use]
pub fn inner_wires(layers: &[Layer], hole: Length) -> usize {
    layers.iter().take_while(|layer| !more(across(layer), hole)).count()
}

/// The set taken, then the larger ones that pass within the tolerances or by prising the slits open.
pub(super) fn inner_sets(
    cone: &SpreadingCone,
    hole: Length,
    held: &HeldConductor,
    layers: &[Layer],
) -> Vec<Inner> {
    let taken = inner_wires(layers, hole);
    let prised = Closure::of(cone.slits, cone.slit_width, cone.slit_width_tolerance).unwrap_or_default();
    let tight =
        layers[..taken].last().is_some_and(|layer| more(across(layer), hole - off(taken, cone, held)));
    let mut sets = vec![Inner { layers: taken, forced: false, unsure: tight }];
    for (layer, inside) in layers.iter().zip(1..).skip(taken) {
        let size = across(layer);
        let most = hole + off(inside, cone, held);
        if more(size, most + prised.most()) {
            break;
        }
        let forced = more(size, most);
        sets.push(Inner { layers: inside, forced, unsure: !forced || less(hole + prised.stated, size) });
    }
    sets
}

/// Diameter of the circle round a layer and all inside it.
pub(super) fn across(layer: &Layer) -> Length {
    layer.pitch_radius * 2.0 + layer.wire_diameter
}

fn off(inside: usize, cone: &SpreadingCone, held: &HeldConductor) -> Length {
    let wires = u32::try_from((2 * inside).saturating_sub(1)).unwrap_or(u32::MAX);
    cone.hole_diameter_tolerance.unwrap_or_default() + held.wire_diameter_tolerance * f64::from(wires)
}

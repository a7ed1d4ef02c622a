//! Where every wire lies in the cross-section.

use super::layers::{from_centre, outer_radius, round_core};
use super::layout::{Layout, Wire, at};
use super::{Construction, Layer, LayerRole, SectionError, rope, rope_layout};
use crate::units::Length;
use std::f64::consts::{FRAC_PI_2, TAU};

/// Lays out the wires of a conductor: of a bundle of round wires exactly as it is computed, of a rope by its
/// class. Grooved wires, tubes and bars have no wires.
///
/// A rope's strands touch one another and the circle on its diameter; its wires are drawn thinner in place where
/// the standard's factor gives less metal than wires that all touch, so that the metal drawn is the section given.
///
/// # Errors
/// As [`super::compute`].
///
/// # Examples
/// ```
/// use fittingcards::section::{Construction, Group, Strands, wires};
/// use fittingcards::units::Length;
///
/// let layout = wires(&Construction::Stranded(Group {
///     strands: Strands::Wires(19),
///     wire_diameter: Length::from_mm(2.80),
///     lay_ratios: Vec::new(),
/// }))?;
/// assert_eq!(layout.wires.len(), 19);
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
pub fn wires(construction: &Construction) -> Result<Layout, SectionError> {
    let layers = match construction {
        Construction::Rope(rope) => return rope_layout::layout(rope, rope::class(rope)?),
        Construction::Stranded(group) => from_centre(group, LayerRole::Outer, "construction.stranded")?,
        Construction::Composite(composite) => {
            let core = from_centre(&composite.core, LayerRole::Core, "construction.composite.core")?;
            let radius = core.last().map_or(Length::ZERO, outer_radius);
            let outer = round_core(&composite.outer, radius, "construction.composite.outer")?;
            [core, outer].concat()
        }
        Construction::Solid { .. } => super::compute(construction, None)?.layers,
        Construction::Grooved(_) | Construction::Tube { .. } | Construction::Bar { .. } => Vec::new(),
    };
    let wires = (0_u32..).zip(&layers).flat_map(|(index, layer)| in_layer(index, layer)).collect();
    Ok(Layout { wires, ..Layout::default() })
}

/// The wires of a layer, the first one at the top.
fn in_layer(index: u32, layer: &Layer) -> impl Iterator<Item = Wire> {
    let layer = *layer;
    (0..layer.wires).map(move |wire| Wire {
        centre: at(layer.pitch_radius, FRAC_PI_2 - TAU * f64::from(wire) / f64::from(layer.wires)),
        diameter: layer.wire_diameter,
        layer: index,
        role: layer.role,
        strand: None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::section::{Composite, Group, RegionKind, Rope, RopeCore, Strands, compute};
    use crate::units::Area;

    fn group(wires: u32, diameter: f64) -> Group {
        Group {
            strands: Strands::Wires(wires),
            wire_diameter: Length::from_mm(diameter),
            lay_ratios: Vec::new(),
        }
    }

    fn rope(class: &str, core: RopeCore) -> Construction {
        Construction::Rope(Rope { class: class.into(), core, diameter: Length::from_mm(8.0), grade: None })
    }

    /// Wires and regions as circles: x, y, radius.
    fn circles(layout: &Layout) -> Vec<(f64, f64, f64)> {
        let wires = layout.wires.iter().map(|wire| (wire.centre, wire.diameter));
        let regions = layout.regions.iter().map(|region| (region.centre, region.diameter));
        wires.chain(regions).map(|(at, across)| (at.x.mm(), at.y.mm(), across.mm() / 2.0)).collect()
    }

    fn check(construction: &Construction, expected: usize) {
        let layout = wires(construction).unwrap();
        let section = compute(construction, None).unwrap();
        assert_eq!(layout.wires.len(), expected, "{construction:?}");
        let circles = circles(&layout);
        for (index, a) in circles.iter().enumerate() {
            let reach = a.0.hypot(a.1) + a.2;
            assert!(
                reach <= section.overall_diameter.mm() / 2.0 + 1e-6,
                "{construction:?}: {a:?} sticks out"
            );
            for b in &circles[..index] {
                let gap = (a.0 - b.0).hypot(a.1 - b.1) - a.2 - b.2;
                assert!(gap > -1e-6, "{construction:?}: {a:?} and {b:?} overlap by {gap}");
            }
        }
        if layout.regions.iter().all(|region| region.kind == RegionKind::Fibre) {
            let drawn: Area = layout.wires.iter().map(|wire| wire.diameter.circle_area()).sum();
            assert!(
                (drawn / section.metal - 1.0).abs() < 0.1,
                "{construction:?}: {drawn:?}, {:?}",
                section.metal
            );
        }
    }

    #[test]
    fn wires_of_every_arrangement_lie_side_by_side() {
        for wires in [1_u32, 2, 3, 4, 7, 12, 19, 37, 61, 91] {
            check(&Construction::Stranded(group(wires, 2.5)), wires as usize);
        }
        let composite = Composite { core: group(7, 2.68), core_material: None, outer: group(26, 3.45) };
        check(&Construction::Composite(composite), 33);
    }

    #[test]
    fn wires_of_every_rope_lie_side_by_side() {
        use RopeCore::{Fibre, Iwrc, Wsc};
        let ropes = [
            ("1x7", Wsc, 7),
            ("1x19", Wsc, 19),
            ("6x7", Fibre, 42),
            ("6x7", Wsc, 49),
            ("7x7", Wsc, 49),
            ("7x19", Wsc, 133),
            ("6x19", Iwrc, 114 + 49),
            ("6x19S", Iwrc, 114 + 49),
            ("6x19W", Fibre, 114),
            ("6x25F", Fibre, 150),
            ("6x26WS", Fibre, 156),
            ("6x19M", Fibre, 114),
            ("6x36WS", Iwrc, 216 + 49),
            ("6x41WS", Fibre, 246),
            ("8x36WS", Iwrc, 288 + 49),
            ("18x7", Wsc, 133),
            ("34x7", Wsc, 245),
        ];
        for (class, core, wires) in ropes {
            check(&rope(class, core), wires);
        }
    }

    #[test]
    fn a_strand_that_the_class_does_not_settle_is_a_circle() {
        let layout = wires(&rope("6x35N", RopeCore::Fibre)).unwrap();
        assert_eq!(layout.wires.len(), 0);
        assert_eq!(layout.regions.iter().filter(|region| region.kind == RegionKind::Strand).count(), 6);
    }
}

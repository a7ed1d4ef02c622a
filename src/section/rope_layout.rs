//! Where every wire of a rope lies.

use super::layout::{Layout, Region, RegionKind, Wire, at};
use super::outline::Point;
use super::rope::{self, Class, Lay};
use super::strand::{Spot, spots};
use super::{LayerRole, Rope, RopeCore, SectionError};
use crate::units::{Area, Length};
use std::f64::consts::{FRAC_PI_2, PI, TAU};

/// A strand's circle: where it lies, how wide, and which way its pattern is turned.
#[derive(Debug, Clone, Copy)]
struct Circle {
    centre: Point,
    diameter: Length,
    turned: f64,
    role: LayerRole,
}

/// A strand of an independent wire rope core: the core is laid out as 7x7.
const CORE_STRAND: Class = Class { strands: 6, wires: 7, lay: Lay::Plain };

/// Lays out a rope.
pub(super) fn layout(rope: &Rope, class: Class) -> Result<Layout, SectionError> {
    let mut layout = Layout { assumed: assumed(class), ..Layout::default() };
    if rope::is_single(class) {
        rope::single_strand(rope, class)?;
        let whole = Circle {
            centre: Point::default(),
            diameter: rope.diameter,
            turned: FRAC_PI_2,
            role: LayerRole::Outer,
        };
        lay(&mut layout, &[whole], class);
        return Ok(layout);
    }
    let (core, strands) = circles(class, rope.diameter);
    lay_core(&mut layout, rope.core, core, class);
    lay(&mut layout, &strands, class);
    if layout.regions.iter().all(|region| region.kind == RegionKind::Fibre) {
        thin_to(&mut layout.wires, rope::metal(rope, class));
    }
    Ok(layout)
}

fn assumed(class: Class) -> String {
    match (class.strands, class.wires, class.lay) {
        (6 | 8, 19, Lay::Plain) => "strands drawn as Seale, 1-9-9".into(),
        (6 | 8, 36, Lay::Plain) => "strands drawn as Warrington-Seale, 1-7-(7+7)-14".into(),
        _ => String::new(),
    }
}

/// The core's circle and the strands' circles: strands touch the circle on the rope's diameter and, in the
/// outermost layer, one another.
fn circles(class: Class, diameter: Length) -> (Circle, Vec<Circle>) {
    let layers: &[u32] = match class.strands {
        7 => &[6],
        18 => &[6, 12],
        34 => &[6, 11, 17],
        _ => &[],
    };
    let (strand, layers) = match layers {
        [] | [_] => {
            let count = if class.strands == 7 { 6 } else { class.strands };
            (diameter / (1.0 + 1.0 / (PI / f64::from(count)).sin()), vec![count])
        }
        many => (diameter / (1.0 + 2.0 * many.len() as f64), many.to_vec()),
    };
    let depth = layers.len();
    let core = diameter - strand * (2.0 * depth as f64);
    let around = |index: usize| (core + strand * (2.0 * index as f64 + 1.0)) / 2.0;
    let strands = layers.iter().enumerate().flat_map(|(index, count)| ring(*count, around(index), strand));
    let core = Circle { centre: Point::default(), diameter: core, turned: FRAC_PI_2, role: LayerRole::Core };
    (core, strands.collect())
}

fn ring(count: u32, radius: Length, diameter: Length) -> Vec<Circle> {
    let circle = |index: u32| {
        let angle = FRAC_PI_2 - TAU * f64::from(index) / f64::from(count);
        Circle { centre: at(radius, angle), diameter, turned: angle, role: LayerRole::Outer }
    };
    (0..count).map(circle).collect()
}

fn lay_core(layout: &mut Layout, core: RopeCore, circle: Circle, class: Class) {
    match core {
        RopeCore::Fibre => {
            layout.regions.push(Region {
                centre: circle.centre,
                diameter: circle.diameter,
                kind: RegionKind::Fibre,
            });
        }
        RopeCore::Wsc => lay(layout, &[circle], class),
        RopeCore::Iwrc => {
            let (heart, strands) = circles(CORE_STRAND, circle.diameter);
            let all: Vec<Circle> = [heart]
                .into_iter()
                .chain(strands)
                .map(|one| Circle { role: LayerRole::Core, ..one })
                .collect();
            lay(layout, &all, CORE_STRAND);
        }
    }
}

/// Lays wires into strands, or leaves the strands' circles where the class does not settle them.
fn lay(layout: &mut Layout, strands: &[Circle], class: Class) {
    let Some(spots) = spots(class) else {
        let region = |circle: &Circle| Region {
            centre: circle.centre,
            diameter: circle.diameter,
            kind: RegionKind::Strand,
        };
        layout.regions.extend(strands.iter().map(region));
        return;
    };
    let first = layout.wires.last().and_then(|wire| wire.strand).map_or(0, |strand| strand + 1);
    for (strand, circle) in (first..).zip(strands) {
        layout.wires.extend(spots.iter().map(|spot| wire(spot, circle, strand)));
    }
}

fn wire(spot: &Spot, circle: &Circle, strand: u32) -> Wire {
    let offset = at(circle.diameter * spot.radius, circle.turned + spot.angle);
    Wire {
        centre: Point { x: circle.centre.x + offset.x, y: circle.centre.y + offset.y },
        diameter: circle.diameter * spot.diameter,
        layer: spot.layer,
        role: circle.role,
        strand: Some(strand),
    }
}

/// Draws wires thinner in place until they make the given area of metal; never thicker.
fn thin_to(wires: &mut [Wire], metal: Option<Area>) {
    let drawn: Area = wires.iter().map(|wire| wire.diameter.circle_area()).sum();
    let factor = metal.map_or(1.0, |metal| (metal / drawn).sqrt().min(1.0));
    for wire in wires {
        wire.diameter = wire.diameter * factor;
    }
}

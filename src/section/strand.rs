//! How wires lie in the strand of a rope, by first principles: wires that touch, in a circle of diameter 1.

use super::layers::usual;
use super::rope::{Class, Lay};
use std::f64::consts::PI;

/// A wire in a strand of diameter 1 about the origin.
#[derive(Debug, Clone, Copy)]
pub(super) struct Spot {
    pub radius: f64,
    pub angle: f64,
    pub diameter: f64,
    pub layer: u32,
}

/// Wires of one size at one radius: how many, where the first one lies, and in which layer.
type Ring = (u32, f64, f64, f64, u32);

/// The wires of a class's strand; `None` where the class does not settle how they lie.
///
/// Class 6x19 alone is laid out as Seale, 6x36 as Warrington-Seale: the usual ones.
pub(super) fn spots(class: Class) -> Option<Vec<Spot>> {
    let wires = class.wires;
    let inner = |per: u32| {
        (wires > 1 && (wires - 1).is_multiple_of(per)).then(|| (wires - 1) / per).filter(|n| *n >= 4)
    };
    let rings = match class.lay {
        Lay::Plain if wires == 36 => warrington_seale(inner(5)?),
        Lay::Plain if wires == 19 && matches!(class.strands, 6 | 8) => seale(inner(2)?),
        Lay::Plain | Lay::Cross => equal(usual(wires)?),
        Lay::Compound => return None,
        Lay::Seale => seale(inner(2)?),
        Lay::Warrington => warrington(inner(3)?),
        Lay::Filler => filler(inner(4)?),
        Lay::WarringtonSeale => warrington_seale(inner(5)?),
    };
    Some(normalised(&rings))
}

/// Rings scaled so that the outermost wires touch a circle of diameter 1.
fn normalised(rings: &[Ring]) -> Vec<Spot> {
    let across = rings.iter().map(|ring| 2.0 * ring.1 + ring.3).fold(0.0, f64::max);
    let spots = rings.iter().flat_map(|(wires, radius, first, diameter, layer)| {
        (0..*wires).map(move |index| Spot {
            radius: radius / across,
            angle: first + f64::from(index) * 2.0 * PI / f64::from(*wires),
            diameter: diameter / across,
            layer: *layer,
        })
    });
    spots.collect()
}

fn equal(layers: &[u32]) -> Vec<Ring> {
    (0_u32..).zip(layers).map(|(layer, wires)| (*wires, f64::from(layer), 0.0, 1.0, layer)).collect()
}

/// Pitch radius of wires of diameter 1 that touch in a ring.
fn touching(wires: u32) -> f64 {
    0.5 / (PI / f64::from(wires)).sin()
}

/// The centre wire and `n` wires of diameter 1 round it.
fn heart(n: u32) -> Vec<Ring> {
    let radius = touching(n);
    vec![(1, 0.0, 0.0, 2.0 * radius - 1.0, 0), (n, radius, 0.0, 1.0, 1)]
}

/// 1-n-n: every outer wire lies in the valley of two inner ones and touches its neighbours.
fn seale(n: u32) -> Vec<Ring> {
    let radius = touching(n);
    let half = PI / f64::from(n);
    let (a, b) = (radius * radius - 0.25, radius * radius * half.cos() + 0.25);
    let outer = (b + (b * b - a * a).sqrt()) / a;
    let mut rings = heart(n);
    rings.push((n, radius * outer, half, outer, 2));
    rings
}

/// Diameter and radius of the wires in the valleys, then of those on the crowns, of a Warrington layer round
/// `n` wires of diameter 1: both reach the same circle, and neighbours touch.
fn warrington_layer(n: u32) -> [(f64, f64); 2] {
    let inner = touching(n);
    let half = PI / f64::from(n);
    let layer = |large: f64| {
        let valley = inner * half.cos() + (((1.0 + large) / 2.0).powi(2) - 0.25).sqrt();
        let small = valley + large / 2.0 - inner - 0.5;
        [(large, valley), (small, inner + 0.5 + small / 2.0)]
    };
    let room = |large: f64| {
        let [(large, valley), (small, crown)] = layer(large);
        apart(valley, crown, half) - (large + small) / 2.0
    };
    layer(bisected(0.4, 2.0, |large| room(large) < 0.0))
}

/// 1-n-(n+n).
fn warrington(n: u32) -> Vec<Ring> {
    let [(large, valley), (small, crown)] = warrington_layer(n);
    let mut rings = heart(n);
    rings.push((n, valley, PI / f64::from(n), large, 2));
    rings.push((n, crown, 0.0, small, 2));
    rings
}

/// 1-n-(n+n)-2n: a Warrington layer and a Seale layer in its valleys.
fn warrington_seale(n: u32) -> Vec<Ring> {
    let [(large, valley), (small, crown)] = warrington_layer(n);
    let quarter = PI / f64::from(2 * n);
    let ring = touching(2 * n);
    let clear = |outer: f64| {
        apart(ring * outer, valley, quarter) >= (outer + large) / 2.0
            && apart(ring * outer, crown, quarter) >= (outer + small) / 2.0
    };
    let outer = bisected(0.5, 3.0, clear);
    let mut rings = warrington(n);
    rings.push((2 * n, ring * outer, quarter, outer, 3));
    rings
}

/// 1-n-nF-2n: thin filler wires in the valleys under the outer layer.
fn filler(n: u32) -> Vec<Ring> {
    let (inner, ring) = (touching(n), touching(2 * n));
    let (half, quarter) = (PI / f64::from(n), PI / f64::from(2 * n));
    let outer = bisected(0.5, 3.0, |outer| apart(inner, ring * outer, quarter) >= f64::midpoint(1.0, outer));
    let to_inner = |radius: f64| apart(inner, radius, half) - 0.5;
    let to_outer = |radius: f64| apart(ring * outer, radius, quarter) - outer / 2.0;
    let radius = bisected(inner * half.cos(), ring * outer, |radius| to_inner(radius) >= to_outer(radius));
    let mut rings = heart(n);
    rings.push((n, radius, half, 2.0 * to_inner(radius).min(to_outer(radius)), 2));
    rings.push((2 * n, ring * outer, quarter, outer, 3));
    rings
}

/// Distance between points at two radii and an angle between them.
fn apart(a: f64, b: f64, angle: f64) -> f64 {
    (a * a + b * b - 2.0 * a * b * angle.cos()).sqrt()
}

/// Where a condition that fails at `low` and holds at `high` begins to hold.
fn bisected(mut low: f64, mut high: f64, holds: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..60 {
        let middle = f64::midpoint(low, high);
        if holds(middle) {
            high = middle;
        } else {
            low = middle;
        }
    }
    high
}

//! The surfaces that a section cuts, about the conductor's middle, in its own millimetres.

use super::grooved_outline::{SAG, page, with_identification_grooves};
use super::subject::Subject;
use crate::section::{Construction, LayerRole, Layout, MaterialGroup, RegionKind, Wire, wires};
use crate::sketch::appearance::{Shade, Tone};
use crate::sketch::outline::{Outline, arc, circle, clipped};
use crate::sketch::plane::{Point, at};
use crate::sketch::scene::Primitive;
use crate::units::Length;
use std::f64::consts::{FRAC_PI_2, PI};

/// One surface: of a wire, of a whole profile, of a core.
#[derive(Debug, Clone)]
pub(crate) struct CutSurface {
    pub primitive: Primitive,
    pub tone: Tone,
    /// Whether it has worn away.
    pub gone: bool,
    /// Which group of a composite it belongs to.
    pub role: LayerRole,
}

impl CutSurface {
    pub fn new(primitive: Primitive, tone: Tone) -> Self {
        Self { primitive, tone, gone: false, role: LayerRole::Outer }
    }
}

/// Every surface of a conductor, y downward.
pub(crate) fn cut_surfaces(subject: &Subject) -> Vec<CutSurface> {
    let tone = Tone::Metal(subject.group(), Shade::Plain);
    match subject.construction {
        Construction::Stranded(_) | Construction::Composite(_) | Construction::Rope(_) => bundle(subject),
        Construction::Solid { diameter } => {
            let ring = circle(at(0.0, 0.0), diameter.mm() / 2.0, SAG);
            match subject.worn_to {
                Some(height) => worn(&ring, *diameter, height, tone),
                None => vec![CutSurface::new(Primitive::Circle(at(0.0, 0.0), diameter.mm() / 2.0), tone)],
            }
        }
        Construction::Grooved(grooved) => {
            let ring = with_identification_grooves(grooved, subject.identification_grooves);
            match subject.worn_to {
                Some(height) => worn(&ring, grooved.height, height, tone),
                None => vec![CutSurface::new(Primitive::Area(Outline::new(ring)), tone)],
            }
        }
        Construction::Tube { outside_diameter, wall } => {
            let outside = outside_diameter.mm() / 2.0;
            let inside = circle(at(0.0, 0.0), outside - wall.mm(), SAG);
            let outline = Outline::new(circle(at(0.0, 0.0), outside, SAG)).with_hole(inside);
            vec![CutSurface::new(Primitive::Area(outline), tone)]
        }
        Construction::Bar { width, thickness, corner_radius } => {
            vec![CutSurface::new(Primitive::Area(bar(width.mm(), thickness.mm(), corner_radius.mm())), tone)]
        }
    }
}

/// Wires and other circles where they lie, tones by layer.
fn bundle(subject: &Subject) -> Vec<CutSurface> {
    let Ok(layout) = wires(subject.construction) else { return outline_circle(subject) };
    let regions = layout.regions.iter().map(|region| {
        let tone = match region.kind {
            RegionKind::Fibre => Tone::Metal(MaterialGroup::Polymer, Shade::Deep),
            RegionKind::Strand => Tone::Metal(subject.group(), Shade::Plain),
        };
        let role = if region.kind == RegionKind::Fibre { LayerRole::Core } else { LayerRole::Outer };
        CutSurface {
            role,
            ..CutSurface::new(Primitive::Circle(page(region.centre), region.diameter.mm() / 2.0), tone)
        }
    });
    let wires = layout.wires.iter().map(|wire| {
        let tone = wire_tone(subject, wire, deepest(&layout, wire));
        let circle = Primitive::Circle(page(wire.centre), wire.diameter.mm() / 2.0);
        CutSurface { role: wire.role, ..CutSurface::new(circle, tone) }
    });
    regions.chain(wires).collect()
}

/// A circle on the overall diameter, where wires can't be laid out.
fn outline_circle(subject: &Subject) -> Vec<CutSurface> {
    let circle = Primitive::Circle(at(0.0, 0.0), subject.section.overall_diameter.mm() / 2.0);
    vec![CutSurface::new(circle, Tone::Metal(subject.group(), Shade::Plain))]
}

/// The outermost layer of the group or strand that a wire belongs to.
fn deepest(layout: &Layout, wire: &Wire) -> u32 {
    let same = |other: &&Wire| other.role == wire.role && other.strand == wire.strand;
    layout.wires.iter().filter(same).map(|other| other.layer).max().unwrap_or(wire.layer)
}

/// Tones by layer, counted from outside: neighbours differ in depth; a core starts deep, and strands
/// side by side take turns.
fn wire_tone(subject: &Subject, wire: &Wire, outermost: u32) -> Tone {
    let depth = (outermost - wire.layer) as usize;
    if wire.role == LayerRole::Core {
        return Tone::Metal(subject.core_group(), [Shade::Deep, Shade::Plain, Shade::Pale][depth % 3]);
    }
    let turn = wire.strand.map_or(0, |strand| strand as usize % 2);
    Tone::Metal(subject.group(), [Shade::Plain, Shade::Pale, Shade::Deep][(depth + turn) % 3])
}

/// What is left above the flat, and what has gone below it.
fn worn(ring: &[Point], height: Length, remaining: Length, tone: Tone) -> Vec<CutSurface> {
    let flat = remaining.mm() - height.mm() / 2.0;
    let left = clipped(ring, |point| flat - point.y);
    let gone = clipped(ring, |point| point.y - flat);
    let whole = |points: Vec<Point>, gone: bool| CutSurface {
        gone,
        ..CutSurface::new(Primitive::Area(Outline::new(points)), tone)
    };
    let mut surfaces = Vec::new();
    if gone.len() > 2 {
        surfaces.push(whole(gone, true));
    }
    if left.len() > 2 {
        surfaces.push(whole(left, false));
    }
    surfaces
}

fn bar(width: f64, thickness: f64, radius: f64) -> Outline {
    if radius <= 0.0 {
        let (x, y) = (width / 2.0, thickness / 2.0);
        return Outline::of(&[(-x, -y), (x, -y), (x, y), (-x, y)]);
    }
    let (x, y) = (width / 2.0 - radius, thickness / 2.0 - radius);
    let corners = [(x, y, 0.0), (-x, y, FRAC_PI_2), (-x, -y, PI), (x, -y, PI + FRAC_PI_2)];
    let points = corners.iter().flat_map(|&(x, y, from)| arc(at(x, y), radius, from, from + FRAC_PI_2, SAG));
    Outline::new(points.collect())
}

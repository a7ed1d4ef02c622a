//! Wires and circles of a cross-section, and where they lie.

use super::LayerRole;
use super::outline::Point;
use crate::units::Length;

/// The wires of a conductor where they lie, the origin in its centre.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Layout {
    /// Every wire, from the centre out; none where the conductor is no bundle of round wires.
    pub wires: Vec<Wire>,
    /// Circles that are not laid out wire by wire.
    pub regions: Vec<Region>,
    /// What was assumed of a rope's strands; empty where the construction settles it all.
    pub assumed: String,
}

/// One round wire.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wire {
    /// Its centre.
    pub centre: Point,
    /// Its diameter.
    pub diameter: Length,
    /// Its layer, counted from the centre out; in a rope, from the centre of its strand.
    pub layer: u32,
    /// Core or outer group; in a rope, core or strands round it.
    pub role: LayerRole,
    /// Which strand of a rope it belongs to, counted from the centre out.
    pub strand: Option<u32>,
}

/// A circle in a cross-section that is not laid out wire by wire.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Region {
    /// Its centre.
    pub centre: Point,
    /// Its diameter.
    pub diameter: Length,
    /// What it is.
    pub kind: RegionKind,
}

/// What a circle that is not laid out stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum RegionKind {
    /// A core of fibre.
    Fibre,
    /// A strand whose class does not settle how its wires lie.
    Strand,
}

/// The point at a radius and an angle in radians from the x axis.
pub(super) fn at(radius: Length, angle: f64) -> Point {
    Point { x: radius * angle.cos(), y: radius * angle.sin() }
}

//! What was computed of a conductor.

use crate::units::{Area, Force, Length, LinearMass, LinearResistance};

/// Everything computed of one conductor; what does not apply or lacks a figure is `None`.
#[derive(Debug, Clone, PartialEq)]
pub struct Section {
    /// Area of metal.
    pub metal: Area,
    /// Diameter of the circle round the conductor (height of a grooved wire, diagonal of a bar).
    pub overall_diameter: Length,
    /// Area of the circle on the overall diameter; never called section.
    pub circle: Area,
    /// Metal section / circle area.
    pub fill_ratio: f64,
    /// Metal of a composite's outer group.
    pub outer: Option<Area>,
    /// Metal of a composite's core.
    pub core: Option<Area>,
    /// Mass per length.
    pub mass: Option<LinearMass>,
    /// Resistance at 20 °C.
    pub resistance_20c: Option<LinearResistance>,
    /// Rated tensile strength.
    pub breaking_load: Option<Force>,
    /// Layers from the centre out; empty where the conductor has none.
    pub layers: Vec<Layer>,
    /// Width of metal between the rounded roots of a grooved wire.
    pub neck: Option<Length>,
    /// The formulas and standards used, in words.
    pub sources: Vec<String>,
}

/// One ring of wires.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Layer {
    /// How many wires lie in it.
    pub wires: u32,
    /// Radius of the circle through their centres.
    pub pitch_radius: Length,
    /// Diameter of one wire.
    pub wire_diameter: Length,
    /// Which group it belongs to.
    pub role: LayerRole,
}

/// The group that a layer belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LayerRole {
    /// The core of a composite.
    Core,
    /// The conductor itself, or the outer group of a composite.
    Outer,
}

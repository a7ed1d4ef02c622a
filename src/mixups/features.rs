//! What a hand, an eye, a magnet or a scratch finds on a conductor.

use crate::catalogue::Conductor;
use crate::section::{Construction, Layer, Magnetic, MaterialGroup, RopeCore};
use crate::units::Length;

/// What a conductor looks like from its end.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shape {
    /// Round: one wire, or wires in layers.
    Round,
    /// A contact wire with grooves.
    Grooved,
    /// Strands of wires.
    Rope,
    /// Hollow.
    Tube,
    /// Flat.
    Bar,
}

impl Shape {
    /// In words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Round => "round",
            Self::Grooved => "grooved",
            Self::Rope => "strands of wires",
            Self::Tube => "hollow",
            Self::Bar => "flat",
        }
    }
}

/// The colour of the metal under a fresh scratch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Scratch {
    /// Copper-coloured: copper and bronze alike.
    Copper,
    /// Grey: aluminium, steel, zinc.
    Grey,
}

impl Scratch {
    /// The word for it in what is looked up.
    pub(super) fn word(self) -> &'static str {
        match self {
            Self::Copper => "copper",
            Self::Grey => "grey",
        }
    }

    /// In words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Copper => "copper-coloured",
            Self::Grey => "grey",
        }
    }
}

/// What a conductor looks like from its end.
#[must_use]
pub fn shape(conductor: &Conductor) -> Shape {
    match conductor.construction {
        Construction::Solid { .. } | Construction::Stranded(_) | Construction::Composite(_) => Shape::Round,
        Construction::Grooved(_) => Shape::Grooved,
        Construction::Rope(_) => Shape::Rope,
        Construction::Tube { .. } => Shape::Tube,
        Construction::Bar { .. } => Shape::Bar,
    }
}

/// How many wires it has altogether; a rope's by its class.
pub(super) fn wires(conductor: &Conductor) -> Option<u32> {
    match &conductor.construction {
        Construction::Rope(rope) => class(&rope.class).map(|(strands, wires)| strands * wires),
        Construction::Solid { .. } => Some(1),
        Construction::Stranded(_) | Construction::Composite(_) => {
            Some(conductor.section.layers.iter().map(|layer| layer.wires).sum())
        }
        _ => None,
    }
}

/// How many wires are seen from outside; `None` for ropes and whole profiles.
#[must_use]
pub fn outer_wires(conductor: &Conductor) -> Option<u32> {
    outer_layer(conductor).map(|layer| layer.wires)
}

pub(super) fn wire_diameter(conductor: &Conductor) -> Option<Length> {
    outer_layer(conductor).map(|layer| layer.wire_diameter)
}

/// The colour under a fresh scratch; `None` where it says nothing, as on plastic.
pub(super) fn scratch(conductor: &Conductor) -> Option<Scratch> {
    match conductor.material.group {
        MaterialGroup::Copper | MaterialGroup::Bronze => Some(Scratch::Copper),
        MaterialGroup::Polymer => None,
        _ => Some(Scratch::Grey),
    }
}

/// What a magnet finds: the outer wires, or the core under them; `None` where either is not known and
/// the other does not settle it.
pub(super) fn magnetic(conductor: &Conductor) -> Option<Magnetic> {
    let outer = conductor.material.magnetic;
    let Construction::Composite(composite) = &conductor.construction else { return outer };
    let core = composite.core_material.as_ref().and_then(|material| material.magnetic);
    match (outer, core) {
        (Some(outer), Some(core)) => Some(outer.max(core)),
        (known, other) => known.or(other).filter(|known| *known == Magnetic::Yes),
    }
}

fn outer_layer(conductor: &Conductor) -> Option<&Layer> {
    match shape(conductor) {
        Shape::Round => conductor.section.layers.last(),
        _ => None,
    }
}

/// What a rope's core is made of.
pub(super) fn core(conductor: &Conductor) -> Option<&'static str> {
    match &conductor.construction {
        Construction::Rope(rope) if rope.core == RopeCore::Fibre => Some("fibre"),
        Construction::Rope(_) => Some("steel"),
        _ => None,
    }
}

/// Strands in the outer layer of a rope.
pub(super) fn strands(conductor: &Conductor) -> Option<u32> {
    match &conductor.construction {
        Construction::Rope(rope) => match class(&rope.class)? {
            (1, wires) => Some(wires),
            // A class of seven strands has one of them in the middle.
            (7, _) => Some(6),
            (strands, _) => Some(strands),
        },
        _ => None,
    }
}

fn class(class: &str) -> Option<(u32, u32)> {
    let (strands, wires) = class.split_once('x')?;
    let digits: String = wires.chars().take_while(char::is_ascii_digit).collect();
    Some((strands.parse().ok()?, digits.parse().ok()?))
}

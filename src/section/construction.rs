//! How a conductor is built.

use super::Material;
use crate::units::{Angle, Length, Stress};
use std::sync::Arc;

/// How a conductor is built: the measurements that a record or the command line gives.
#[derive(Debug, Clone, PartialEq)]
pub enum Construction {
    /// One round wire.
    Solid {
        /// Its diameter.
        diameter: Length,
    },
    /// Round wires of one size in layers.
    Stranded(Group),
    /// A core of one material with layers of another round it.
    Composite(Composite),
    /// A wire rope.
    Rope(Rope),
    /// Grooved contact wire.
    Grooved(Grooved),
    /// A round tube.
    Tube {
        /// Outside diameter.
        outside_diameter: Length,
        /// Wall thickness.
        wall: Length,
    },
    /// A rectangular bar.
    Bar {
        /// The longer side.
        width: Length,
        /// The shorter side.
        thickness: Length,
        /// Radius of the four corners.
        corner_radius: Length,
    },
}

/// Wires of one diameter, in layers.
#[derive(Debug, Clone, PartialEq)]
pub struct Group {
    /// How many wires, and how they lie.
    pub strands: Strands,
    /// Diameter of one wire.
    pub wire_diameter: Length,
    /// Lay ratios of the layers round the centre, innermost first; empty where not stated.
    pub lay_ratios: Vec<f64>,
}

/// The wires of a group: a number that has one usual arrangement, or the layers themselves.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Strands {
    /// A number of wires with its usual arrangement.
    Wires(u32),
    /// Wires layer by layer, innermost first.
    Layers(Vec<u32>),
}

/// A core with an outer group round it.
#[derive(Debug, Clone, PartialEq)]
pub struct Composite {
    /// The core's wires.
    pub core: Group,
    /// What the core is made of, where known.
    pub core_material: Option<Arc<Material>>,
    /// The wires round the core, of the conductor's own material.
    pub outer: Group,
}

/// A wire rope, by class and core (EN 12385).
#[derive(Debug, Clone, PartialEq)]
pub struct Rope {
    /// The class as written, such as "7x19".
    pub class: String,
    /// The core.
    pub core: RopeCore,
    /// Nominal diameter.
    pub diameter: Length,
    /// Rope grade, where stated.
    pub grade: Option<Stress>,
}

/// The core of a rope.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum RopeCore {
    /// A strand of wires (WSC).
    Wsc,
    /// An independent wire rope (IWRC).
    Iwrc,
    /// Fibre.
    Fibre,
}

impl RopeCore {
    /// The word that records have for it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Wsc => "wsc",
            Self::Iwrc => "iwrc",
            Self::Fibre => "fibre",
        }
    }
}

/// Profile of a grooved contact wire. Letters are those of EN 50149 figures.
#[derive(Debug, Clone, PartialEq)]
pub struct Grooved {
    /// Height, A.
    pub height: Length,
    /// Width, B.
    pub width: Length,
    /// Distance between the grooves' apexes, E.
    pub apex_width: Length,
    /// Depth of the apexes under the top, K.
    pub apex_depth: Length,
    /// Fillet radius at the root of the groove, R.
    pub fillet: Length,
    /// Slope of the lower flank below the horizontal, G.
    pub lower_flank: Angle,
    /// Slope of the upper flank above the horizontal, H.
    pub upper_flank: Angle,
}

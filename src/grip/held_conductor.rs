//! The conductor as a gripping part meets it.

use crate::section::{Construction, Layer, LayerRole, Section};
use crate::units::Length;

/// What the rules measure by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct GripLimits {
    /// Of a collet's closure, kept in hand.
    pub closure_reserve: Length,
}

impl Default for GripLimits {
    fn default() -> Self {
        Self { closure_reserve: Length::from_mm(0.3) }
    }
}

/// A conductor as a gripping part meets it: how thick, how sure, what inside.
#[derive(Debug, Clone, PartialEq)]
pub struct HeldConductor {
    /// Diameter of the circle round it.
    pub overall_diameter: Length,
    /// How far the overall diameter may be off, either way; zero where not known.
    pub diameter_tolerance: Length,
    /// How far the diameter of a wire may be off, either way; zero where not known.
    pub wire_diameter_tolerance: Length,
    /// What is inside.
    pub construction: HeldConstruction,
}

/// What a conductor is made like, as far as gripping it goes.
#[derive(Debug, Clone, PartialEq)]
pub enum HeldConstruction {
    /// Round wires in layers from the centre out; a solid wire is its own centre.
    Layers(Vec<Layer>),
    /// A rope of several strands.
    StrandedRope,
    /// A rope of one strand.
    SingleStrandRope,
    /// A grooved wire.
    Grooved {
        /// From the top to the running face.
        height: Length,
        /// Across.
        width: Length,
    },
    /// A tube.
    Tube,
    /// A flat bar: how it lies in a grip is not known.
    Bar,
}

impl HeldConductor {
    /// A conductor by its construction and what was computed of it; tolerances are zero until given.
    #[must_use]
    pub fn new(construction: &Construction, section: &Section) -> Self {
        Self {
            overall_diameter: section.overall_diameter,
            diameter_tolerance: Length::ZERO,
            wire_diameter_tolerance: Length::ZERO,
            construction: held_construction(construction, section),
        }
    }

    /// One round wire of a diameter, without tolerance.
    ///
    /// ```
    /// use fittingcards::grip::HeldConductor;
    /// use fittingcards::units::Length;
    /// assert_eq!(HeldConductor::solid(Length::from_mm(8.0)).overall_diameter.mm(), 8.0);
    /// ```
    #[must_use]
    pub fn solid(diameter: Length) -> Self {
        Self {
            overall_diameter: diameter,
            diameter_tolerance: Length::ZERO,
            wire_diameter_tolerance: Length::ZERO,
            construction: HeldConstruction::Layers(vec![centre(diameter)]),
        }
    }

    /// The same conductor with tolerances on its overall and its wire diameter, where they are known.
    #[must_use]
    pub fn with_tolerances(mut self, diameter: Option<Length>, wire_diameter: Option<Length>) -> Self {
        self.diameter_tolerance = diameter.unwrap_or(Length::ZERO);
        self.wire_diameter_tolerance = wire_diameter.unwrap_or(Length::ZERO);
        self
    }

    /// A grooved wire worn down to a remaining height; `None` for any other conductor, and where that
    /// is not above 0 and below the height it has.
    ///
    /// The width stays until the running face has worn past the middle of the circle on the height.
    #[must_use]
    pub fn worn_to(&self, remaining: Length) -> Option<Self> {
        let HeldConstruction::Grooved { height, width } = self.construction else { return None };
        if remaining >= height || !remaining.is_positive() {
            return None;
        }
        let chord = ((remaining.mm() * (height.mm() - remaining.mm())).sqrt() * 2.0).min(height.mm());
        let width = if remaining * 2.0 >= height { width } else { width * (chord / height.mm()) };
        let worn = HeldConstruction::Grooved { height: remaining, width };
        Some(Self { overall_diameter: remaining.max(width), construction: worn, ..self.clone() })
    }

    /// The layers of wires; `None` where the conductor has none that a spreading cone could part.
    #[must_use]
    pub fn layers(&self) -> Option<&[Layer]> {
        match &self.construction {
            HeldConstruction::Layers(layers) => Some(layers),
            _ => None,
        }
    }
}

fn held_construction(construction: &Construction, section: &Section) -> HeldConstruction {
    match construction {
        Construction::Solid { diameter } => HeldConstruction::Layers(vec![centre(*diameter)]),
        Construction::Stranded(_) | Construction::Composite(_) => {
            HeldConstruction::Layers(section.layers.clone())
        }
        Construction::Rope(rope) if rope.class.starts_with("1x") => HeldConstruction::SingleStrandRope,
        Construction::Rope(_) => HeldConstruction::StrandedRope,
        Construction::Grooved(grooved) => {
            HeldConstruction::Grooved { height: grooved.height, width: grooved.width }
        }
        Construction::Tube { .. } => HeldConstruction::Tube,
        Construction::Bar { .. } => HeldConstruction::Bar,
    }
}

fn centre(diameter: Length) -> Layer {
    Layer { wires: 1, pitch_radius: Length::ZERO, wire_diameter: diameter, role: LayerRole::Outer }
}

//! What fittings hold.

use super::Origin;
use crate::records::{Duty, WearBasis};
use crate::section::{Citation, Construction, Material, Section};
use crate::units::{Area, Force, Length, LinearMass, LinearResistance};
use std::sync::Arc;

/// What fittings hold.
#[derive(Debug, Clone)]
pub struct Conductor {
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// What it is for.
    pub duty: Duty,
    /// What it is made of (a composite's outer group).
    pub material: Arc<Material>,
    /// Nominal size in mm², a name rather than a measurement.
    pub nominal_size: Option<Area>,
    /// How it is built.
    pub construction: Construction,
    /// Wear limits of a grooved wire.
    pub wear: Option<WearLimits>,
    /// Tolerance on the overall diameter.
    pub diameter_tolerance: Option<Length>,
    /// Tolerance on the wire diameter.
    pub wire_diameter_tolerance: Option<Length>,
    /// What the specification prints.
    pub stated: Stated,
    /// What separates it where a caliper can't.
    pub identity: Identity,
    /// Where its figures come from.
    pub source: Citation,
    /// What must be known before it is handled.
    pub caution: String,
    /// Everything computed of it.
    pub section: Section,
    /// Where it stands.
    pub origin: Origin,
}

impl Conductor {
    /// Its breaking load: stated, else computed.
    #[must_use]
    pub fn breaking_load(&self) -> Option<Force> {
        self.stated.breaking_load.or(self.section.breaking_load)
    }
}

/// What a specification prints of a conductor; audited, never silently replaced.
#[derive(Debug, Clone, Default, PartialEq)]
#[expect(missing_docs, reason = "the names say it")]
pub struct Stated {
    pub section: Option<Area>,
    pub overall_diameter: Option<Length>,
    pub mass: Option<LinearMass>,
    pub breaking_load: Option<Force>,
    pub resistance_20c: Option<LinearResistance>,
}

/// What separates a conductor where a caliper can't; empty where nothing is known.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Identity {
    /// Text on the drum tag.
    pub drum_tag: String,
    /// Tracer thread or wire.
    pub tracer: String,
    /// Identification grooves of a contact wire.
    pub grooves: String,
}

/// How far a contact wire may wear.
#[derive(Debug, Clone, PartialEq)]
pub struct WearLimits {
    /// Loss of section at which it must go, percent.
    pub limit_percent: Option<f64>,
    /// The section that percent is of.
    pub basis: WearBasis,
    /// Remaining height at which replacement is planned.
    pub plan_height: Option<Length>,
    /// Remaining height at which it is replaced.
    pub replace_height: Option<Length>,
    /// Remaining height at which traffic stops.
    pub stop_height: Option<Length>,
}

//! What fittings hold.

use super::Origin;
use crate::records::{Duty, WearBasis};
use crate::section::{Citation, Construction, Material, Section, worn_metal};
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

    /// What it carries at its weakest: its breaking load, or of a contact wire what is left at its stop height; without
    /// a stop height, at the lowest height that its record states.
    #[must_use]
    pub fn carries(&self) -> Option<Carried> {
        let worn = self.wear.as_ref().and_then(WearLimits::lowest);
        match worn.and_then(|(height, words)| Some(Carried { words, load: self.load_at(height)? })) {
            Some(worn) => Some(worn),
            None => Some(Carried { words: "the breaking load", load: self.breaking_load()? }),
        }
    }

    /// Of a contact wire the lowest height that its record states, its stop height first.
    #[must_use]
    pub fn lowest_height(&self) -> Option<Length> {
        self.wear.as_ref().and_then(WearLimits::lowest).map(|(height, _)| height)
    }

    /// The section that percent of wear are counted on: the nominal size where its record says so, else what it has when new.
    #[must_use]
    pub fn wear_basis(&self) -> Area {
        let basis = self.wear.as_ref().map(|limits| limits.basis);
        let nominal = self.nominal_size.filter(|_| basis == Some(WearBasis::Nominal));
        nominal.unwrap_or(self.section.metal)
    }

    /// What is left at a remaining height: by the strength of its material, and no more than of its breaking load in
    /// proportion to the section.
    fn load_at(&self, height: Length) -> Option<Force> {
        let left = worn_metal(&self.construction, Some(&self.material), self.nominal_size, height).ok()?;
        let in_proportion = self.breaking_load().map(|load| load * (left.section / self.section.metal));
        [left.breaking_load, in_proportion].into_iter().flatten().reduce(Force::min)
    }
}

/// What a conductor carries at its weakest.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Carried {
    /// What that is, in words.
    pub words: &'static str,
    /// The load.
    pub load: Force,
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

impl WearLimits {
    /// The lowest height that is stated, and what is left there in words.
    fn lowest(&self) -> Option<(Length, &'static str)> {
        let heights = [
            (self.stop_height, "what is left at the stop height"),
            (self.replace_height, "what is left at the replace height"),
            (self.plan_height, "what is left at the plan height"),
        ];
        heights.into_iter().find_map(|(height, words)| Some((height?, words)))
    }
}

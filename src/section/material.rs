//! What wires and parts are made of.

use super::Citation;
use crate::units::{Area, Density, Length, Resistivity, Stress};

/// A material with the figures that are known of it; what is not known is `None`, never guessed.
#[derive(Debug, Clone, PartialEq)]
pub struct Material {
    /// The id that records use.
    pub id: String,
    /// Its name in words.
    pub name: String,
    /// The family it belongs to.
    pub group: MaterialGroup,
    /// Mass per volume.
    pub density: Option<Density>,
    /// Resistivity at 20 °C.
    pub resistivity_20c: Option<Resistivity>,
    /// Temperature coefficient of resistance at 20 °C, per kelvin.
    pub temperature_coefficient_per_k: Option<f64>,
    /// Tensile strength of the single round wire.
    pub strength: Option<Strength>,
    /// Tensile strength of grooved contact wire of it, in rising order of nominal section; empty where not known.
    pub contact_wire_strength: Vec<SizeStep>,
    /// What stranding leaves of that strength, as a factor; 1 where nothing is stated.
    pub strand_efficiency: f64,
    /// Stress at 1 % elongation, for the core of a composite.
    pub strength_as_core: Option<Strength>,
    /// How a magnet takes to it.
    pub magnetic: Option<Magnetic>,
    /// Brinell hardness.
    pub hardness_hb: Option<f64>,
    /// What must be known before it is worked on.
    pub caution: String,
    /// Where the figures come from.
    pub source: Citation,
}

/// The family of a material: decides tone, hatch and galvanic pairs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[expect(missing_docs, reason = "the names say it")]
pub enum MaterialGroup {
    Copper,
    Bronze,
    Aluminium,
    Steel,
    Stainless,
    Iron,
    Zinc,
    Polymer,
}

/// How a magnet takes to a material.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Magnetic {
    /// Not at all.
    No,
    /// A strong magnet pulls a little.
    Slight,
    /// It holds.
    Yes,
}

impl Magnetic {
    /// The word that records have for it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::No => "no",
            Self::Slight => "slight",
            Self::Yes => "yes",
        }
    }
}

/// Strength of a wire, the same for all or by its diameter.
#[derive(Debug, Clone, PartialEq)]
pub enum Strength {
    /// One value whatever the diameter.
    Constant(Stress),
    /// Rows in rising order of diameter.
    ByDiameter(Vec<StrengthStep>),
}

/// One row of a table of strengths by nominal section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SizeStep {
    /// The row holds up to and including this nominal section.
    pub up_to: Area,
    /// Strength of a contact wire in that range.
    pub strength: Stress,
}

/// One row of a strength table.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StrengthStep {
    /// The row holds up to and including this diameter; the last row may be open.
    pub up_to: Option<Length>,
    /// Strength of a wire in that range.
    pub strength: Stress,
}

/// No plain iron or steel wire conducts so well (common practice, no source); clad with aluminium they do, at 14 %
/// of annealed copper and more.
const CLAD: Resistivity = Resistivity::from_nohm_m(130.0);

impl Material {
    /// Whether its figures are those of EN 50149, so that a grooved contact wire of it is rated as that standard has it.
    #[must_use]
    pub fn is_of_en_50149(&self) -> bool {
        self.source.standard == "EN 50149"
    }

    /// Whether a composite's core of it conducts: zinc-coated steel does not count, aluminium-clad steel does, as in
    /// EN 50182.
    ///
    /// ```
    /// use fittingcards::section::materials;
    /// assert!(!materials::find("steel-st1a").expect("built in").conducts_as_core());
    /// assert!(materials::find("clad-steel-a20sa").expect("built in").conducts_as_core());
    /// ```
    #[must_use]
    pub fn conducts_as_core(&self) -> bool {
        !self.group.is_iron() || self.resistivity_20c.is_some_and(|resistivity| resistivity < CLAD)
    }
}

impl MaterialGroup {
    /// In a word.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Copper => "copper",
            Self::Bronze => "bronze",
            Self::Aluminium => "aluminium",
            Self::Steel => "steel",
            Self::Stainless => "stainless",
            Self::Iron => "iron",
            Self::Zinc => "zinc",
            Self::Polymer => "polymer",
        }
    }

    /// Whether it is iron or steel of any kind.
    #[must_use]
    pub fn is_iron(self) -> bool {
        matches!(self, Self::Steel | Self::Stainless | Self::Iron)
    }
}

impl Strength {
    /// Strength of a wire of this diameter; `None` beyond the last row.
    ///
    /// ```
    /// use fittingcards::section::{Strength, StrengthStep};
    /// use fittingcards::units::{Length, Stress};
    /// let strength = Strength::ByDiameter(vec![StrengthStep {
    ///     up_to: Some(Length::from_mm(2.25)),
    ///     strength: Stress::from_n_per_mm2(180.0),
    /// }]);
    /// assert!(strength.of_wire(Length::from_mm(2.25)).is_some());
    /// assert!(strength.of_wire(Length::from_mm(2.26)).is_none());
    /// ```
    #[must_use]
    pub fn of_wire(&self, diameter: Length) -> Option<Stress> {
        let rounding = Length::from_mm(1e-9);
        match self {
            Self::Constant(strength) => Some(*strength),
            Self::ByDiameter(steps) => steps
                .iter()
                .find(|step| step.up_to.is_none_or(|up_to| diameter <= up_to + rounding))
                .map(|step| step.strength),
        }
    }
}

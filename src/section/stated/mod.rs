//! What a specification states against what is computed, and the classic confusions between the two.

mod contact_wire;
mod dimensions;
mod properties;
mod rounding;

pub use contact_wire::{ContactWireRule, contact_wire_rule};
pub use dimensions::{
    DiameterConfusion, NominalSize, SectionConfusion, judge_diameter, judge_nominal_size, judge_section,
};
pub use properties::{
    LoadConfusion, MassConfusion, judge_load, judge_mass, judge_resistance, load_window, most_load,
};

use super::Section;
use crate::units::{Area, Length};

/// What a stated value is held against.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Against<'a> {
    /// What was computed.
    pub section: &'a Section,
    /// The conductor's nominal size.
    pub nominal_size: Option<Area>,
    /// The section that the specification states.
    pub stated_section: Option<Area>,
    /// The overall diameter that the specification states.
    pub stated_diameter: Option<Length>,
    /// Stated section against computed, percent.
    pub section_tolerance_percent: f64,
    /// Stated diameter against computed.
    pub diameter_tolerance: Length,
}

/// What is to be said of a stated value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Verdict<C> {
    /// It agrees, as far as its printed digits and the tolerance go.
    Agrees,
    /// It does not agree, and it is something else that is known.
    Confused(C),
    /// It does not agree, and nothing says why.
    Differs,
}

impl<C> Verdict<C> {
    /// The confusion, where there is one.
    #[must_use]
    pub fn confusion(self) -> Option<C> {
        match self {
            Self::Confused(confusion) => Some(confusion),
            Self::Agrees | Self::Differs => None,
        }
    }

    /// Whether it does not agree and nothing says why.
    #[must_use]
    pub fn differs(&self) -> bool {
        matches!(self, Self::Differs)
    }
}

/// The candidate nearest to a value, among those that it agrees with as far as its printed digits and a part of the
/// candidate go.
fn nearest<C>(
    value: f64,
    candidates: impl IntoIterator<Item = (C, f64)>,
    part: f64,
    least_decimals: usize,
) -> Option<C> {
    candidates
        .into_iter()
        .filter(|(_, candidate)| rounding::agrees(value, *candidate, candidate * part, least_decimals))
        .map(|(confusion, candidate)| (confusion, (value / candidate - 1.0).abs()))
        .min_by(|a, b| a.1.total_cmp(&b.1))
        .map(|(confusion, _)| confusion)
}

//! How fittings that go together alike are put together.

use super::{Origin, Wording};
use crate::records::AssemblyStage;
use crate::units::{Force, Length, Range, Torque};

/// How fittings that go together alike are put together. A fitting takes from it what it does not state itself.
#[derive(Debug, Clone)]
pub struct Procedure {
    /// Its id.
    pub id: String,
    /// Its name.
    pub name: String,
    /// What is tightened and how.
    pub tightening: Vec<Tightening>,
    /// What a second person checks before the fitting is closed, where stated.
    pub witness: Option<Wording>,
    /// Assembly steps.
    pub steps: Vec<Step>,
    /// Whether a slip mark is painted on the conductor, where stated.
    pub slip_mark: Option<bool>,
    /// What makes a fitting unfit.
    pub reject_if: Vec<Wording>,
    /// What a check that fails calls for, where stated.
    pub if_wrong: IfWrong,
    /// Where it stands.
    pub origin: Origin,
}

impl Procedure {
    /// Its texts that may name values, in the order of its record.
    pub fn wordings(&self) -> impl Iterator<Item = &Wording> {
        let if_wrong = self.if_wrong.before_load.iter().chain(&self.if_wrong.under_load);
        let steps = self.steps.iter().map(|step| &step.wording);
        self.witness.iter().chain(steps).chain(&self.reject_if).chain(if_wrong)
    }
}

/// An assembly step.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Step {
    /// What to do.
    pub wording: Wording,
    /// How far the fitting is together when it is done, where stated.
    pub stage: Option<AssemblyStage>,
}

/// What a check that fails calls for, as far as it is stated.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct IfWrong {
    /// Before the line is tensioned.
    pub before_load: Option<Wording>,
    /// Under line tension.
    pub under_load: Option<Wording>,
}

/// One tightening.
#[derive(Debug, Clone, PartialEq)]
pub struct Tightening {
    /// What is tightened.
    pub item: String,
    /// Its thread, such as "M36x2"; empty where not stated.
    pub thread: String,
    /// Spanner size.
    pub spanner: Option<Length>,
    /// Torque window.
    pub torque: Option<Range<Torque>>,
    /// Preload that the torque is meant to give.
    pub preload: Option<Force>,
    /// What is greased, in words.
    pub grease: Vec<String>,
    /// How many times round.
    pub passes: Option<u32>,
}

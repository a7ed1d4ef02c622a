//! A fitting in the line, linked to its records.

use crate::catalogue::{Fitting, Part};
use crate::source::Place;
use crate::units::{Force, Length};
use jiff::civil::Date;
use std::sync::Arc;

/// A fitting in the line.
#[derive(Debug, Clone)]
pub struct Installed {
    /// Where in the line it is.
    pub place: String,
    /// What was built there.
    pub fitting: Arc<Fitting>,
    /// The gripping part that was written down, where one was.
    pub gripping_part: Option<Arc<Part>>,
    /// Stand-out after tightening, where it was measured.
    pub seated: Option<Length>,
    /// Stand-out under line tension, where it was measured.
    pub tensioned: Option<Length>,
    /// The day on which it was built, where it is known.
    pub built: Option<Date>,
    /// Who built it; empty where nobody wrote it down, as are the texts below.
    pub by: String,
    /// Who looked at it before it was closed.
    pub witness: String,
    /// The number of the slip that was filled in.
    pub slip: String,
    /// The issue of the card that it was built with, where it is stated.
    pub issue: Option<u32>,
    /// What else is to be known.
    pub remark: String,
    /// Where its row starts.
    pub at: Place,
}

impl Installed {
    /// How many times the line tension that it may be used at what holds there holds: the lesser of holding load and
    /// breaking load, over the line tension; `None` where the records don't state them.
    #[must_use]
    pub fn working_factor(&self) -> Option<f64> {
        let breaking = self.fitting.conductors.iter().filter_map(|conductor| conductor.breaking_load());
        let holds = breaking.chain(self.fitting.holding_load).map(Force::kn).reduce(f64::min)?;
        Some(holds / self.fitting.line_tension_max?.kn())
    }
}

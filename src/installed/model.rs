//! A fitting in the line, linked to its records.

use crate::catalogue::{Fitting, Part};
use crate::mixups::rope_end_keeps;
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
    /// How many times the line tension that it may be used at what holds there holds: the least of the holding load, of
    /// what each conductor carries at its weakest and of what a rope's end keeps of it, over the line tension; `None` where
    /// holding load or line tension is not stated: nothing is known of the fitting then.
    #[must_use]
    pub fn working_factor(&self) -> Option<f64> {
        let fitting = &self.fitting;
        let carried = fitting.conductors.iter().filter_map(|conductor| Some(conductor.carries()?.load));
        let ends = fitting.conductors.iter().filter_map(|conductor| rope_end_keeps(fitting, conductor));
        let holds = carried.chain(ends).fold(fitting.holding_load?, Force::min);
        Some(holds.kn() / fitting.line_tension_max?.kn())
    }
}

//! One combination of a fitting with a gripping part, and all of them body by body.

use crate::catalogue::{Conductor, Fitting, Part};
use crate::grip::Outcome;
use crate::units::Length;
use std::sync::Arc;

/// Every combination, body by body in the order of their numbers.
#[derive(Debug, Clone, Default)]
pub struct Mixups {
    /// Every part of role body that has gripping parts.
    pub bodies: Vec<BodyMixups>,
}

/// What can be built with one body.
#[derive(Debug, Clone)]
pub struct BodyMixups {
    /// The body.
    pub body: Arc<Part>,
    /// The fittings built with it, in the order of their numbers.
    pub fittings: Vec<Arc<Fitting>>,
    /// The gripping parts that go into it, in the order of their numbers.
    pub gripping_parts: Vec<Arc<Part>>,
    /// Part by part, and fitting by fitting within a part.
    pub cases: Vec<Case>,
}

/// A fitting built with everything of its own except, perhaps, the gripping part.
#[derive(Debug, Clone)]
pub struct Case {
    /// The gripping part.
    pub part: Arc<Part>,
    /// The fitting.
    pub fitting: Arc<Fitting>,
    /// The conductor in it.
    pub conductor: Arc<Conductor>,
    /// Whether the part is the fitting's own.
    pub right: bool,
    /// Whether a wrong part is proven on that conductor all the same.
    pub approved: bool,
    /// What happens.
    pub outcome: Outcome,
    /// This pair's stand-out less the right pair's.
    pub stand_out_shift: Option<Length>,
    /// Whether it is a mix-up that can be assembled.
    pub danger: bool,
    /// Whether somebody would see it from outside afterwards.
    pub visible: bool,
    /// A danger that isn't visible.
    pub hidden: bool,
    /// Whether the part's mark can be told from the right part's by colour, text and notches, for every eye.
    pub marks_distinct: bool,
}

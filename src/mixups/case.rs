//! One combination of a fitting with a gripping part, and all of them body by body.

use crate::catalogue::{Conductor, Fitting, Part};
use crate::colour::Mark;
use crate::grip::{Outcome, Verdict};
use crate::units::Length;
use std::collections::BTreeSet;
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
    /// The part's mark: stated on it, or that of the fittings it is right for.
    pub mark: Option<Mark>,
    /// Whether that mark is stated to be seen on the assembled fitting.
    pub mark_seen: bool,
    /// Whether the part is the fitting's own.
    pub right: bool,
    /// Whether the part is recorded as proven on that conductor.
    pub proven: bool,
    /// What happens.
    pub outcome: Outcome,
    /// The part's stand-out less that of the right part.
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

impl Mixups {
    /// What can be built with one body.
    #[must_use]
    pub fn body(&self, number: &str) -> Option<&BodyMixups> {
        let at = self.bodies.binary_search_by(|body| body.body.number.as_str().cmp(number)).ok()?;
        self.bodies.get(at)
    }

    /// Every case of every body, in their order.
    pub fn cases(&self) -> impl Iterator<Item = &Case> {
        self.bodies.iter().flat_map(|body| &body.cases)
    }

    /// The wrong parts that go where a fitting's own gripping part belongs, the worst first: hidden
    /// dangers, then dangers that show, then parts that are proven, then those that won't go together.
    #[must_use]
    pub fn wrong_parts(&self, fitting: &Fitting) -> Vec<&Case> {
        let mut wrong: Vec<&Case> = fitting
            .bodies()
            .filter_map(|item| self.body(&item.part.number))
            .flat_map(|body| &body.cases)
            .filter(|case| !case.right && case.fitting.number == fitting.number)
            .collect();
        wrong.sort_by(|a, b| a.weight().cmp(&b.weight()));
        // A part that goes into several bodies of the fitting is told once, at its worst.
        let mut told = BTreeSet::new();
        wrong.retain(|case| told.insert((case.part.number.as_str(), case.conductor.id.as_str())));
        wrong
    }
}

impl Case {
    /// Sorts the worst first.
    fn weight(&self) -> (bool, bool, u8, &str, &str) {
        (!self.hidden, !self.danger, gravity(self.outcome.verdict), &self.part.number, &self.conductor.id)
    }
}

/// How grave it is to be taken in by a verdict; the gravest is 0.
fn gravity(verdict: Verdict) -> u8 {
    match verdict {
        Verdict::ClosesWithoutGripping => 0,
        Verdict::CoreNotHeld => 1,
        Verdict::TipContact => 2,
        Verdict::Marginal => 3,
        Verdict::Unknown => 4,
        Verdict::Grips => 5,
        Verdict::StandsProud => 6,
        Verdict::WillNotEnter => 7,
    }
}

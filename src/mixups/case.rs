//! One combination of a fitting with a part or a kit that isn't its own, and all of them body by body.

use super::SeenBy;
use super::summary::Summary;
use crate::catalogue::{Conductor, Fitting, Gaps, Part, Role};
use crate::colour::Mark;
use crate::grip::{Outcome, Verdict};
use crate::units::{Length, Range};
use std::collections::BTreeSet;
use std::sync::Arc;

/// Every combination.
#[derive(Debug, Clone, Default)]
pub struct Mixups {
    /// Every part of role body that parts go into which decide, in the order of their numbers.
    pub bodies: Vec<BodyMixups>,
    /// What fittings without a body are built with, in the order of roles and interfaces.
    pub without_body: Vec<InterfaceMixups>,
    /// How much of the catalogue could not be looked at.
    pub gaps: Gaps,
}

/// What can be built with one body.
#[derive(Debug, Clone)]
pub struct BodyMixups {
    /// The body.
    pub body: Arc<Part>,
    /// The fittings built with it, in the order of their numbers.
    pub fittings: Vec<Arc<Fitting>>,
    /// The parts that decide and go into it, in the order of their numbers.
    pub parts: Vec<Arc<Part>>,
    /// Part by part, and fitting by fitting within a part.
    pub cases: Vec<Case>,
    /// Each fitting's whole set of such parts on every other conductor.
    pub kits: Vec<Kit>,
}

/// What fittings without a body can be built with: gripping parts of one role and interface.
#[derive(Debug, Clone)]
pub struct InterfaceMixups {
    /// What the parts do.
    pub role: Role,
    /// Their interface.
    pub interface: String,
    /// Part by part, and fitting by fitting within a part.
    pub cases: Vec<Case>,
}

/// What comes of a combination.
#[derive(Debug, Clone)]
pub struct Consequence {
    /// Whether it is the fitting's own.
    pub right: bool,
    /// Whether it is proven on that conductor in that body: with a proof that counts and that geometry
    /// does not contradict.
    pub proven: bool,
    /// What happens.
    pub outcome: Outcome,
    /// Where it is that only on worn wire; `None` on new wire, and on all that does not wear.
    pub worn: Option<Worn>,
    /// Where it can stand out after seating, over all tolerances and, where it is not right, over the wear of the wire.
    pub stand_outs: Option<Range<Length>>,
    /// Whether it is a mix-up that can be assembled.
    pub danger: bool,
    /// Whether somebody would see it from outside afterwards.
    pub visible: bool,
    /// A danger that isn't visible.
    pub hidden: bool,
    /// By what somebody would see it.
    pub seen_by: SeenBy,
    /// What it comes to.
    pub summary: Summary,
    /// Whether the marks can be told from the right ones by colour, text and notches, for every eye.
    pub marks_distinct: bool,
    /// The mark that is to be looked at.
    pub mark: Option<Mark>,
    /// Whether that mark is stated to be seen on the assembled fitting.
    pub mark_seen: bool,
    /// Its stand-out less that of the right part.
    pub stand_out_shift: Option<Length>,
}

/// A contact wire that is worn so far that something wrong comes to more harm than on new wire.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Worn {
    /// The height that is left.
    pub height: Length,
    /// What it comes to on new wire.
    pub when_new: Summary,
}

/// A fitting built with everything of its own except, perhaps, one part that decides.
#[derive(Debug, Clone)]
pub struct Case {
    /// The part.
    pub part: Arc<Part>,
    /// The fitting.
    pub fitting: Arc<Fitting>,
    /// The conductor in it.
    pub conductor: Arc<Conductor>,
    /// What comes of it.
    pub comes: Consequence,
}

impl Case {
    /// What the fitting's own part comes to, and what this one does: as a drawing of both says it.
    #[must_use]
    pub fn words_side_by_side(&self) -> [&'static str; 2] {
        [Summary::of_own(&self.fitting, self.part.role), self.summary].map(Summary::words)
    }
}

/// A fitting built with every part of another that decides.
#[derive(Debug, Clone)]
pub struct Kit {
    /// The fitting whose parts are put in.
    pub kit: Arc<Fitting>,
    /// Those parts, in item order.
    pub parts: Vec<Arc<Part>>,
    /// The fitting that is being built.
    pub fitting: Arc<Fitting>,
    /// The conductor in it.
    pub conductor: Arc<Conductor>,
    /// What comes of it.
    pub comes: Consequence,
}

impl std::ops::Deref for Case {
    type Target = Consequence;

    fn deref(&self) -> &Consequence {
        &self.comes
    }
}

impl std::ops::Deref for Kit {
    type Target = Consequence;

    fn deref(&self) -> &Consequence {
        &self.comes
    }
}

impl Mixups {
    /// What can be built with one body.
    #[must_use]
    pub fn body(&self, number: &str) -> Option<&BodyMixups> {
        let at = self.bodies.binary_search_by(|body| body.body.number.as_str().cmp(number)).ok()?;
        self.bodies.get(at)
    }

    /// What can be built with the bodies of a fitting, in the order of their numbers.
    fn bodies_of(&self, fitting: &Fitting) -> impl Iterator<Item = &BodyMixups> {
        let numbers: BTreeSet<&str> = fitting.bodies().map(|item| item.part.number.as_str()).collect();
        numbers.into_iter().filter_map(|number| self.body(number))
    }

    /// Every case, body by body and then of fittings without one.
    pub fn cases(&self) -> impl Iterator<Item = &Case> {
        let open = self.without_body.iter().flat_map(|interface| &interface.cases);
        self.bodies.iter().flat_map(|body| &body.cases).chain(open)
    }

    /// What is to be said before any answer from them where records could not be looked at.
    #[must_use]
    pub fn incomplete(&self) -> Option<String> {
        Gaps::stop(self.gaps.deciding, "more can be confused, or be dangerous, than is said here")
    }

    /// Every kit of every body, in their order.
    pub fn kits(&self) -> impl Iterator<Item = &Kit> {
        self.bodies.iter().flat_map(|body| &body.kits)
    }

    /// The wrong parts that go where a fitting's own belong, the worst first: hidden dangers, then
    /// dangers that show, then parts that are proven, then those that won't go in.
    #[must_use]
    pub fn wrong_parts(&self, fitting: &Fitting) -> Vec<&Case> {
        let closed = self.bodies_of(fitting).flat_map(|body| &body.cases);
        // A fitting with a body is looked up under its bodies alone.
        let is_open = fitting.bodies().next().is_none();
        let open = self.without_body.iter().filter(|_| is_open).flat_map(|interface| &interface.cases);
        let mut wrong: Vec<&Case> =
            closed.chain(open).filter(|case| !case.right && case.fitting.number == fitting.number).collect();
        wrong.sort_by(|a, b| {
            let place = |case: &Case| (case.part.number.clone(), case.conductor.id.clone());
            a.weight().cmp(&b.weight()).then_with(|| place(a).cmp(&place(b)))
        });
        // A part that goes into several bodies of the fitting is told once, at its worst.
        let mut told = BTreeSet::new();
        wrong.retain(|case| told.insert((case.part.number.as_str(), case.conductor.id.as_str())));
        wrong
    }

    /// The whole kits of other fittings that go where a fitting's own parts belong, the worst first:
    /// only those of several parts, since a single one is among the wrong parts.
    #[must_use]
    pub fn wrong_kits(&self, fitting: &Fitting) -> Vec<&Kit> {
        let mut wrong: Vec<&Kit> = self
            .bodies_of(fitting)
            .flat_map(|body| &body.kits)
            .filter(|kit| !kit.right && kit.fitting.number == fitting.number && kit.parts.len() > 1)
            .collect();
        wrong.sort_by(|a, b| {
            let place = |kit: &Kit| (kit.kit.number.clone(), kit.conductor.id.clone());
            a.weight().cmp(&b.weight()).then_with(|| place(a).cmp(&place(b)))
        });
        let mut told = BTreeSet::new();
        wrong.retain(|kit| told.insert((kit.kit.number.as_str(), kit.conductor.id.as_str())));
        wrong
    }
}

impl BodyMixups {
    /// The case of a part in a fitting on a conductor.
    #[must_use]
    pub fn case(&self, part: &str, fitting: &str, conductor: &str) -> Option<&Case> {
        self.cases.iter().find(|case| {
            case.part.number == part && case.fitting.number == fitting && case.conductor.id == conductor
        })
    }
}

impl Consequence {
    /// Sorts the worst first.
    #[must_use]
    pub fn weight(&self) -> (bool, bool, u8) {
        (!self.hidden, !self.danger, gravity(self.outcome.verdict))
    }
}

/// How bad it is to be misled by a verdict; the worst is 0.
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

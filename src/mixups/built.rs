//! A fitting as somebody could build it: which parts grip, and what they work in.

use super::deciding::{counterpart, decides};
use super::seat::Seat;
use crate::catalogue::Part;
use crate::grip::{Geometry, GripLimits, HeldConductor, Outcome, Verdict, possible_outcomes};
use std::sync::Arc;

/// The parts of a fitting that decide whether it holds one of its conductors, as it is built.
#[derive(Debug, Clone, Default)]
pub(super) struct Built<'a> {
    /// The gripping parts on the conductor.
    gripping: Vec<&'a Arc<Part>>,
    /// What they work in: the body first, then the other parts in item order.
    mating: Vec<&'a Arc<Part>>,
}

impl<'a> Built<'a> {
    /// With everything of its own.
    pub(super) fn own(seat: &Seat<'a>, body: Option<&'a Arc<Part>>) -> Self {
        Self { gripping: seat.own.clone(), mating: mating(seat, body).collect() }
    }

    /// With everything of its own but one part, in whose place another is put.
    pub(super) fn with(seat: &Seat<'a>, body: Option<&'a Arc<Part>>, part: &'a Arc<Part>) -> Self {
        if part.role.grips() {
            return Self { gripping: vec![part], mating: mating(seat, body).collect() };
        }
        let own: Vec<&Arc<Part>> = seat.fitting.items.iter().map(|item| &item.part).collect();
        if own.iter().any(|own| own.number == part.number) {
            return Self::own(seat, body);
        }
        let place = counterpart(part, &own).map(|place| place.number.as_str());
        let others = mating(seat, body).filter(|own| Some(own.number.as_str()) != place);
        // In front of all that is alike in kind, but for the body that it goes into.
        let mating = body.into_iter().chain([part]).chain(others).collect();
        Self { gripping: seat.own.clone(), mating }
    }

    /// With every part of another fitting that decides, in the place of its own.
    pub(super) fn with_kit(seat: &Seat<'a>, body: &'a Arc<Part>, kit: &[&'a Arc<Part>]) -> Self {
        let (gripping, seats): (Vec<_>, Vec<_>) = kit.iter().copied().partition(|part| part.role.grips());
        let others = mating(seat, Some(body)).filter(|part| !decides(part));
        Self { gripping, mating: [body].into_iter().chain(seats).chain(others).collect() }
    }

    /// Everything that its gripping parts can do on a conductor, the likeliest first; there is always
    /// one. `geometry` says what a part measures.
    pub(super) fn outcomes(
        &self,
        held: &HeldConductor,
        limits: GripLimits,
        geometry: impl Fn(&'a Part) -> Option<&'a Geometry>,
    ) -> Vec<Outcome> {
        let mating: Vec<&Geometry> = self.mating.iter().filter_map(|part| geometry(part)).collect();
        let outcomes: Vec<Outcome> = self
            .gripping
            .iter()
            .flat_map(|part| possible_outcomes(geometry(part), &mating, held, limits))
            .collect();
        if outcomes.is_empty() { vec![Outcome::of(Verdict::Unknown)] } else { outcomes }
    }

    /// The same parts, by where they lie in memory: what was judged once need not be judged again.
    pub(super) fn key(&self) -> Vec<*const Part> {
        let place = |part: &&Arc<Part>| Arc::as_ptr(part);
        let mating = self.mating.iter().filter(|part| part.geometry.is_some());
        self.gripping.iter().map(place).chain([std::ptr::null()]).chain(mating.map(place)).collect()
    }
}

fn mating<'a>(seat: &Seat<'a>, body: Option<&'a Arc<Part>>) -> impl Iterator<Item = &'a Arc<Part>> + use<'a> {
    let fitting = seat.fitting;
    let others = fitting.items.iter().map(|item| &item.part).filter(|part| !part.role.grips());
    body.into_iter().chain(others)
}

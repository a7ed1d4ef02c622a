//! A fitting with one of its conductors: what is to be held there, by which parts, in what.

use super::visibility::worst;
use crate::catalogue::{Conductor, Fitting, Limits, Part, Role};
use crate::grip::{Geometry, HeldConductor, Outcome, possible_outcomes};
use std::sync::Arc;

/// A place where a fitting holds a conductor.
#[derive(Debug, Clone)]
pub(super) struct Seat<'a> {
    pub(super) fitting: &'a Arc<Fitting>,
    pub(super) conductor: &'a Arc<Conductor>,
    /// The fitting's own gripping parts for that conductor, in item order.
    pub(super) own: Vec<&'a Arc<Part>>,
}

/// One of a fitting's own parts on one of its conductors.
#[derive(Debug, Clone)]
pub struct Own {
    /// The gripping part, or a thimble.
    pub part: Arc<Part>,
    /// The conductor.
    pub conductor: Arc<Conductor>,
    /// What it does.
    pub outcome: Outcome,
}

/// A conductor as gripping parts meet it, with the tolerances that its record states.
#[must_use]
pub fn held(conductor: &Conductor) -> HeldConductor {
    HeldConductor::new(&conductor.construction, &conductor.section)
        .with_tolerances(conductor.diameter_tolerance, conductor.wire_diameter_tolerance)
}

/// What a fitting's own gripping parts and thimbles do on its own conductors; a fitting needs no body
/// for that.
#[must_use]
pub fn own(fitting: &Arc<Fitting>, limits: &Limits) -> Vec<Own> {
    own_on(fitting, limits, |conductor| Some(held(conductor)))
}

/// The same on contact wires worn to the lowest height that is stated of them; on nothing else.
#[must_use]
pub fn own_worn(fitting: &Arc<Fitting>, limits: &Limits) -> Vec<Own> {
    own_on(fitting, limits, |conductor| held(conductor).worn_to(conductor.lowest_height()?))
}

fn own_on(
    fitting: &Arc<Fitting>,
    limits: &Limits,
    meets: impl Fn(&Conductor) -> Option<HeldConductor>,
) -> Vec<Own> {
    let others = fitting.items.iter().map(|item| &item.part).filter(|part| !part.role.grips());
    let mating: Vec<&Geometry> = others.filter_map(|part| part.geometry.as_ref()).collect();
    let mut all = Vec::new();
    for seat in seats(fitting) {
        let Some(held) = meets(seat.conductor) else { continue };
        let thimbles = fitting.items.iter().map(|item| &item.part).filter(|part| part.role == Role::Thimble);
        for part in seat.own.iter().copied().chain(thimbles) {
            let outcomes = possible_outcomes(part.geometry.as_ref(), &mating, &held, limits.grip());
            let stated = fitting.stand_out.as_ref();
            let Some(outcome) = worst(&outcomes, stated, limits.visible_stand_out).cloned() else { continue };
            all.push(Own { part: Arc::clone(part), conductor: Arc::clone(seat.conductor), outcome });
        }
    }
    all
}

/// The fitting with each of its conductors, each conductor once.
pub(super) fn seats(fitting: &Arc<Fitting>) -> Vec<Seat<'_>> {
    let mut seats: Vec<Seat<'_>> = Vec::new();
    for (nth, conductor) in fitting.conductors.iter().enumerate() {
        let own = own_parts(fitting, nth);
        match seats.iter_mut().find(|seat| seat.conductor.id == conductor.id) {
            Some(seat) => {
                for part in own {
                    if !seat.own.iter().any(|there| there.number == part.number) {
                        seat.own.push(part);
                    }
                }
            }
            None => seats.push(Seat { fitting, conductor, own }),
        }
    }
    seats
}

/// A joint with as many gripping parts of one role as it has conductors has one for each, in item
/// order; otherwise every gripping part is for every conductor.
fn own_parts(fitting: &Fitting, nth: usize) -> Vec<&Arc<Part>> {
    let all: Vec<&Arc<Part>> = fitting.gripping().map(|item| &item.part).collect();
    let one_each = |role: Role| {
        fitting.conductors.len() > 1
            && all.iter().filter(|part| part.role == role).count() == fitting.conductors.len()
    };
    let place = |part: &Arc<Part>| {
        all.iter().filter(|other| other.role == part.role).position(|other| other.number == part.number)
    };
    all.iter().copied().filter(|part| !one_each(part.role) || place(part) == Some(nth)).collect()
}

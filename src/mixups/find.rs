//! Every combination of a body's fittings with the gripping parts that go in.

use super::marks::Marks;
use super::seat::{Seat, held, mating, seats};
use super::visibility::visible;
use super::{BodyMixups, Case, Mixups};
use crate::catalogue::{Catalogue, Fitting, Part, Role};
use crate::grip::{Geometry, GripLimits, HeldConductor, Outcome, Verdict, judge};
use crate::units::Length;
use std::collections::{BTreeMap, HashMap};
use std::sync::Arc;

/// Works out every mix-up of a catalogue.
///
/// For each part of role body: every gripping part that goes in (same role and interface as one of its
/// own, or used in the same body) with every fitting of that body, built with everything of its own
/// except the gripping part. The work grows with the number of cases; nothing is judged twice.
#[must_use]
pub fn find(catalogue: &Catalogue) -> Mixups {
    let mut finder = Finder::of(catalogue);
    let by_place = by_place(catalogue);
    let bodies = by_body(catalogue)
        .into_values()
        .map(|(body, fittings)| {
            let parts = gripping_parts(&fittings, &by_place);
            finder.body(body, &fittings, &parts)
        })
        .filter(|body| !body.gripping_parts.is_empty())
        .collect();
    Mixups { bodies }
}

type Places<'a> = BTreeMap<(Role, &'a str), Vec<&'a Arc<Part>>>;

/// Gripping parts by the place that they go into.
fn by_place(catalogue: &Catalogue) -> Places<'_> {
    let mut places = Places::new();
    for part in catalogue.parts.values().filter(|part| part.role.grips() && !part.interface.is_empty()) {
        places.entry((part.role, part.interface.as_str())).or_default().push(part);
    }
    places
}

type Bodies<'a> = BTreeMap<&'a str, (&'a Arc<Part>, Vec<&'a Arc<Fitting>>)>;

/// Bodies with their fittings, in the order of their numbers.
fn by_body(catalogue: &Catalogue) -> Bodies<'_> {
    let mut bodies = Bodies::new();
    for fitting in catalogue.fittings.values() {
        for item in fitting.bodies() {
            let (_, fittings) = bodies.entry(&item.part.number).or_insert((&item.part, Vec::new()));
            if fittings.last().is_none_or(|last| last.number != fitting.number) {
                fittings.push(fitting);
            }
        }
    }
    bodies
}

/// The gripping parts that go into a body, in the order of their numbers.
fn gripping_parts<'a>(fittings: &[&'a Arc<Fitting>], places: &Places<'a>) -> Vec<&'a Arc<Part>> {
    let own = fittings.iter().flat_map(|fitting| fitting.gripping()).map(|item| &item.part);
    let mut parts: BTreeMap<&str, &Arc<Part>> = BTreeMap::new();
    for part in own {
        parts.insert(&part.number, part);
        if let Some(alike) = places.get(&(part.role, part.interface.as_str())) {
            parts.extend(alike.iter().map(|part| (part.number.as_str(), *part)));
        }
    }
    parts.into_values().collect()
}

/// What a judgement depends on: the gripping part, the conductor, and the parts that the first works in.
type JudgedKey<'a> = (&'a str, &'a str, usize);

struct Finder<'a> {
    limits: GripLimits,
    visible_stand_out: Length,
    held: BTreeMap<&'a str, HeldConductor>,
    marks: Marks<'a>,
    judged: HashMap<JudgedKey<'a>, Outcome>,
}

/// A seat with the geometry that a gripping part meets there.
struct Opening<'a> {
    seat: Seat<'a>,
    mating: Vec<&'a Geometry>,
    mating_nth: usize,
}

impl<'a> Finder<'a> {
    fn of(catalogue: &'a Catalogue) -> Self {
        let limits = &catalogue.settings.limits;
        Self {
            limits: limits.grip(),
            visible_stand_out: limits.visible_stand_out,
            held: catalogue.conductors.values().map(|wire| (wire.id.as_str(), held(wire))).collect(),
            marks: Marks::of(catalogue),
            judged: HashMap::new(),
        }
    }

    fn body(
        &mut self,
        body: &'a Arc<Part>,
        fittings: &[&'a Arc<Fitting>],
        parts: &[&'a Arc<Part>],
    ) -> BodyMixups {
        self.judged.clear();
        let openings = openings(body, fittings);
        let mut cases = Vec::with_capacity(parts.len() * openings.len());
        for part in parts {
            cases.extend(openings.iter().map(|opening| self.case(part, opening)));
        }
        BodyMixups {
            body: Arc::clone(body),
            fittings: fittings.iter().map(|fitting| Arc::clone(fitting)).collect(),
            gripping_parts: parts.iter().map(|part| Arc::clone(part)).collect(),
            cases,
        }
    }

    fn case(&mut self, part: &'a Arc<Part>, opening: &Opening<'a>) -> Case {
        let seat = &opening.seat;
        let outcome = self.outcome(part, opening);
        let counterpart = counterpart(part, &seat.own);
        let right_outcome = counterpart.map(|own| self.outcome(own, opening));
        let right = seat.own.iter().any(|own| own.number == part.number);
        let proven = part.proven_on.iter().any(|proof| proof.conductor.id == seat.conductor.id);
        let mark = self.marks.of_part(part);
        let danger = !right && !proven && outcome.verdict != Verdict::WillNotEnter;
        let visible = visible(
            &outcome,
            right_outcome.as_ref(),
            seat.fitting.stand_out.as_ref(),
            self.visible_stand_out,
        );
        Case {
            part: Arc::clone(part),
            fitting: Arc::clone(seat.fitting),
            conductor: Arc::clone(seat.conductor),
            mark: mark.map(|mark| mark.mark.clone()),
            mark_seen: mark.is_some_and(|mark| mark.seen),
            right,
            proven,
            stand_out_shift: shift(&outcome, right_outcome.as_ref()),
            danger,
            visible,
            hidden: danger && !visible,
            marks_distinct: counterpart.is_some_and(|own| self.marks.distinct(part, own)),
            outcome,
        }
    }

    fn outcome(&mut self, part: &'a Arc<Part>, opening: &Opening<'a>) -> Outcome {
        let conductor = opening.seat.conductor;
        let key = (part.number.as_str(), conductor.id.as_str(), opening.mating_nth);
        if let Some(outcome) = self.judged.get(&key) {
            return outcome.clone();
        }
        let held = self.held.entry(&conductor.id).or_insert_with(|| held(conductor));
        let outcome = judge(part.geometry.as_ref(), &opening.mating, held, self.limits);
        self.judged.insert(key, outcome.clone());
        outcome
    }
}

/// The fittings of a body with each of their conductors; those that mate alike share a number.
fn openings<'a>(body: &'a Part, fittings: &[&'a Arc<Fitting>]) -> Vec<Opening<'a>> {
    let mut kinds: HashMap<Vec<*const Geometry>, usize> = HashMap::new();
    let mut openings = Vec::new();
    for fitting in fittings {
        let mating = mating(fitting, Some(body));
        let next = kinds.len();
        let kind = mating.iter().map(|geometry| std::ptr::from_ref(*geometry)).collect();
        let mating_nth = *kinds.entry(kind).or_insert(next);
        openings.extend(seats(fitting).into_iter().map(|seat| Opening {
            seat,
            mating: mating.clone(),
            mating_nth,
        }));
    }
    openings
}

/// The fitting's own part that a gripping part takes the place of: itself, else one of the same role
/// and interface, else of the same role, else the first.
pub(super) fn counterpart<'a>(part: &Part, own: &[&'a Arc<Part>]) -> Option<&'a Arc<Part>> {
    let same_role = |own: &&&Arc<Part>| own.role == part.role;
    own.iter()
        .find(|own| own.number == part.number)
        .or_else(|| own.iter().find(|own| own.role == part.role && own.interface == part.interface))
        .or_else(|| own.iter().find(same_role))
        .or_else(|| own.first())
        .copied()
}

fn shift(outcome: &Outcome, right: Option<&Outcome>) -> Option<Length> {
    Some(outcome.stand_out? - right?.stand_out?)
}

//! What comes of a fitting built with a part or a kit that isn't its own.

use super::built::Built;
use super::deciding::{counterpart, deciding};
use super::marks::Marks;
use super::proof::{contradicted, proven};
use super::seat::{Seat, held, seats};
use super::summary::Summary;
use super::visibility::{visible, worst};
use super::worn::{OverWear, Sight, over_wear};
use super::{Case, Consequence, Kit, SeenBy, Worn};
use crate::catalogue::{Catalogue, Fitting, Limits, Part, Status};
use crate::colour::Mark;
use crate::grip::{HeldConductor, Outcome, Verdict};
use crate::units::Length;
use std::collections::{BTreeMap, HashMap};
use std::rc::Rc;
use std::sync::Arc;

/// A fitting that is being built on one of its conductors, with what its own parts come to.
pub(super) struct Opening<'a> {
    pub(super) seat: Seat<'a>,
    body: Option<&'a Arc<Part>>,
    /// Its own parts that decide, in item order.
    own: Vec<&'a Arc<Part>>,
}

/// The fittings of a body with each of their conductors.
pub(super) fn openings<'a>(body: Option<&'a Arc<Part>>, fittings: &[&'a Arc<Fitting>]) -> Vec<Opening<'a>> {
    let all = fittings.iter().flat_map(|fitting| seats(fitting));
    all.map(|seat| {
        // Where a joint has a gripping part for each conductor, only that conductor's is its own.
        let own = deciding(seat.fitting)
            .filter(|part| !part.role.grips() || seat.own.iter().any(|own| own.number == part.number))
            .collect();
        Opening { seat, body, own }
    })
    .collect()
}

/// Judges combinations of one catalogue, none of them twice.
pub(super) struct Judging<'a> {
    limits: &'a Limits,
    held: BTreeMap<&'a str, Rc<HeldConductor>>,
    marks: Marks<'a>,
    judged: HashMap<(Vec<*const Part>, &'a str), Rc<[Outcome]>>,
}

impl<'a> Judging<'a> {
    pub(super) fn of(catalogue: &'a Catalogue) -> Self {
        Self {
            limits: &catalogue.settings.limits,
            held: BTreeMap::new(),
            marks: Marks::of(catalogue),
            judged: HashMap::new(),
        }
    }

    /// A part in the place of a fitting's own.
    pub(super) fn case(&mut self, part: &'a Arc<Part>, opening: &Opening<'a>) -> Case {
        let seat = &opening.seat;
        let own = counterpart(part, &opening.own);
        let is_right = opening.own.iter().any(|own| own.number == part.number);
        let proven = proven(part, seat.conductor, opening.body.map(AsRef::as_ref), self.limits);
        let built = Built::with(seat, opening.body, part);
        let own_built = own.map(|own| Built::with(seat, opening.body, own));
        let over = self.over_wear(&built, seat, (is_right, proven));
        let own_stand_out = own_built.and_then(|own| self.own_stand_out(&own, seat, over.height()));
        let mark = self.marks.of_part(part);
        let distinct = own.is_some_and(|own| self.marks.distinct(part, own));
        let comes = self.comes(
            seat,
            over,
            CaseTraits {
                right: is_right,
                proven,
                status: part.status,
                distinct,
                mark: mark.map(|mark| mark.mark),
                mark_seen: mark.is_some_and(|mark| mark.seen),
                own_stand_out,
            },
        );
        let (fitting, conductor) = (Arc::clone(seat.fitting), Arc::clone(seat.conductor));
        Case { part: Arc::clone(part), fitting, conductor, comes }
    }

    /// Another fitting's parts in the place of a fitting's own.
    pub(super) fn kit(
        &mut self,
        kit: &'a Arc<Fitting>,
        parts: &[&'a Arc<Part>],
        body: &'a Arc<Part>,
        opening: &Opening<'a>,
    ) -> Kit {
        let seat = &opening.seat;
        let own: Vec<&Arc<Part>> = deciding(seat.fitting).collect();
        let told = self.told_by(parts, &own);
        let same = |all: &[&Arc<Part>], among: &[&Arc<Part>]| {
            all.iter().all(|part| among.iter().any(|other| other.number == part.number))
        };
        let is_right = same(parts, &own) && same(&own, parts);
        let proven = parts.iter().all(|part| proven(part, seat.conductor, Some(body), self.limits));
        let (built, own_built) = (Built::with_kit(seat, body, parts), Built::own(seat, Some(body)));
        let over = self.over_wear(&built, seat, (is_right, proven));
        let own_stand_out = self.own_stand_out(&own_built, seat, over.height());
        let comes = self.comes(
            seat,
            over,
            CaseTraits {
                right: is_right,
                proven,
                status: unusable(parts),
                distinct: told.distinct,
                mark: told.mark,
                mark_seen: told.seen,
                own_stand_out,
            },
        );
        Kit {
            kit: Arc::clone(kit),
            parts: parts.iter().map(|part| Arc::clone(part)).collect(),
            fitting: Arc::clone(seat.fitting),
            conductor: Arc::clone(seat.conductor),
            comes,
        }
    }

    /// The mark that tells a kit from a fitting's own parts: one that is seen afterwards, else the first
    /// that is distinct, else the first gripping part's.
    fn told_by(&mut self, parts: &[&'a Arc<Part>], own: &[&'a Arc<Part>]) -> TellingApart<'a> {
        let mut told: Vec<TellingApart<'a>> = Vec::new();
        for part in parts.iter().filter(|part| !own.iter().any(|own| own.number == part.number)) {
            let mark = self.marks.of_part(part);
            told.push(TellingApart {
                distinct: counterpart(part, own).is_some_and(|own| self.marks.distinct(part, own)),
                seen: mark.is_some_and(|mark| mark.seen),
                grips: part.role.grips(),
                mark: mark.map(|mark| mark.mark),
            });
        }
        let weight = |told: &TellingApart<'_>| (told.distinct, told.distinct && told.seen, told.grips);
        told.into_iter().rev().max_by_key(weight).unwrap_or_default()
    }

    /// What comes of what is built in: of what is right on new wire, of all else over the wear of the wire.
    fn over_wear(
        &mut self,
        built: &Built<'a>,
        seat: &Seat<'a>,
        (is_right, proven): (bool, bool),
    ) -> OverWear {
        let new = self.outcome(built, seat);
        if is_right {
            return OverWear::when_new(new);
        }
        let (stated, least) = (seat.fitting.stand_out.as_ref(), self.limits.visible_stand_out);
        let at =
            |held: &HeldConductor| built.outcomes(held, self.limits.grip(), |part| part.geometry.as_ref());
        over_wear(seat.conductor, new, Sight { stated, least, proven }, at)
    }

    /// Where a fitting's own parts stand out on new wire, or on wire worn to a height.
    fn own_stand_out(&mut self, own: &Built<'a>, seat: &Seat<'a>, worn_to: Option<Length>) -> Option<Length> {
        let Some(height) = worn_to else { return self.outcome(own, seat).stand_out };
        let worn = held(seat.conductor).worn_to(height)?;
        let outcomes = own.outcomes(&worn, self.limits.grip(), |part| part.geometry.as_ref());
        worst(&outcomes, seat.fitting.stand_out.as_ref(), self.limits.visible_stand_out)?.stand_out
    }

    fn comes(&self, seat: &Seat<'_>, over: OverWear, found: CaseTraits<'_>) -> Consequence {
        let OverWear { outcome, worn, stand_outs } = over;
        let proven = found.proven && !contradicted(&outcome);
        let summary = |outcome: &Outcome| {
            Summary::of(outcome, found.right, found.proven && !contradicted(outcome), found.status)
        };
        let visible = visible(&outcome, seat.fitting.stand_out.as_ref(), self.limits.visible_stand_out);
        let danger = !found.right && !proven && outcome.verdict != Verdict::WillNotEnter;
        let shift = |right: Length| outcome.stand_out.map(|stand_out| stand_out - right);
        Consequence {
            right: found.right,
            proven,
            danger,
            visible,
            hidden: danger && !visible,
            seen_by: SeenBy::of(visible, found.mark_seen),
            summary: summary(&outcome),
            worn: worn.map(|(height, new)| Worn { height, when_new: summary(&new) }),
            stand_outs,
            marks_distinct: found.distinct,
            mark: found.mark.cloned(),
            mark_seen: found.mark_seen,
            stand_out_shift: found.own_stand_out.and_then(shift),
            outcome,
        }
    }

    /// The worst that can come of a fitting as it is built.
    fn outcome(&mut self, built: &Built<'a>, seat: &Seat<'a>) -> Outcome {
        let conductor = seat.conductor;
        let key = (built.key(), conductor.id.as_str());
        let outcomes = match self.judged.get(&key) {
            Some(outcomes) => Rc::clone(outcomes),
            None => {
                let held = self.held.entry(&conductor.id).or_insert_with(|| Rc::new(held(conductor)));
                let outcomes: Rc<[Outcome]> =
                    built.outcomes(held, self.limits.grip(), |part| part.geometry.as_ref()).into();
                self.judged.insert(key, Rc::clone(&outcomes));
                outcomes
            }
        };
        let stated = seat.fitting.stand_out.as_ref();
        let found = worst(&outcomes, stated, self.limits.visible_stand_out);
        found.cloned().unwrap_or_else(|| Outcome::of(Verdict::Unknown))
    }
}

/// What is known of a combination beside its outcome.
struct CaseTraits<'m> {
    right: bool,
    proven: bool,
    status: Status,
    distinct: bool,
    mark: Option<&'m Mark>,
    mark_seen: bool,
    own_stand_out: Option<Length>,
}

#[derive(Default)]
struct TellingApart<'m> {
    distinct: bool,
    seen: bool,
    grips: bool,
    mark: Option<&'m Mark>,
}

/// The status of the first part of a kit that may not be used.
fn unusable(parts: &[&Arc<Part>]) -> Status {
    let status = parts.iter().map(|part| part.status);
    status.filter(|status| *status != Status::Current).max().unwrap_or(Status::Current)
}

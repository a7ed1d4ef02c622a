//! What would remove a hidden danger: the change of one measurement that makes a wrong part refuse to
//! go in, or show.

use super::adjustable_dimension::AdjustableDimension;
use super::built::Built;
use super::deciding::{decides, deciding};
use super::design_fix::{Danger, DesignFix, Effect, hidden_dangers};
use super::seat::{Seat, held, seats};
use super::visibility::{visible, worst};
use super::worn::{Sight, over_wear};
use super::{BodyMixups, Case, Kit, Mixups};
use crate::catalogue::{Catalogue, Limits, Part};
use crate::grip::{Geometry, HeldConductor, Outcome, Verdict};
use crate::units::Length;
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::sync::Arc;

/// For each hidden danger the least change of each measurement that would remove it.
///
/// A change counts only if no fitting of the changed part holds its own conductor worse than before, and the body has
/// fewer hidden dangers of that kind and no more of the other.
#[must_use]
pub fn design_fixes(catalogue: &Catalogue, mixups: &Mixups) -> Vec<DesignFix> {
    let what_if = WhatIf::of(catalogue);
    mixups
        .bodies
        .par_iter()
        .flat_map_iter(|body| {
            let fixes = hidden_dangers(body).flat_map(|danger| what_if.design_fixes(body, danger));
            fixes.collect::<Vec<_>>()
        })
        .collect()
}

/// A catalogue laid out for trying changes.
struct WhatIf<'a> {
    limits: &'a Limits,
    /// The fittings that each part is in, with their conductors.
    users: BTreeMap<&'a str, Vec<Seat<'a>>>,
}

/// The parts that a change may be made on: what goes in, and what stays of the fitting's own.
fn changeable(danger: Danger<'_>) -> Vec<&Arc<Part>> {
    match danger {
        Danger::Part(case) => {
            let own = case.fitting.items.iter().map(|item| &item.part);
            let stays = own.filter(|own| !(case.part.role.grips() && own.role.grips()));
            [&case.part].into_iter().chain(stays).collect()
        }
        Danger::Kit(kit) => {
            let own = kit.fitting.items.iter().map(|item| &item.part);
            kit.parts.iter().chain(own.filter(|own| !decides(own))).collect()
        }
    }
}

/// A part with other measurements.
struct Changed<'a> {
    part: &'a Part,
    geometry: Geometry,
}

impl<'a> WhatIf<'a> {
    fn of(catalogue: &'a Catalogue) -> Self {
        let mut users: BTreeMap<&str, Vec<Seat<'_>>> = BTreeMap::new();
        for fitting in catalogue.fittings.values() {
            for item in &fitting.items {
                users.entry(&item.part.number).or_default().extend(seats(fitting));
            }
        }
        Self { limits: &catalogue.settings.limits, users }
    }

    /// What goes in can change, and what stays beside it of the fitting's own.
    fn design_fixes(&self, body: &BodyMixups, danger: Danger<'_>) -> Vec<DesignFix> {
        let mut fixes = Vec::new();
        for part in changeable(danger) {
            let Some(geometry) = &part.geometry else { continue };
            for dimension in AdjustableDimension::all(geometry) {
                for direction in [-1, 1] {
                    fixes.extend(self.first(body, danger, part, &dimension, direction));
                }
            }
        }
        fixes
    }

    /// The least change of a dimension in one direction that removes the danger.
    fn first(
        &self,
        body: &BodyMixups,
        danger: Danger<'_>,
        part: &Arc<Part>,
        dimension: &AdjustableDimension<'_>,
        direction: i32,
    ) -> Option<DesignFix> {
        for step in 1..=i32::try_from(dimension.adjustment.steps).unwrap_or(i32::MAX) {
            let (geometry, becomes) = dimension.stepped(direction * step)?;
            let changed = Changed { part, geometry };
            let moves = self.moves(&changed)?;
            if let Some(effect) = self.effect(body, danger, &changed) {
                return Some(DesignFix {
                    danger: danger.place(body),
                    change: part.number.clone(),
                    key: dimension.path(),
                    what: dimension.adjustment.words,
                    was: dimension.measured.clone(),
                    becomes,
                    effect,
                    moves,
                });
            }
        }
        None
    }

    /// How far the right stand-outs move; `None` where a fitting would no longer grip as it did.
    fn moves(&self, changed: &Changed<'_>) -> Option<BTreeMap<String, Length>> {
        let mut moves = BTreeMap::new();
        for seat in self.users.get(changed.part.number.as_str()).into_iter().flatten() {
            for own in &seat.own {
                let built = Built::with(seat, None, own);
                let before = self.judged(&built, seat, None)?;
                let after = self.judged(&built, seat, Some(changed))?;
                if after.verdict != Verdict::Grips && after.verdict != before.verdict {
                    return None;
                }
                if let (Some(before), Some(after)) = (before.stand_out, after.stand_out)
                    && (after - before).abs().mm() >= 0.05
                {
                    moves.insert(seat.fitting.number.clone(), after - before);
                }
            }
        }
        Some(moves)
    }

    /// What a change does to a hidden danger; `None` where it stays hidden, or where the body gets no fewer hidden
    /// dangers of that kind, or more of the other.
    fn effect(&self, body: &BodyMixups, danger: Danger<'_>, changed: &Changed<'_>) -> Option<Effect> {
        let effect = match danger {
            Danger::Part(case) => self.after(body, case, changed)?,
            Danger::Kit(kit) => self.kit_after(body, kit, changed)?,
        };
        let cases = self.cases_gained(body, changed);
        let kits = self.kits_gained(body, changed);
        let fewer = match danger {
            Danger::Part(_) => cases < 0 && kits <= 0,
            Danger::Kit(_) => kits < 0 && cases <= 0,
        };
        fewer.then_some(effect)
    }

    /// How many hidden wrong parts a body gets by a change.
    fn cases_gained(&self, body: &BodyMixups, changed: &Changed<'_>) -> i64 {
        let concerned = |case: &&Case| {
            case.part.number == changed.part.number
                || case.fitting.items.iter().any(|item| item.part.number == changed.part.number)
        };
        let gained = body
            .cases
            .iter()
            .filter(concerned)
            .filter(|case| case.danger)
            .map(|case| i64::from(self.after(body, case, changed).is_none()) - i64::from(case.hidden));
        gained.sum()
    }

    /// How many hidden kits a body gets by a change.
    fn kits_gained(&self, body: &BodyMixups, changed: &Changed<'_>) -> i64 {
        let gained = body
            .kits
            .iter()
            .filter(|kit| kit.danger)
            .map(|kit| i64::from(self.kit_after(body, kit, changed).is_none()) - i64::from(kit.hidden));
        gained.sum()
    }

    fn after(&self, body: &BodyMixups, case: &Case, changed: &Changed<'_>) -> Option<Effect> {
        let seat = seats(&case.fitting).into_iter().find(|seat| seat.conductor.id == case.conductor.id)?;
        self.shown(&Built::with(&seat, Some(&body.body), &case.part), &seat, changed)
    }

    fn kit_after(&self, body: &BodyMixups, kit: &Kit, changed: &Changed<'_>) -> Option<Effect> {
        let seat = seats(&kit.fitting).into_iter().find(|seat| seat.conductor.id == kit.conductor.id)?;
        let parts: Vec<&Arc<Part>> = deciding(&kit.kit).collect();
        self.shown(&Built::with_kit(&seat, &body.body, &parts), &seat, changed)
    }

    fn shown(&self, built: &Built<'_>, seat: &Seat<'_>, changed: &Changed<'_>) -> Option<Effect> {
        let outcome = self.worst_over_wear(built, seat, changed)?;
        if outcome.verdict == Verdict::WillNotEnter {
            return Some(Effect::Refuses);
        }
        let stated = seat.fitting.stand_out.as_ref();
        visible(&outcome, stated, self.limits.visible_stand_out).then_some(Effect::Shows)
    }

    /// What is not right is to show, or to refuse, on worn wire too.
    fn worst_over_wear(&self, built: &Built<'_>, seat: &Seat<'_>, changed: &Changed<'_>) -> Option<Outcome> {
        let new = self.judged(built, seat, Some(changed))?;
        let (stated, least) = (seat.fitting.stand_out.as_ref(), self.limits.visible_stand_out);
        let at = |wire: &HeldConductor| self.outcomes(built, wire, Some(changed));
        Some(over_wear(seat.conductor, new, Sight { stated, least, proven: false }, at).outcome)
    }

    fn judged(&self, built: &Built<'_>, seat: &Seat<'_>, changed: Option<&Changed<'_>>) -> Option<Outcome> {
        let outcomes = self.outcomes(built, &held(seat.conductor), changed);
        worst(&outcomes, seat.fitting.stand_out.as_ref(), self.limits.visible_stand_out).cloned()
    }

    fn outcomes(
        &self,
        built: &Built<'_>,
        wire: &HeldConductor,
        changed: Option<&Changed<'_>>,
    ) -> Vec<Outcome> {
        built.outcomes(wire, self.limits.grip(), |part| match changed {
            Some(changed) if changed.part.number == part.number => Some(&changed.geometry),
            _ => part.geometry.as_ref(),
        })
    }
}

//! What would remove a hidden danger: the change of one measurement that makes a wrong part refuse to
//! go in, or show.

use super::json::number;
use super::knobs::{Knob, Size, knobs};
use super::seat::{Seat, held, mating_with, seats};
use super::visibility::visible;
use super::{BodyMixups, Case, Mixups};
use crate::catalogue::{Catalogue, Limits, Part};
use crate::grip::{Geometry, Outcome, Verdict, judge};
use crate::units::{Length, Numerals};
use rayon::prelude::*;
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// One change that would remove a hidden danger.
#[derive(Debug, Clone)]
pub struct WayOut {
    /// Number of the body.
    pub body: String,
    /// Number of the wrong part.
    pub part: String,
    /// Number of the fitting that it could be built into.
    pub fitting: String,
    /// Id of the conductor.
    pub conductor: String,
    /// Number of the part to change: the wrong part, or one that it works in.
    pub change: String,
    /// Record key of the measurement to change.
    pub key: &'static str,
    /// The measurement in words.
    pub what: &'static str,
    /// What it is.
    pub was: Size,
    /// What it would become.
    pub becomes: Size,
    /// What that would do.
    pub effect: Effect,
    /// How far the right stand-out of fittings would move, by their numbers.
    pub moves: BTreeMap<String, Length>,
}

/// What a change would do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Effect {
    /// The wrong part would no longer go together.
    Refuses,
    /// It would stand out where nobody can miss it.
    Shows,
}

impl Effect {
    /// The word that JSON carries.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Refuses => "refuses",
            Self::Shows => "shows",
        }
    }
}

/// For each hidden danger the least change of each measurement that would remove it.
///
/// A change counts only if every fitting of the changed part still grips its own conductor, and the
/// part has fewer hidden dangers in that body than before.
#[must_use]
pub fn ways_out(catalogue: &Catalogue, mixups: &Mixups) -> Vec<WayOut> {
    let bench = Bench::of(catalogue);
    mixups
        .bodies
        .par_iter()
        .flat_map_iter(|body| {
            let hidden = body.cases.iter().filter(|case| case.hidden);
            hidden.flat_map(|case| bench.ways_out(body, case)).collect::<Vec<_>>()
        })
        .collect()
}

/// The hidden dangers that no change of one measurement removes: marks and a witness must.
#[must_use]
pub fn no_way_out<'a>(mixups: &'a Mixups, ways: &[WayOut]) -> Vec<(&'a BodyMixups, &'a Case)> {
    let out: BTreeSet<[&str; 4]> =
        ways.iter().map(|way| [&*way.body, &*way.part, &*way.fitting, &*way.conductor]).collect();
    let hidden = mixups
        .bodies
        .iter()
        .flat_map(|body| body.cases.iter().filter(|case| case.hidden).map(move |case| (body, case)));
    hidden
        .filter(|(body, case)| {
            let place = [&*body.body.number, &*case.part.number, &*case.fitting.number, &*case.conductor.id];
            !out.contains(&place)
        })
        .collect()
}

/// Ways out as JSON for other programs, with the hidden dangers that have none.
#[must_use]
pub fn ways_out_to_json(mixups: &Mixups, ways: &[WayOut]) -> Value {
    let none = no_way_out(mixups, ways);
    json!({
        "ways_out": ways.iter().map(way_to_json).collect::<Vec<_>>(),
        "no_way_out": none.iter().map(|(body, case)| json!({
            "body": body.body.number,
            "part": case.part.number,
            "fitting": case.fitting.number,
            "conductor": case.conductor.id,
        })).collect::<Vec<_>>(),
    })
}

fn way_to_json(way: &WayOut) -> Value {
    let moves: serde_json::Map<String, Value> =
        way.moves.iter().map(|(fitting, by)| (fitting.clone(), number(*by))).collect();
    json!({
        "body": way.body,
        "part": way.part,
        "fitting": way.fitting,
        "conductor": way.conductor,
        "change": { "part": way.change, "field": way.key, "was": bare(way.was), "becomes": bare(way.becomes) },
        "effect": way.effect.word(),
        "moves_mm": moves,
    })
}

impl WayOut {
    /// The change in one sentence without a full stop.
    #[must_use]
    pub fn words(&self, numerals: Numerals) -> String {
        let effect = match self.effect {
            Effect::Refuses => "then it does not go in",
            Effect::Shows => "then it shows",
        };
        let moved: Vec<String> = self
            .moves
            .iter()
            .map(|(fitting, by)| {
                format!("the right stand-out of {fitting} moves by {}", numerals.length(*by, 1))
            })
            .collect();
        let moved = if moved.is_empty() { String::new() } else { format!(" ({})", moved.join("; ")) };
        format!(
            "{}: {} {} instead of {}, {effect}{moved}",
            self.change,
            self.what,
            in_words(self.becomes, numerals),
            in_words(self.was, numerals)
        )
    }
}

/// A catalogue laid out for trying changes.
struct Bench<'a> {
    limits: &'a Limits,
    /// The fittings that each part is in, with their conductors.
    users: BTreeMap<&'a str, Vec<Seat<'a>>>,
}

/// A part with other measurements.
struct Changed<'a> {
    part: &'a Part,
    geometry: Geometry,
}

impl<'a> Bench<'a> {
    fn of(catalogue: &'a Catalogue) -> Self {
        let mut users: BTreeMap<&str, Vec<Seat<'_>>> = BTreeMap::new();
        for fitting in catalogue.fittings.values() {
            for item in &fitting.items {
                users.entry(&item.part.number).or_default().extend(seats(fitting));
            }
        }
        Self { limits: &catalogue.settings.limits, users }
    }

    fn ways_out(&self, body: &BodyMixups, case: &Case) -> Vec<WayOut> {
        let works_in = case.fitting.items.iter().map(|item| &item.part).filter(|part| !part.role.grips());
        let mut ways = Vec::new();
        for part in [&case.part].into_iter().chain(works_in) {
            let Some(geometry) = &part.geometry else { continue };
            for knob in knobs(geometry) {
                for direction in [-1, 1] {
                    ways.extend(self.first(body, case, part, geometry, &knob, direction));
                }
            }
        }
        ways
    }

    /// The smallest turn of a knob in one direction that removes the danger.
    fn first(
        &self,
        body: &BodyMixups,
        case: &Case,
        part: &Arc<Part>,
        geometry: &Geometry,
        knob: &Knob,
        direction: i32,
    ) -> Option<WayOut> {
        for step in 1..=i32::try_from(knob.steps).unwrap_or(i32::MAX) {
            let (geometry, becomes) = knob.turned(geometry, direction * step)?;
            let changed = Changed { part, geometry };
            let moves = self.moves(&changed)?;
            if let Some(effect) = self.effect(body, case, &changed) {
                return Some(WayOut {
                    body: body.body.number.clone(),
                    part: case.part.number.clone(),
                    fitting: case.fitting.number.clone(),
                    conductor: case.conductor.id.clone(),
                    change: part.number.clone(),
                    key: knob.key,
                    what: knob.words,
                    was: knob.size,
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
                let before = self.judged(own, seat, None, None);
                let after = self.judged(own, seat, None, Some(changed));
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

    /// What a change does to a hidden danger; `None` where it stays hidden, or the changed part gets
    /// no fewer hidden dangers altogether.
    fn effect(&self, body: &BodyMixups, case: &Case, changed: &Changed<'_>) -> Option<Effect> {
        let effect = self.after(body, case, changed)?;
        let concerned = |other: &&Case| {
            other.part.number == changed.part.number
                || other.fitting.items.iter().any(|item| item.part.number == changed.part.number)
        };
        let before = body.cases.iter().filter(concerned).filter(|other| other.hidden).count();
        let after = body
            .cases
            .iter()
            .filter(concerned)
            .filter(|other| other.danger && self.after(body, other, changed).is_none())
            .count();
        (after < before).then_some(effect)
    }

    fn after(&self, body: &BodyMixups, case: &Case, changed: &Changed<'_>) -> Option<Effect> {
        let seat = seats(&case.fitting).into_iter().find(|seat| seat.conductor.id == case.conductor.id)?;
        let outcome = self.judged(&case.part, &seat, Some(&body.body), Some(changed));
        if outcome.verdict == Verdict::WillNotEnter {
            return Some(Effect::Refuses);
        }
        let right = super::find::counterpart(&case.part, &seat.own)
            .map(|own| self.judged(own, &seat, Some(&body.body), Some(changed)));
        let stated = case.fitting.stand_out.as_ref();
        visible(&outcome, right.as_ref(), stated, self.limits.visible_stand_out).then_some(Effect::Shows)
    }

    fn judged(
        &self,
        part: &Part,
        seat: &Seat<'_>,
        body: Option<&Part>,
        changed: Option<&Changed<'_>>,
    ) -> Outcome {
        let geometry = |part: &'_ Part| -> Option<Geometry> {
            match changed {
                Some(changed) if changed.part.number == part.number => Some(changed.geometry.clone()),
                _ => part.geometry.clone(),
            }
        };
        let mating: Vec<Geometry> = mating_with(seat.fitting, body).filter_map(geometry).collect();
        let mating: Vec<&Geometry> = mating.iter().collect();
        let limits = self.limits.grip();
        judge(geometry(part).as_ref(), &mating, &held(seat.conductor), limits)
    }
}

fn bare(size: Size) -> Value {
    match size {
        Size::Length(length) => number(length),
        Size::Angle(angle) => json!((angle.degrees() * 1e9).round() / 1e9),
        Size::Count(count) => json!(count),
    }
}

fn in_words(size: Size, numerals: Numerals) -> String {
    match size {
        Size::Length(length) => numerals.length(length, 2),
        Size::Angle(angle) => format!("{}°", numerals.shortest(angle.degrees(), 2)),
        Size::Count(count) => count.to_string(),
    }
}

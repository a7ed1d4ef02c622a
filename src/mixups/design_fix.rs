//! A change of one measurement that removes a hidden danger, in words and as JSON.

use super::json::number;
use super::{BodyMixups, Case, Mixups};
use crate::grip::Measured;
use crate::units::{Length, Numerals};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};

/// One change that would remove a hidden danger.
#[derive(Debug, Clone)]
pub struct DesignFix {
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
    pub key: String,
    /// The measurement in words.
    pub what: &'static str,
    /// What it is.
    pub was: Measured,
    /// What it would become.
    pub becomes: Measured,
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

/// The hidden dangers that no change of one measurement removes: marks and a witness must.
#[must_use]
pub fn without_design_fix<'a>(mixups: &'a Mixups, fixes: &[DesignFix]) -> Vec<(&'a BodyMixups, &'a Case)> {
    let out: BTreeSet<[&str; 4]> =
        fixes.iter().map(|fix| [&*fix.body, &*fix.part, &*fix.fitting, &*fix.conductor]).collect();
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
pub fn design_fixes_to_json(mixups: &Mixups, fixes: &[DesignFix]) -> Value {
    let none = without_design_fix(mixups, fixes);
    json!({
        "ways_out": fixes.iter().map(fix_to_json).collect::<Vec<_>>(),
        "no_way_out": none.iter().map(|(body, case)| json!({
            "body": body.body.number,
            "part": case.part.number,
            "fitting": case.fitting.number,
            "conductor": case.conductor.id,
        })).collect::<Vec<_>>(),
    })
}

fn fix_to_json(fix: &DesignFix) -> Value {
    let moves: serde_json::Map<String, Value> =
        fix.moves.iter().map(|(fitting, by)| (fitting.clone(), number(*by))).collect();
    json!({
        "body": fix.body,
        "part": fix.part,
        "fitting": fix.fitting,
        "conductor": fix.conductor,
        "change": { "part": fix.change, "field": fix.key, "was": bare(&fix.was), "becomes": bare(&fix.becomes) },
        "effect": fix.effect.word(),
        "moves_mm": moves,
    })
}

impl DesignFix {
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
            in_words(&self.becomes, numerals),
            in_words(&self.was, numerals)
        )
    }
}

fn bare(measured: &Measured) -> Value {
    match measured {
        Measured::Length(length) => number(*length),
        Measured::Angle(angle) => json!((angle.degrees() * 1e9).round() / 1e9),
        Measured::Count(count) => json!(count),
        Measured::Range(range) => json!([number(range.least()), number(range.most())]),
        Measured::Oval(width, height) => json!({ "width": number(*width), "height": number(*height) }),
        Measured::Text(text) => json!(text),
    }
}

fn in_words(measured: &Measured, numerals: Numerals) -> String {
    match measured {
        Measured::Length(length) => numerals.length(*length, 2),
        Measured::Angle(angle) => format!("{}°", numerals.shortest(angle.degrees(), 2)),
        Measured::Count(count) => count.to_string(),
        Measured::Range(range) => numerals.range(range.map(Length::mm), 2, "mm"),
        Measured::Oval(width, height) => {
            format!("{} by {}", numerals.length(*width, 2), numerals.length(*height, 2))
        }
        Measured::Text(text) => text.clone(),
    }
}

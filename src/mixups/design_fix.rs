//! A change of one measurement that removes a hidden danger, in words and as JSON.

use super::json::{incomplete, number};
use super::{BodyMixups, Case, Kit, Mixups};
use crate::grip::Measured;
use crate::units::{Length, Numerals};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};

/// A hidden danger of a body: a wrong part, or the kit of another fitting.
#[derive(Debug, Clone, Copy)]
pub enum Danger<'a> {
    /// One part that isn't the fitting's own.
    Part(&'a Case),
    /// Everything of another fitting that decides.
    Kit(&'a Kit),
}

/// What goes in that isn't the fitting's own, and into what.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct DangerPlace {
    /// Number of the body.
    pub body: String,
    /// Number of the wrong part, or of the fitting whose kit it is.
    pub wrong: String,
    /// Whether it is a kit.
    pub is_kit: bool,
    /// Number of the fitting that it could be built into.
    pub fitting: String,
    /// Id of the conductor.
    pub conductor: String,
}

/// One change that would remove a hidden danger.
#[derive(Debug, Clone)]
pub struct DesignFix {
    /// The danger.
    pub danger: DangerPlace,
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

impl Danger<'_> {
    /// Where it is.
    #[must_use]
    pub fn place(&self, body: &BodyMixups) -> DangerPlace {
        let (wrong, is_kit, fitting, conductor) = match self {
            Self::Part(case) => (&case.part.number, false, &case.fitting, &case.conductor),
            Self::Kit(kit) => (&kit.kit.number, true, &kit.fitting, &kit.conductor),
        };
        DangerPlace {
            body: body.body.number.clone(),
            wrong: wrong.clone(),
            is_kit,
            fitting: fitting.number.clone(),
            conductor: conductor.id.clone(),
        }
    }
}

/// The hidden dangers of a body: parts first, then kits. A kit of one part is that part.
pub(super) fn hidden_dangers(body: &BodyMixups) -> impl Iterator<Item = Danger<'_>> {
    let cases = body.cases.iter().filter(|case| case.hidden).map(Danger::Part);
    let kits = body.kits.iter().filter(|kit| kit.hidden && kit.parts.len() > 1).map(Danger::Kit);
    cases.chain(kits)
}

/// The hidden dangers that no change of one measurement removes: marks and a witness must.
#[must_use]
pub fn without_design_fix(mixups: &Mixups, fixes: &[DesignFix]) -> Vec<DangerPlace> {
    let out: BTreeSet<&DangerPlace> = fixes.iter().map(|fix| &fix.danger).collect();
    let hidden = mixups.bodies.iter().flat_map(|body| hidden_dangers(body).map(|danger| danger.place(body)));
    hidden.filter(|place| !out.contains(place)).collect()
}

/// Ways out as JSON for other programs, with the hidden dangers that have none.
#[must_use]
pub fn design_fixes_to_json(mixups: &Mixups, fixes: &[DesignFix]) -> Value {
    let none = without_design_fix(mixups, fixes);
    let all = json!({
        "ways_out": fixes.iter().map(fix_to_json).collect::<Vec<_>>(),
        "no_way_out": none.iter().map(DangerPlace::to_json).collect::<Vec<_>>(),
    });
    incomplete(all, mixups)
}

impl DangerPlace {
    /// In words, such as "ST-4103 in ST-4120 on messenger-cu-120 (body ST-4101)".
    #[must_use]
    pub fn words(&self) -> String {
        let Self { body, wrong, fitting, conductor, .. } = self;
        let kit = if self.is_kit { "kit of " } else { "" };
        format!("{kit}{wrong} in {fitting} on {conductor} (body {body})")
    }

    fn to_json(&self) -> Value {
        let wrong = if self.is_kit { "kit" } else { "part" };
        json!({ "body": self.body, wrong: self.wrong, "fitting": self.fitting, "conductor": self.conductor })
    }
}

fn fix_to_json(fix: &DesignFix) -> Value {
    let moves: serde_json::Map<String, Value> =
        fix.moves.iter().map(|(fitting, by)| (fitting.clone(), number(*by))).collect();
    let mut object = fix.danger.to_json();
    object["change"] = json!({
        "part": fix.change, "field": fix.key, "was": bare(&fix.was), "becomes": bare(&fix.becomes),
    });
    object["effect"] = json!(fix.effect.word());
    object["moves_mm"] = Value::Object(moves);
    object
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

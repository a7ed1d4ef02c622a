//! Mix-ups as JSON for other programs.

use super::{BodyMixups, Case, Consequence, InterfaceMixups, Kit, Mixups};
use crate::units::Length;
use rayon::prelude::*;
use serde::Serialize;
use serde_json::{Value, json};

/// Every body with its cases and kits, then what fittings without a body are built with; what does not
/// apply is absent, numbers are unrounded.
#[must_use]
pub fn to_json(mixups: &Mixups) -> Value {
    let all = json!({
        "bodies": mixups.bodies.par_iter().map(|body| json!(body_to_json(body))).collect::<Vec<_>>(),
        "without_body": mixups.without_body.iter().map(|found| json!(interface_to_json(found))).collect::<Vec<_>>(),
    });
    incomplete(all, mixups)
}

/// The same, with a remark where it can't be all.
pub(super) fn incomplete(mut answer: Value, mixups: &Mixups) -> Value {
    if let Some(stop) = mixups.incomplete() {
        answer["remarks"] = json!([stop]);
    }
    answer
}

/// A body with its cases and kits, with its keys in the order of the alphabet: to be written as it is where there are
/// very many.
#[must_use]
pub fn body_to_json(body: &BodyMixups) -> impl Serialize {
    Body {
        body: &body.body.number,
        cases: body.cases.iter().map(case).collect(),
        kits: body.kits.iter().map(kit).collect(),
    }
}

/// The same of what fittings without a body are built with.
#[must_use]
pub fn interface_to_json(found: &InterfaceMixups) -> impl Serialize {
    Interface {
        cases: found.cases.iter().map(case).collect(),
        interface: &found.interface,
        role: found.role.word(),
    }
}

#[derive(Serialize)]
struct Body<'a> {
    body: &'a str,
    cases: Vec<Combination<'a>>,
    kits: Vec<Combination<'a>>,
}

#[derive(Serialize)]
struct Interface<'a> {
    cases: Vec<Combination<'a>>,
    interface: &'a str,
    role: &'static str,
}

/// A case, which has a part, or a kit, which has parts.
#[derive(Serialize)]
struct Combination<'a> {
    approved: bool,
    #[serde(skip_serializing_if = "Option::is_none")]
    clearance_mm: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    closure_mm: Option<f64>,
    conductor: &'a str,
    danger: bool,
    fitting: &'a str,
    forced: bool,
    hidden: bool,
    #[serde(skip_serializing_if = "Option::is_none")]
    kit: Option<&'a str>,
    marks_distinct: bool,
    missing: &'a [&'static str],
    #[serde(skip_serializing_if = "Option::is_none")]
    part: Option<&'a str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    parts: Option<Vec<&'a str>>,
    right: bool,
    seen_by: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    stand_out_mm: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    stand_out_shift_mm: Option<f64>,
    summary: &'static str,
    verdict: &'static str,
    visible: bool,
    #[serde(skip_serializing_if = "Option::is_none")]
    when_new: Option<&'static str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    worn_to_mm: Option<f64>,
}

fn case(case: &Case) -> Combination<'_> {
    Combination {
        part: Some(&case.part.number),
        ..built(&case.fitting.number, &case.conductor.id, &case.comes)
    }
}

fn kit(kit: &Kit) -> Combination<'_> {
    Combination {
        kit: Some(&kit.kit.number),
        parts: Some(kit.parts.iter().map(|part| part.number.as_str()).collect()),
        ..built(&kit.fitting.number, &kit.conductor.id, &kit.comes)
    }
}

/// What comes of a fitting that is built with something else, whatever that is.
fn built<'a>(fitting: &'a str, conductor: &'a str, comes: &'a Consequence) -> Combination<'a> {
    let outcome = &comes.outcome;
    Combination {
        approved: comes.proven,
        clearance_mm: outcome.clearance.map(clean),
        closure_mm: outcome.closure.map(clean),
        conductor,
        danger: comes.danger,
        fitting,
        forced: outcome.forced,
        hidden: comes.hidden,
        kit: None,
        marks_distinct: comes.marks_distinct,
        missing: &outcome.missing,
        part: None,
        parts: None,
        right: comes.right,
        seen_by: comes.seen_by.word(),
        stand_out_mm: outcome.stand_out.map(clean),
        stand_out_shift_mm: comes.stand_out_shift.map(clean),
        summary: comes.summary.words(),
        verdict: outcome.verdict.word(),
        visible: comes.visible,
        when_new: comes.worn.map(|worn| worn.when_new.words()),
        worn_to_mm: comes.worn.map(|worn| clean(worn.height)),
    }
}

/// Millimetres without the noise of binary fractions, as JSON.
pub(super) fn number(length: Length) -> Value {
    json!(clean(length))
}

/// Nothing here is sure to a picometre.
fn clean(length: Length) -> f64 {
    let clean = (length.mm() * 1e9).round() / 1e9;
    if clean == 0.0 { 0.0 } else { clean }
}

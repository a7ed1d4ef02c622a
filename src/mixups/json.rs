//! Mix-ups as JSON for other programs.

use super::{BodyMixups, Case, Mixups};
use crate::units::Length;
use serde_json::{Map, Value, json};

/// Every body with its cases; what does not apply is absent, numbers are unrounded.
#[must_use]
pub fn to_json(mixups: &Mixups) -> Value {
    json!({ "bodies": mixups.bodies.iter().map(body).collect::<Vec<_>>() })
}

fn body(body: &BodyMixups) -> Value {
    json!({ "body": body.body.number, "cases": body.cases.iter().map(case).collect::<Vec<_>>() })
}

fn case(case: &Case) -> Value {
    let outcome = &case.outcome;
    let mut object = Map::new();
    object.insert("part".into(), json!(case.part.number));
    object.insert("conductor".into(), json!(case.conductor.id));
    object.insert("fitting".into(), json!(case.fitting.number));
    object.insert("right".into(), json!(case.right));
    object.insert("approved".into(), json!(case.proven));
    object.insert("verdict".into(), json!(outcome.verdict.word()));
    object.insert("missing".into(), json!(outcome.missing));
    let lengths = [
        ("clearance_mm", outcome.clearance),
        ("closure_mm", outcome.closure),
        ("stand_out_mm", outcome.stand_out),
        ("stand_out_shift_mm", case.stand_out_shift),
    ];
    for (key, length) in lengths {
        object.extend(length.map(|length| (key.to_owned(), number(length))));
    }
    for (key, yes) in [
        ("danger", case.danger),
        ("visible", case.visible),
        ("hidden", case.hidden),
        ("marks_distinct", case.marks_distinct),
    ] {
        object.insert(key.into(), json!(yes));
    }
    Value::Object(object)
}

/// Millimetres without the noise of binary fractions: nothing here is sure to a picometre.
pub(super) fn number(length: Length) -> Value {
    let clean = (length.mm() * 1e9).round() / 1e9;
    json!(if clean == 0.0 { 0.0 } else { clean })
}

//! Mix-ups as JSON for other programs.

use super::{BodyMixups, Case, Consequence, InterfaceMixups, Kit, Mixups};
use crate::units::Length;
use rayon::prelude::*;
use serde_json::{Map, Value, json};

/// Every body with its cases and kits, then what fittings without a body are built with; what does not
/// apply is absent, numbers are unrounded.
#[must_use]
pub fn to_json(mixups: &Mixups) -> Value {
    json!({
        "bodies": mixups.bodies.par_iter().map(body).collect::<Vec<_>>(),
        "without_body": mixups.without_body.iter().map(interface).collect::<Vec<_>>(),
    })
}

fn body(body: &BodyMixups) -> Value {
    json!({
        "body": body.body.number,
        "cases": body.cases.iter().map(case).collect::<Vec<_>>(),
        "kits": body.kits.iter().map(kit).collect::<Vec<_>>(),
    })
}

fn interface(found: &InterfaceMixups) -> Value {
    json!({
        "role": found.role.word(),
        "interface": found.interface,
        "cases": found.cases.iter().map(case).collect::<Vec<_>>(),
    })
}

fn case(case: &Case) -> Value {
    let mut object = Map::new();
    object.insert("part".into(), json!(case.part.number));
    object.insert("conductor".into(), json!(case.conductor.id));
    object.insert("fitting".into(), json!(case.fitting.number));
    consequence(&mut object, &case.comes);
    Value::Object(object)
}

fn kit(kit: &Kit) -> Value {
    let mut object = Map::new();
    object.insert("kit".into(), json!(kit.kit.number));
    object.insert("fitting".into(), json!(kit.fitting.number));
    object.insert("conductor".into(), json!(kit.conductor.id));
    let parts: Vec<&str> = kit.parts.iter().map(|part| part.number.as_str()).collect();
    object.insert("parts".into(), json!(parts));
    consequence(&mut object, &kit.comes);
    Value::Object(object)
}

fn consequence(object: &mut Map<String, Value>, comes: &Consequence) {
    let outcome = &comes.outcome;
    object.insert("right".into(), json!(comes.right));
    object.insert("approved".into(), json!(comes.proven));
    object.insert("verdict".into(), json!(outcome.verdict.word()));
    object.insert("summary".into(), json!(comes.summary.words()));
    object.insert("forced".into(), json!(outcome.forced));
    object.insert("missing".into(), json!(outcome.missing));
    let lengths = [
        ("clearance_mm", outcome.clearance),
        ("closure_mm", outcome.closure),
        ("stand_out_mm", outcome.stand_out),
        ("stand_out_shift_mm", comes.stand_out_shift),
    ];
    for (key, length) in lengths {
        object.extend(length.map(|length| (key.to_owned(), number(length))));
    }
    for (key, yes) in [
        ("danger", comes.danger),
        ("visible", comes.visible),
        ("hidden", comes.hidden),
        ("marks_distinct", comes.marks_distinct),
    ] {
        object.insert(key.into(), json!(yes));
    }
    object.insert("seen_by".into(), json!(comes.seen_by.word()));
}

/// Millimetres without the noise of binary fractions: nothing here is sure to a picometre.
pub(super) fn number(length: Length) -> Value {
    let clean = (length.mm() * 1e9).round() / 1e9;
    json!(if clean == 0.0 { 0.0 } else { clean })
}

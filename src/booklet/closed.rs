//! What a closed fitting can hold, by its stand-out.

use super::bodies;
use super::frame::Draft;
use super::input::Booklet;
use super::view::{body_link, part_link, script_json};
use crate::catalogue::Fitting;
use crate::mixups::{BodyMixups, Case};
use crate::units::Length;
use serde_json::{Value, json};

/// How far a reading with a rule can be off, in millimetres, where the reader says nothing else.
const READING: f64 = 0.5;

/// Intervals are written to a thousandth of a millimetre, rounded outward, so that rounding rules no part out.
const FINE: f64 = 1000.0;
/// What the last bits of a number may be off by, so that no file differs by them.
const LAST_BITS: f64 = 1e-6;

pub(super) fn page(booklet: &Booklet<'_>) -> Draft {
    let found: Vec<&BodyMixups> =
        booklet.input.mixups.bodies.iter().filter(|body| body.gripping_parts.len() > 1).collect();
    let cases: Vec<Value> = found
        .iter()
        .flat_map(|body| body.fittings.iter().map(|fitting| choice(booklet, body, fitting)))
        .collect();
    let values = json!({
        "tolerance": booklet.numerals.shortest(READING, 1),
        "data": script_json(&json!({ "cases": cases })),
        "bodies": found.iter().map(|body| section(booklet, body)).collect::<Vec<_>>(),
    });
    Draft { layout: "closed", title: "What is inside a closed fitting".to_owned(), kind: "Look-up", values }
}

fn cases<'a>(body: &'a BodyMixups, fitting: &'a Fitting) -> impl Iterator<Item = &'a Case> {
    body.cases
        .iter()
        .filter(|case| case.fitting.number == fitting.number)
        .filter(|case| case.outcome.goes_together())
}

fn choice(booklet: &Booklet<'_>, body: &BodyMixups, fitting: &Fitting) -> Value {
    let inside = cases(body, fitting).map(|case| {
        let interval = case.outcome.stand_out_interval;
        let link = part_link(booklet, &case.part);
        json!({
            "text": format!("{} {}", case.part.number, case.part.name),
            "href": link["href"],
            "words": bodies::kind(case).1.to_lowercase() + &stamp(case),
            "right": case.right,
            "least": interval.map(|interval| (interval.least().mm() * FINE + LAST_BITS).floor() / FINE),
            "most": interval.map(|interval| (interval.most().mm() * FINE - LAST_BITS).ceil() / FINE),
        })
    });
    let conductor = fitting.conductor();
    json!({
        "text": format!("{} in {} on {}", body.body.number, fitting.number, conductor.name),
        "inside": inside.collect::<Vec<_>>(),
    })
}

fn stamp(case: &Case) -> String {
    if case.part.stamp.is_empty() { String::new() } else { format!(", stamp {}", case.part.stamp) }
}

fn section(booklet: &Booklet<'_>, body: &BodyMixups) -> Value {
    let fittings = body.fittings.iter().map(|fitting| {
        let lines = cases(body, fitting).map(|case| line(booklet, case));
        json!({
            "caption": format!("{} on {}", fitting.number, fitting.conductor().name),
            "lines": lines.collect::<Vec<_>>(),
        })
    });
    json!({
        "number": body.body.number,
        "link": body_link(booklet, &body.body),
        "fittings": fittings.collect::<Vec<_>>(),
    })
}

fn line(booklet: &Booklet<'_>, case: &Case) -> Value {
    let (class, words) = bodies::kind(case);
    let stand_out = case
        .outcome
        .stand_out_interval
        .map_or("not known".to_owned(), |interval| booklet.numerals.range(interval.map(Length::mm), 1, "mm"));
    json!({ "class": class, "part": part_link(booklet, &case.part), "stand_out": stand_out, "words": format!("{words}{}", stamp(case)) })
}

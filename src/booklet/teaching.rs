//! The teaching sheet of a shared body: each wrong part that can be built in, magnified beside the right one.

use super::figures;
use super::frame::Draft;
use super::input::Booklet;
use super::taught::wrong_parts;
use super::verdict::cell;
use super::view::{body_link, fitting_link, optional_mark, part_link, standing, status};
use crate::catalogue::Part;
use crate::mixups::Case;
use serde_json::{Value, json};

pub(super) fn page(booklet: &Booklet<'_>, body: &Part) -> Draft {
    let found = booklet.input.mixups.body(&body.number);
    let wrong = found.map(wrong_parts).unwrap_or_default();
    let wrong: Vec<Value> = wrong.iter().map(|cases| wrong_part(booklet, cases)).collect();
    Draft {
        layout: "teaching",
        title: format!("{} {}: right and wrong", body.number, body.name),
        kind: "Teaching sheet",
        values: json!({
            "number": body.number,
            "name": body.name,
            "status": status(body.status),
            "standing": standing(body.status),
            "stamp": body.stamp,
            "all": body_link(booklet, body),
            "wrong": wrong,
        }),
    }
}

/// A wrong part where it is worst, with its drawing; in which other fittings it is wrong, in words.
fn wrong_part(booklet: &Booklet<'_>, cases: &[&Case]) -> Value {
    let Some((worst, others)) = cases.split_first() else { return Value::Null };
    let others = others.iter().map(|case| {
        json!({ "number": case.fitting.number, "conductor": case.conductor.name, "comes": case.summary.words() })
    });
    json!({
        "link": part_link(booklet, &worst.part),
        "stamp": worst.part.stamp,
        "mark": optional_mark(booklet.mark_of(&worst.part)),
        "fitting": fitting_link(booklet, &worst.fitting),
        "conductor": worst.conductor.name,
        "cell": cell(booklet, &worst.comes),
        "figure": figures::taught(booklet, worst),
        "others": others.collect::<Vec<_>>(),
    })
}

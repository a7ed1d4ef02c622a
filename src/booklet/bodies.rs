//! The page of a shared body: every gripping part on every conductor, in words.

use super::figures;
use super::frame::Draft;
use super::input::Booklet;
use super::view::{card, fitting_link, fitting_links, optional_mark, part_link, status};
use crate::catalogue::Part;
use crate::mixups::words::happens;
use crate::mixups::{BodyMixups, Case};
use serde_json::{Value, json};

/// So many wrong parts are drawn for a fitting: as many as its card names.
const DRAWN_WRONG_PARTS: usize = 3;

pub(super) fn page(booklet: &Booklet<'_>, body: &Part) -> Draft {
    let found = booklet.input.mixups.bodies.iter().find(|found| found.body.number == body.number);
    let table = found.map_or(Value::Null, |found| table(booklet, found));
    let parts = found.into_iter().flat_map(|found| &found.gripping_parts);
    let values = json!({
        "number": body.number,
        "name": body.name,
        "status": status(body.status),
        "stamp": body.stamp,
        "lead": found.map_or_else(String::new, lead),
        "table": table,
        "parts": parts.map(|part| side_by_side(booklet, part)).collect::<Vec<_>>(),
        "line_up": found.map_or(Value::Null, |found| figures::gripping_parts(booklet, found)),
        "comparisons": found.map_or_else(Vec::new, |found| comparisons(booklet, found)),
        "fittings": fitting_links(booklet, found.map(|found| &found.fittings)),
        "part": part_link(booklet, body),
        "card": card(booklet, &body.number),
    });
    Draft {
        layout: "body",
        title: format!("{} {}: what goes into it", body.number, body.name),
        kind: "Body and mix-ups",
        values,
    }
}

/// Each fitting right, and with the wrong parts that its card names.
fn comparisons(booklet: &Booklet<'_>, found: &BodyMixups) -> Vec<Value> {
    let compared = found.fittings.iter().filter_map(|fitting| {
        let mut wrong = booklet.input.mixups.wrong_parts(fitting);
        wrong.retain(|case| case.danger);
        wrong.truncate(DRAWN_WRONG_PARTS);
        let figures = figures::right_and_wrong(booklet, fitting, &wrong);
        (!wrong.is_empty())
            .then(|| json!({ "title": format!("{} {}", fitting.number, fitting.name), "figures": figures }))
    });
    compared.collect()
}

fn lead(found: &BodyMixups) -> String {
    let wrong = found.cases.iter().filter(|case| case.danger).count();
    let hidden = found.cases.iter().filter(|case| case.hidden).count();
    format!(
        "{} fittings share it. Of {} combinations of a gripping part with a fitting, {wrong} are wrong and can be \
         assembled all the same; nobody would see {hidden} of them from outside.",
        found.fittings.len(),
        found.cases.len(),
    )
}

fn table(booklet: &Booklet<'_>, found: &BodyMixups) -> Value {
    let columns = found.fittings.iter().map(|fitting| {
        let names: Vec<&str> = fitting.conductors.iter().map(|conductor| conductor.name.as_str()).collect();
        json!({ "fitting": fitting_link(booklet, fitting), "conductor": names.join(", ") })
    });
    let rows = found.gripping_parts.iter().map(|part| {
        let cells = found.fittings.iter().map(|fitting| {
            let mut cases = found.cases.iter();
            let case =
                cases.find(|case| case.part.number == part.number && case.fitting.number == fitting.number);
            case.map_or_else(nothing, |case| cell(booklet, case))
        });
        json!({
            "part": part_link(booklet, part),
            "stamp": part.stamp,
            "mark": optional_mark(booklet.mark_of(part)),
            "cells": cells.collect::<Vec<_>>(),
        })
    });
    json!({
        "caption": format!("Gripping parts in {} {}", found.body.number, found.body.name),
        "columns": columns.collect::<Vec<_>>(),
        "rows": rows.collect::<Vec<_>>(),
    })
}

fn nothing() -> Value {
    json!({ "class": "", "heading": "Not looked at", "text": "", "detail": "" })
}

fn cell(booklet: &Booklet<'_>, case: &Case) -> Value {
    let (class, heading) = kind(case);
    let stand_out = case.outcome.stand_out.map_or_else(String::new, |length| {
        format!("Stand-out seated {}", booklet.numerals.length(length, 1))
    });
    json!({ "class": class, "heading": heading, "text": happens(case, booklet.numerals), "detail": stand_out })
}

/// The class that a case is drawn by, and its heading; the heading alone says all that the class shows.
pub(super) fn kind(case: &Case) -> (&'static str, &'static str) {
    match case {
        Case { right: true, .. } => ("right-part", "Right part"),
        Case { hidden: true, .. } => ("hidden-danger", "Hidden danger"),
        Case { danger: true, .. } => ("seen-danger", "Danger that shows"),
        Case { proven: true, .. } => ("", "Proven on it as well"),
        _ => ("", "Can't be assembled"),
    }
}

fn side_by_side(booklet: &Booklet<'_>, part: &Part) -> Value {
    let names: Vec<String> =
        booklet.uses.conductors_of(part).iter().map(|conductor| conductor.name.clone()).collect();
    json!({
        "link": part_link(booklet, part),
        "stamp": part.stamp,
        "mark": optional_mark(booklet.mark_of(part)),
        "conductors": if names.is_empty() { "no fitting of this catalogue".to_owned() } else { names.join(", ") },
    })
}

//! The page of a shared body: every gripping part on every conductor, in words; where no part decides, that.

use super::addresses;
use super::closed;
use super::figures;
use super::frame::Draft;
use super::input::Booklet;
use super::taught;
use super::verdict::to_build;
use super::view::{
    body_tells, card, fitting_link, fitting_links, optional_mark, part_link, standing, status, waiting,
};
use crate::catalogue::{Conductor, Fitting, Part};
use crate::facts::words;
use crate::mixups::BodyMixups;
use serde_json::{Value, json};
use std::sync::Arc;

/// So many wrong parts are drawn for a fitting: as many as its card names.
const DRAWN_WRONG_PARTS: usize = 3;

pub(super) fn page(booklet: &Booklet<'_>, body: &Part) -> Draft {
    let found = booklet.input.mixups.body(&body.number);
    let table = found.map_or(Value::Null, |found| table(booklet, found));
    let parts = found.into_iter().flat_map(|found| &found.parts);
    let fittings = booklet.uses.by_part.get(&body.number);
    let tells = body_tells(booklet, body);
    let values = json!({
        "number": body.number,
        "name": body.name,
        "tells": tells,
        "status": status(body.status),
        "standing": standing(body.status),
        "waiting": waiting(booklet, &body.number, body.status),
        "stamp": body.stamp,
        "lead": found.map_or_else(|| nothing_decides(fittings.map_or(0, Vec::len)), lead),
        "table": table,
        "kits": found.map_or(Value::Null, |found| kits(booklet, found)),
        "parts": parts.map(|part| side_by_side(booklet, part)).collect::<Vec<_>>(),
        "line_up": found.map_or_else(Vec::new, |found| figures::gripping_parts(booklet, found)),
        "comparisons": found.map_or_else(Vec::new, |found| comparisons(booklet, found)),
        "fittings": fitting_links(booklet, fittings),
        "teaching": found.filter(|found| taught::has_sheet(found)).map(|_| booklet.link(&addresses::teaching(body))),
        "part": part_link(booklet, body),
        "closed": closed::address(booklet, body)
            .map(|to| json!({ "href": booklet.link(&to.at(format!("closed-{}", body.number))) })),
        "card": booklet.has_card(body).then(|| card(booklet, &body.number)),
    });
    Draft {
        layout: "body",
        title: format!("{} {}: {tells}", body.number, body.name),
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
        "{} fittings share it. Combinations of a part with a fitting: {}. Wrong, but can be assembled: {wrong}. \
         No measurement from outside finds {hidden} of these.",
        found.fittings.len(),
        found.cases.len(),
    )
}

fn nothing_decides(fittings: usize) -> String {
    format!(
        "{fittings} fittings share it. By the records no part inside decides which conductor it holds: go by the card \
         of each fitting."
    )
}

fn table(booklet: &Booklet<'_>, found: &BodyMixups) -> Value {
    let places = places(found);
    let columns = places.iter().map(|(fitting, conductor)| {
        json!({
            "fitting": fitting_link(booklet, fitting), "conductor": conductor.name,
            "label": label(fitting, conductor),
        })
    });
    let rows = found.parts.iter().map(|part| {
        let cells = places.iter().map(|(fitting, conductor)| {
            let case = found.case(&part.number, &fitting.number, &conductor.id);
            case.map_or_else(nothing, |case| to_build(booklet, fitting, &case.comes))
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

/// What a cell is called where a row is a card of its own, on a narrow screen.
fn label(fitting: &Fitting, conductor: &Conductor) -> String {
    let on = format!("{} on {}", fitting.number, conductor.name);
    match words::status(fitting.status, fitting.use_instead.as_deref()) {
        status if status.is_empty() => on,
        status => format!("{on}. {status}"),
    }
}

/// Each fitting with each of its conductors, as the cases have them.
fn places(found: &BodyMixups) -> Vec<(&Arc<Fitting>, &Arc<Conductor>)> {
    let mut places: Vec<(&Arc<Fitting>, &Arc<Conductor>)> = Vec::new();
    for case in &found.cases {
        let same = |place: &(&Arc<Fitting>, &Arc<Conductor>)| {
            place.0.number == case.fitting.number && place.1.id == case.conductor.id
        };
        if !places.iter().any(same) {
            places.push((&case.fitting, &case.conductor));
        }
    }
    places
}

/// The kits of other fittings in each, as rows; a kit of one part is a row of the table of parts.
fn kits(booklet: &Booklet<'_>, found: &BodyMixups) -> Value {
    let several = found.kits.iter().filter(|kit| kit.parts.len() > 1);
    let rows = several.map(|kit| {
        json!({
            "kit": fitting_link(booklet, &kit.kit),
            "fitting": fitting_link(booklet, &kit.fitting),
            "conductor": kit.conductor.name,
            "cell": to_build(booklet, &kit.fitting, &kit.comes),
        })
    });
    rows.collect()
}

fn nothing() -> Value {
    json!({ "class": "", "heading": "Not looked at", "noticed": "", "text": "", "detail": "" })
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

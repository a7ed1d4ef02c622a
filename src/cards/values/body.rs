//! What the layouts of a shared body's card are filled with.

use super::texts::{joined, mark, object, prefixed, whole};
use crate::cards::sign::Sign;
use crate::facts::{BodyColumn, BodyFacts, BodyPart, Cell, CellKind};
use serde_json::{Map, Value, json};
use std::collections::BTreeSet;

pub(super) fn of_body(facts: &BodyFacts) -> Map<String, Value> {
    let parts = facts.parts.iter().map(|part| {
        json!({
            "number": part.number, "name": part.name, "stamp": stamp(facts, &part.number), "mark": part.mark.as_ref().map(mark),
            "conductors": joined(&[&part.status_words, &part.conductors.join(", ")], "; "),
        })
    });
    let values = json!({
        "body_words": prefixed("stamp on the body: ", &whole(&facts.stamp)),
        "parts": parts.collect::<Vec<_>>(),
        "signs": signs(facts),
    });
    object(values)
}

/// What each part does in each fitting, in signs and in words.
fn signs(facts: &BodyFacts) -> Value {
    let heads: Vec<Value> = facts.rows.iter().map(|row| head(facts, &row.part)).collect();
    let on = |(nth, column): (usize, &BodyColumn)| {
        let cells = || facts.rows.iter().map(|row| row.cells.get(nth));
        json!({
            "number": column.number, "conductor": column.conductor, "status": column.status_words,
            "cells": cells().map(|cell| cell.map_or(Sign::Unknown, sign)).collect::<Vec<_>>(),
            "words": cells().map(|cell| cell.map_or("", |cell| cell.text.as_str())).collect::<Vec<_>>(),
        })
    };
    let used: BTreeSet<Sign> = facts.rows.iter().flat_map(|row| &row.cells).map(sign).collect();
    let key = used.into_iter().map(|sign| json!({ "sign": sign, "means": whole(sign.meaning()) }));
    json!({
        "parts": heads, "fittings": facts.fittings.iter().enumerate().map(on).collect::<Vec<_>>(),
        "key": key.collect::<Vec<_>>(), "says": statuses(facts),
    })
}

/// The names of the printed texts that say how the fittings of a table stand.
fn statuses(facts: &BodyFacts) -> String {
    let barred = facts.fittings.iter().filter(|column| !column.status_words.is_empty());
    let names: BTreeSet<String> = barred.map(|column| format!("{}: status", column.number)).collect();
    names.into_iter().collect::<Vec<_>>().join("; ")
}

fn head(facts: &BodyFacts, number: &str) -> Value {
    json!({ "number": number, "mark": part(facts, number).and_then(|part| part.mark.as_ref()).map(mark), "stamp": stamp(facts, number) })
}

fn part<'a>(facts: &'a BodyFacts, number: &str) -> Option<&'a BodyPart> {
    facts.parts.iter().find(|part| part.number == number)
}

/// A part's stamp; its number where it has none.
fn stamp(facts: &BodyFacts, number: &str) -> String {
    part(facts, number)
        .filter(|part| !part.stamp.is_empty())
        .map_or_else(|| number.to_owned(), |part| whole(&part.stamp))
}

/// The sign that a cell is drawn with: the same as on the fitting's card.
fn sign(cell: &Cell) -> Sign {
    match cell.kind {
        CellKind::Hidden if cell.noticed == Sign::Marked.meaning() => Sign::Marked,
        CellKind::Right => Sign::Right,
        CellKind::Proven => Sign::Proven,
        CellKind::Hidden => Sign::Hidden,
        CellKind::Shows => Sign::Wrong,
        CellKind::Barred => Sign::Barred,
        CellKind::Apart => Sign::Apart,
        CellKind::Unknown => Sign::Unknown,
    }
}

//! What the layouts of a shared body's card are filled with.

use super::texts::{joined, mark, object, prefixed, whole};
use crate::cards::sign::Sign;
use crate::facts::{BodyFacts, BodyPart, Cell, CellKind};
use serde_json::{Map, Value, json};
use std::collections::{BTreeMap, BTreeSet};

pub(super) fn of_body(facts: &BodyFacts) -> Map<String, Value> {
    let parts = facts.parts.iter().map(|part| {
        json!({
            "number": part.number, "name": part.name, "stamp": stamp(facts, &part.number), "mark": part.mark.as_ref().map(mark),
            "conductors": joined(&[&part.status_words, &part.conductors.join(", ")], "; "),
        })
    });
    let values = json!({
        "body_words": prefixed("stamp on the body: ", &facts.stamp),
        "parts": parts.collect::<Vec<_>>(),
        "matrix": matrix(facts),
        "signs": signs(facts),
        "hidden_key": hidden(facts),
    });
    object(values)
}

/// How little shows of what can't be measured: each sign once, with what it means.
fn hidden(facts: &BodyFacts) -> Vec<Value> {
    let cells = facts.rows.iter().flat_map(|row| &row.cells).filter(|cell| cell.kind == CellKind::Hidden);
    let signs: BTreeSet<(Sign, &str)> = cells.map(|cell| (sign(cell), cell.noticed)).collect();
    signs.into_iter().map(|(sign, noticed)| json!({ "sign": sign, "means": noticed })).collect()
}

/// Conductor by conductor: the right gripping part's stamp, and what each of the others does.
fn matrix(facts: &BodyFacts) -> Vec<Value> {
    let on = |(column, (number, conductor)): (usize, &(String, String))| {
        let cells = || facts.rows.iter().filter_map(|row| Some((row, row.cells.get(column)?)));
        let mut wrong: BTreeMap<(bool, &str, Option<Sign>), Vec<String>> = BTreeMap::new();
        for (row, cell) in cells().filter(|(_, cell)| cell.kind != CellKind::Right) {
            let unseen = (cell.kind == CellKind::Hidden).then(|| sign(cell));
            wrong.entry((unseen.is_none(), &cell.text, unseen)).or_default().push(stamp(facts, &row.part));
        }
        let rows = wrong.into_iter().map(
            |((_, text, sign), stamps)| json!({ "text": format!("{text}: {}", stamps.join(", ")), "sign": sign }),
        );
        json!({
            "number": number, "conductor": format!("{number}: {conductor}"), "right": right(facts, column),
            "rows": rows.collect::<Vec<_>>(),
        })
    };
    facts.fittings.iter().enumerate().map(on).collect()
}

/// The stamps of a fitting's own gripping parts.
fn right(facts: &BodyFacts, column: usize) -> String {
    let own = |cells: &[Cell]| cells.get(column).is_some_and(|cell| cell.kind == CellKind::Right);
    let stamps = facts.rows.iter().filter(|row| own(&row.cells)).map(|row| stamp(facts, &row.part));
    stamps.collect::<Vec<_>>().join(", ")
}

/// The same table in signs, for where words have no room.
fn signs(facts: &BodyFacts) -> Value {
    let heads: Vec<Value> = facts.rows.iter().map(|row| head(facts, &row.part)).collect();
    let on = |(column, (number, conductor)): (usize, &(String, String))| {
        let cells = facts.rows.iter().map(|row| row.cells.get(column).map(sign).unwrap_or(Sign::Unknown));
        json!({
            "number": number, "conductor": conductor, "right": right(facts, column),
            "cells": cells.collect::<Vec<_>>(),
        })
    };
    let used: BTreeSet<Sign> = facts.rows.iter().flat_map(|row| &row.cells).map(sign).collect();
    let key = used.into_iter().map(|sign| json!({ "sign": sign, "means": whole(sign.meaning()) }));
    json!({
        "parts": heads, "fittings": facts.fittings.iter().enumerate().map(on).collect::<Vec<_>>(),
        "key": key.collect::<Vec<_>>(),
    })
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

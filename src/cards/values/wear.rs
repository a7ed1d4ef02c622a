//! Wear tables for a card's back.

use super::texts::{joined, sentence};
use crate::facts::{WearFacts, WearRow};
use serde_json::{Value, json};

/// The wear table whole, and in two halves to stand side by side; rows at which something is done act.
pub(super) fn wear(facts: &WearFacts) -> Value {
    let limits = sentence(&one_unit(&facts.limits));
    let rows: Vec<Value> = facts.rows.iter().map(row).collect();
    let (first, second) = rows.split_at(rows.len().div_ceil(2));
    let head = format!("mm, mm²; {}.", facts.basis);
    let below = joined(&[&head, &limits], " ");
    json!({ "head": joined(&[&head, &limits], " "), "below": below, "halves": [first, second], "rows": rows })
}

/// Names and lengths in one line; millimetres are said once where one length follows another.
fn one_unit(limits: &[(String, String)]) -> String {
    let unit = "\u{a0}mm";
    let texts = limits.iter().enumerate().map(|(index, (name, text))| {
        let again = limits.get(index + 1).is_some_and(|(_, next)| next.ends_with(unit));
        let text = text.strip_suffix(unit).filter(|_| again).unwrap_or(text);
        format!("{name} {text}")
    });
    texts.collect::<Vec<_>>().join(", ")
}

fn row(row: &WearRow) -> Value {
    json!({
        "height": row.height, "flat": row.flat, "section": row.section, "worn": row.worn, "acts": !row.action.is_empty(),
    })
}

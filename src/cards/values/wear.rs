//! Wear tables for a card's back.

use super::{joined, sentence};
use crate::facts::{WearFacts, WearRow};
use serde_json::{Map, Value, json};

/// The wear table in two halves side by side; rows at which something is done are named in the head.
pub(super) fn wear(facts: &WearFacts) -> Value {
    let limits = one_unit(&facts.limits);
    let (first, second) = facts.rows.split_at(facts.rows.len().div_ceil(2));
    let mut rows: Vec<Map<String, Value>> = first.iter().map(|row| worn(row, "left")).collect();
    for (index, line) in rows.iter_mut().enumerate() {
        line.extend(second.get(index).map_or_else(|| nothing_worn("right"), |row| worn(row, "right")));
    }
    let all: Vec<Map<String, Value>> = facts.rows.iter().map(|row| worn(row, "")).collect();
    let basis = sentence(&facts.basis);
    let head = format!("Height, flat in mm; mm²; {}.", facts.basis);
    json!({ "head": joined(&[&head, &sentence(&limits)], " "), "rows": rows, "all_rows": all, "basis": basis, "limits": sentence(&limits) })
}

fn nothing_worn(half: &str) -> Map<String, Value> {
    [(format!("{half}_acts"), false.into())].into_iter().collect()
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

fn worn(row: &WearRow, half: &str) -> Map<String, Value> {
    let key = |name: &str| if half.is_empty() { name.to_owned() } else { format!("{half}_{name}") };
    [
        (key("height"), row.height.clone().into()),
        (key("flat"), row.flat.clone().into()),
        (key("section"), row.section.clone().into()),
        (key("worn"), row.worn.clone().into()),
        (key("acts"), (!row.action.is_empty()).into()),
    ]
    .into_iter()
    .collect()
}

//! Wear tables for a card's back.

use super::texts::{joined, sentence};
use crate::facts::{WearFacts, WearRow};
use serde_json::{Value, json};

/// The wear table whole, and in two halves to stand side by side; rows at which something is done act.
pub(super) fn wear(facts: &WearFacts) -> Value {
    let limits = sentence(&one_unit(&facts.limits));
    let stopped = facts.rows.iter().position(|row| row.action == STOP);
    let past = |index: usize| stopped.is_some_and(|stop| index > stop);
    let rows: Vec<Value> =
        facts.rows.iter().enumerate().map(|(index, found)| row(found, past(index))).collect();
    let (first, second) = rows.split_at(rows.len().div_ceil(2));
    let head = format!("mm, mm²; {}.", facts.basis);
    let below = joined(&[&head, &limits], " ");
    json!({
        "head": joined(&[&head, &limits], " "), "below": below, "halves": [first, second], "rows": rows, "few": few(facts), "short": short(facts),
    })
}

/// The row at which nothing is due last, and those at which something is: what the table comes to where it has no room.
fn few(facts: &WearFacts) -> Vec<Value> {
    let due = |row: &&WearRow| !row.action.is_empty() && row.action != NEW;
    let first = facts.rows.iter().position(|row| due(&row)).unwrap_or(facts.rows.len());
    let before = facts.rows[..first].last();
    before.into_iter().chain(facts.rows[first..].iter().filter(due)).map(|found| row(found, false)).collect()
}

/// What is done at the height of a new wire, and at that where it goes out of use.
const NEW: &str = "new";
const STOP: &str = "stop";

/// What the table of few rows does not say by itself: of what the percentages are, and those that are limits.
fn short(facts: &WearFacts) -> String {
    let percents = facts.limits.iter().filter(|(_, text)| text.ends_with('%'));
    let limits: Vec<String> = percents.map(|(name, text)| format!("{name} {text}")).collect();
    joined(&[&facts.basis, &limits.join(", ")], "; ")
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

/// A row; `past` says that it lies below the height at which the wire goes out of use.
fn row(row: &WearRow, past: bool) -> Value {
    let action = if past { STOP } else { row.action.as_str() };
    json!({
        "height": row.height, "flat": row.flat, "section": row.section, "worn": row.worn,
        "action": action, "acts": !action.is_empty(), "stops": action == STOP,
    })
}

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

#[cfg(test)]
mod tests {
    use super::*;

    fn facts(rows: &[(&str, &str)]) -> WearFacts {
        let row = |(height, action): &(&str, &str)| WearRow {
            height: (*height).to_owned(),
            action: (*action).to_owned(),
            ..WearRow::default()
        };
        let limits = [("plan", "10.3\u{a0}mm"), ("stop", "9.2\u{a0}mm"), ("limit", "20\u{a0}%")];
        WearFacts {
            basis: "% of nominal 120\u{a0}mm²".to_owned(),
            limits: limits.map(|(name, text)| (name.to_owned(), text.to_owned())).to_vec(),
            rows: rows.iter().map(row).collect(),
        }
    }

    fn heights(rows: &Value) -> Vec<&str> {
        rows.as_array().unwrap().iter().map(|row| row["height"].as_str().unwrap()).collect()
    }

    /// The small form has each height at which something is due, and the last before the first of them.
    #[test]
    fn few_rows_are_those_at_which_something_is_due_and_the_one_before() {
        let rows = [("12.9", NEW), ("12.0", ""), ("11.0", ""), ("10.3", "plan"), ("10.0", ""), ("9.2", STOP)];
        let values = wear(&facts(&[rows.as_slice(), &[("8.0", "")]].concat()));
        assert_eq!(heights(&values["few"]), ["11.0", "10.3", "9.2"]);
        assert_eq!(values["short"], "% of nominal 120\u{a0}mm²; limit 20\u{a0}%");
        // Nothing is due yet at any height: the last row stands for the table.
        assert_eq!(heights(&wear(&facts(&rows[..3]))["few"]), ["11.0"]);
        // Something is due at once: there is no row before.
        assert_eq!(heights(&wear(&facts(&rows[3..]))["few"]), ["10.3", "9.2"]);
    }

    #[test]
    fn the_whole_table_stops_where_the_wire_goes_out_of_use() {
        let values = wear(&facts(&[("12.9", NEW), ("9.2", STOP), ("8.0", "")]));
        let stops: Vec<_> =
            values["rows"].as_array().unwrap().iter().map(|row| row["stops"] == true).collect();
        assert_eq!(stops, [false, true, true]);
        assert_eq!(
            (heights(&values["halves"][0]), heights(&values["halves"][1])),
            (vec!["12.9", "9.2"], vec!["8.0"])
        );
        assert_eq!(
            values["below"],
            "mm, mm²; % of nominal 120\u{a0}mm². Plan 10.3, stop 9.2\u{a0}mm, limit 20\u{a0}%."
        );
    }
}

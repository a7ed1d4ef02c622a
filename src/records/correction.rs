//! What a text that should be a number was probably meant to be.

use super::node::{Content, Node, Scalar, ScalarKind};

/// Marks between whole numbers and decimals that a keyboard or another language gives in place of a point.
const DECIMAL_MARKS: [char; 3] = [',', '·', '٫'];
/// What stands between thousands.
const BETWEEN_THOUSANDS: [char; 6] = [' ', '_', '\'', '’', '\u{a0}', '\u{202f}'];

/// How to write what stands in a node as a number; `None` where nobody can tell.
pub(super) fn correction(node: &Node) -> Option<String> {
    let Content::Scalar(scalar) = &node.content else { return None };
    let written = scalar.written.trim();
    if let ScalarKind::Number(value) = scalar.kind {
        return Some(format!("write it in the figures 0 to 9: {value}"));
    }
    if let Some(value) = finite(written) {
        let quoted = if scalar.quoted { " without quotes" } else { "" };
        return Some(format!("write it{quoted} as {value}"));
    }
    let (figures, unit) = figures_and_unit(written);
    let plain: String = figures.chars().filter(|letter| !BETWEEN_THOUSANDS.contains(letter)).collect();
    let plain = plain.replace(DECIMAL_MARKS, ".");
    finite(&plain)?;
    Some(match (plain == figures, unit) {
        (true, unit) => format!("write {plain} alone, without \"{unit}\": the key names the unit"),
        (false, "") => format!("write it as {plain}: a point before the decimals, nothing between thousands"),
        (false, _) => format!("write {plain} alone: a point before the decimals, and the key names the unit"),
    })
}

/// Whether a key without a value is what stands behind a decimal comma within braces, where `2,80` ends at
/// its comma; with the number that was meant.
pub(super) fn after_decimal_comma(key: &str, value: &Node, before: Option<&Node>) -> Option<String> {
    let is_decimals = !key.is_empty() && key.chars().all(|letter| letter.is_ascii_digit());
    let Some(Content::Scalar(Scalar { kind: ScalarKind::Number(_), written, .. })) =
        before.map(|before| &before.content)
    else {
        return None;
    };
    (is_decimals && value.is_empty()).then(|| format!("{written}.{key}"))
}

fn finite(written: &str) -> Option<f64> {
    let starts = written.starts_with(|first: char| first.is_ascii_digit() || "+-.".contains(first));
    written.parse::<f64>().ok().filter(|value| starts && value.is_finite())
}

/// A text cut behind its last figure.
fn figures_and_unit(written: &str) -> (&str, &str) {
    let of_number = |letter: char| {
        letter.is_ascii_digit()
            || "+-.".contains(letter)
            || DECIMAL_MARKS.contains(&letter)
            || BETWEEN_THOUSANDS.contains(&letter)
    };
    let end = written.find(|letter| !of_number(letter)).unwrap_or(written.len());
    let (figures, unit) = written.split_at(end);
    (figures.trim(), unit.trim())
}

//! What a text that should be a number was probably meant to be.

use super::node::{Content, Node, Scalar, ScalarKind};

/// Marks between whole numbers and decimals that a keyboard or another language gives in place of a point.
const DECIMAL_MARKS: [char; 3] = [',', '·', '٫'];
/// What stands between thousands.
const BETWEEN_THOUSANDS: [char; 6] = [' ', '_', '\'', '’', '\u{a0}', '\u{202f}'];

/// Other ways in which a unit is written, in small letters and without points and blanks.
const SPELLINGS: [(&str, &[&str]); 8] = [
    ("mm²", &["mm2", "sqmm", "qmm"]),
    ("°", &["deg", "degree", "degrees"]),
    ("N·m", &["nm"]),
    ("N/mm²", &["n/mm2", "mpa"]),
    ("kg/m³", &["kg/m3"]),
    ("%", &["percent", "percents", "pct"]),
    ("Ω/km", &["ohm/km"]),
    ("pt", &["point", "points"]),
];
/// Letters that are typed in place of figures.
const LIKE_FIGURES: [char; 8] = ['O', 'o', 'I', 'l', 'i', 'S', 'B', 'Z'];

/// How to write what stands in a node as a number of a unit, which is empty for a plain one; `None` where nobody can tell.
pub(super) fn correction(node: &Node, unit_of_key: &str) -> Option<String> {
    let Content::Scalar(scalar) = &node.content else { return None };
    let written = scalar.written.trim();
    if let ScalarKind::Number(value) = scalar.kind {
        return Some(format!("write it in the figures 0 to 9: {value}"));
    }
    if let Some(value) = finite(written) {
        let quoted = if scalar.quoted { " without quotes" } else { "" };
        return Some(format!("write it{quoted} as {value}"));
    }
    if is_mistyped(written) {
        return Some("a letter stands among the figures: write it in the figures 0 to 9".into());
    }
    let (figures, unit) = figures_and_unit(written);
    let plain: String = figures.chars().filter(|letter| !BETWEEN_THOUSANDS.contains(letter)).collect();
    let plain = plain.replace(DECIMAL_MARKS, ".");
    finite(&plain)?;
    if !unit.is_empty() && !unit_of_key.is_empty() && !is_unit(unit, unit_of_key) {
        return Some(format!(
            "the key takes {unit_of_key}: convert what is in \"{unit}\", and write the figures alone"
        ));
    }
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

/// Whether a word is the unit of a key, as people write it.
fn is_unit(word: &str, unit: &str) -> bool {
    let bare = |text: &str| text.to_lowercase().replace(['.', '·', '⋅', ' ', '\u{a0}'], "");
    let spellings =
        SPELLINGS.iter().find(|(known, _)| *known == unit).map_or(&[][..], |(_, spellings)| spellings);
    bare(word) == bare(unit) || spellings.contains(&bare(word).as_str())
}

/// Whether a letter that looks like a figure stands where one belongs, as in "6O" or "1O5".
fn is_mistyped(written: &str) -> bool {
    let is_figure = |letter: char| letter.is_ascii_digit() || ".,-+".contains(letter);
    let is_like = |letter: char| is_figure(letter) || LIKE_FIGURES.contains(&letter);
    written.chars().all(is_like) && !written.chars().all(is_figure) && written.contains(is_figure)
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

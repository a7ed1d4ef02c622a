//! The measurements of a part, as its page lists them.

use super::view::fact;
use crate::catalogue::Part;
use crate::grip::{Listed, Measured};
use crate::units::{Length, Numerals};
use serde_json::Value;

/// Names and texts of what the record measures; what it lacks is left out.
pub(super) fn of(part: &Part, numerals: Numerals) -> Vec<Value> {
    let mut lines: Vec<Line> = Vec::new();
    for measurement in part.geometry.iter().flat_map(|geometry| geometry.measurements()) {
        let measured = part.geometry.as_ref().and_then(|geometry| geometry.measured(measurement.key));
        match (measurement.listed, lines.last_mut()) {
            (Listed::As(name), _) => lines.push(Line { name, measured, tolerance: None, each: None }),
            (Listed::Tolerance, Some(line)) => line.tolerance = measured,
            (Listed::Each, Some(line)) => line.each = measured,
            (Listed::Tolerance | Listed::Each, None) => {}
        }
    }
    lines.iter().filter_map(|line| fact(line.name, line.text(numerals))).collect()
}

/// A line of the list: a measurement with what is listed beside it.
struct Line {
    name: &'static str,
    measured: Option<Measured>,
    tolerance: Option<Measured>,
    each: Option<Measured>,
}

impl Line {
    fn text(&self, numerals: Numerals) -> String {
        let words = |measured: &Measured| in_words(measured, numerals);
        match (&self.measured, &self.tolerance, &self.each) {
            (Some(Measured::Length(length)), Some(tolerance), _) => {
                format!("{}\u{a0}±\u{a0}{}", bare_mm(*length, numerals), words(tolerance))
            }
            (Some(count), _, Some(each)) => format!("{}, each {}", words(count), words(each)),
            (Some(measured), ..) => words(measured),
            (None, _, Some(each)) => words(each),
            (None, ..) => String::new(),
        }
    }
}

fn in_words(measured: &Measured, numerals: Numerals) -> String {
    match measured {
        Measured::Length(length) => format!("{}\u{a0}mm", bare_mm(*length, numerals)),
        Measured::Angle(angle) => format!("{}°", numerals.shortest(angle.degrees(), 2)),
        Measured::Count(count) => count.to_string(),
        Measured::Range(range) => numerals.range(range.map(Length::mm), 1, "mm"),
        Measured::Text(text) => text.clone(),
    }
}

fn bare_mm(length: Length, numerals: Numerals) -> String {
    numerals.shortest(length.mm(), 2)
}

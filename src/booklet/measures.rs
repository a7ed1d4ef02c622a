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
            (Listed::As(name), _) => lines.push(Line { name, measured, ..Line::default() }),
            (Listed::Tolerance, Some(line)) if line.each.is_some() => line.each_tolerance = measured,
            (Listed::Tolerance, Some(line)) => line.tolerance = measured,
            (Listed::Each, Some(line)) => line.each = measured,
            (Listed::Tolerance | Listed::Each, None) => {}
        }
    }
    lines.iter().filter_map(|line| fact(line.name, line.text(numerals))).collect()
}

/// A line of the list: a measurement with what is listed beside it.
#[derive(Default)]
struct Line {
    name: &'static str,
    measured: Option<Measured>,
    tolerance: Option<Measured>,
    each: Option<Measured>,
    each_tolerance: Option<Measured>,
}

impl Line {
    fn text(&self, numerals: Numerals) -> String {
        let each = self.each.as_ref().map(|each| within(each, self.each_tolerance.as_ref(), numerals));
        match (&self.measured, each) {
            (Some(count), Some(each)) => format!("{}, each {each}", in_words(count, numerals)),
            (Some(measured), None) => within(measured, self.tolerance.as_ref(), numerals),
            (None, each) => each.unwrap_or_default(),
        }
    }
}

/// A measurement with its tolerance.
fn within(measured: &Measured, tolerance: Option<&Measured>, numerals: Numerals) -> String {
    match (measured, tolerance) {
        (Measured::Length(length), Some(tolerance)) => {
            format!("{}\u{a0}±\u{a0}{}", bare_mm(*length, numerals), in_words(tolerance, numerals))
        }
        _ => in_words(measured, numerals),
    }
}

fn in_words(measured: &Measured, numerals: Numerals) -> String {
    match measured {
        Measured::Length(length) => format!("{}\u{a0}mm", bare_mm(*length, numerals)),
        Measured::Angle(angle) => format!("{}°", numerals.shortest(angle.degrees(), 2)),
        Measured::Count(count) => count.to_string(),
        Measured::Range(range) => numerals.range(range.map(Length::mm), 1, "mm"),
        Measured::Oval(width, height) => {
            format!("{}\u{a0}×\u{a0}{}\u{a0}mm", bare_mm(*width, numerals), bare_mm(*height, numerals))
        }
        Measured::Text(text) => text.clone(),
    }
}

fn bare_mm(length: Length, numerals: Numerals) -> String {
    numerals.shortest(length.mm(), 2)
}

//! The measurements of a part, as its page lists them.

use super::view::fact;
use crate::catalogue::Part;
use crate::grip::{Listed, Measured};
use crate::units::Numerals;
use serde_json::Value;

/// Names and texts of what the record measures, with its digits; what it lacks is left out.
pub(super) fn of(part: &Part, numerals: Numerals) -> Vec<Value> {
    let Some(geometry) = &part.geometry else { return Vec::new() };
    let mut lines: Vec<Line> = Vec::new();
    for measurement in geometry.measurements() {
        let measured = geometry.measured(measurement.key).map(|measured| {
            let field = format!("geometry.{}.{}", geometry.key(), measurement.key);
            in_words(&measured, |end, value| part.origin.written(&format!("{field}{end}"), value, numerals))
        });
        match (measurement.listed, lines.last_mut()) {
            (Listed::As(name), _) => lines.push(Line { name, measured, ..Line::default() }),
            (Listed::Tolerance, Some(line)) if line.each.is_some() => line.each_tolerance = measured,
            (Listed::Tolerance, Some(line)) => line.tolerance = measured,
            (Listed::Each, Some(line)) => line.each = measured,
            (Listed::Tolerance | Listed::Each, None) => {}
        }
    }
    lines.into_iter().filter_map(|line| fact(line.name, line.text())).collect()
}

/// A line of the list: a measurement with what is listed beside it, in words.
#[derive(Default)]
struct Line {
    name: &'static str,
    measured: Option<InWords>,
    tolerance: Option<InWords>,
    each: Option<InWords>,
    each_tolerance: Option<InWords>,
}

/// A measurement with its digits, and its unit.
struct InWords {
    digits: String,
    unit: &'static str,
}

impl Line {
    fn text(self) -> String {
        let each = self.each.map(|each| each.within(self.each_tolerance));
        match (self.measured, each) {
            (Some(count), Some(each)) => format!("{}, each {each}", count.within(None)),
            (Some(measured), None) => measured.within(self.tolerance),
            (None, each) => each.unwrap_or_default(),
        }
    }
}

impl InWords {
    /// With its tolerance; a length alone has one.
    fn within(self, tolerance: Option<Self>) -> String {
        match tolerance.filter(|_| self.unit == MM) {
            Some(tolerance) => format!("{}\u{a0}±\u{a0}{}{MM}", self.digits, tolerance.digits),
            None => self.digits + self.unit,
        }
    }
}

const MM: &str = "\u{a0}mm";

/// `written` gives the digits of a number by the key of it within the measurement, with a dot before.
fn in_words(measured: &Measured, written: impl Fn(&str, f64) -> String) -> InWords {
    let (digits, unit) = match measured {
        Measured::Length(length) => (written("", length.mm()), MM),
        Measured::Angle(angle) => (written("", angle.degrees()), "°"),
        Measured::Count(count) => (count.to_string(), ""),
        Measured::Range(range) => {
            let ends = (written(".min", range.least().mm()), written(".max", range.most().mm()));
            (if ends.0 == ends.1 { ends.0 } else { format!("{}\u{a0}to\u{a0}{}", ends.0, ends.1) }, MM)
        }
        Measured::Oval(width, height) => {
            let ends = (written(".width", width.mm()), written(".height", height.mm()));
            (format!("{}\u{a0}×\u{a0}{}", ends.0, ends.1), MM)
        }
        Measured::Text(text) => (text.clone(), ""),
    };
    InWords { digits, unit }
}

#![doc = include_str!("../explain/codes/pressed-size-implausible.md")]

use super::Context;
use super::inspected::{numerals, on_part};
use crate::catalogue::Part;
use crate::diagnostics::{Finding, Findings, Severity};
use crate::grip::{Bore, Ferrule, Geometry};
use crate::units::{Length, Numerals};

/// The most of a pressed size over its least: dies press to within a few hundredths. Common practice, no source.
const WIDEST: f64 = 1.1;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for part in context.catalogue.parts.values() {
        let (kind, tube) = match &part.geometry {
            Some(Geometry::Ferrule(tube)) => ("ferrule", tube),
            Some(Geometry::Sleeve(tube)) => ("sleeve", tube),
            _ => continue,
        };
        findings.extend(without_wall(part, kind, tube, numerals));
        let Some(pressed) = tube.pressed else { continue };
        let under = tube.bore.map(Bore::width).filter(|bore| pressed.least() <= *bore);
        let over = tube.outside.filter(|outside| pressed.most() >= *outside);
        let limits = [
            under.map(|bore| format!("more than its bore of {}", numerals.length(bore, 2))),
            over.map(|outside| format!("less than its {} outside", numerals.length(outside, 2))),
        ];
        let limits = limits.into_iter().flatten();
        let limits = limits.map(|expected| (Severity::Error, "pressing can't give this size", expected));
        let wide = (pressed.most() > pressed.least() * WIDEST).then(|| {
            let expected = format!("a most of at most {WIDEST} times the least");
            (Severity::Warning, "least and most of the pressed size lie far apart", expected)
        });
        for (severity, message, expected) in limits.chain(wide) {
            let field = format!("geometry.{kind}.pressed_mm");
            let message = message.to_owned();
            let finding = on_part(severity, "pressed-size-implausible", part, &field, message)
                .found(numerals.range(pressed.map(Length::mm), 1, "mm"))
                .expected(expected);
            findings.push(finding.help("check pressed size, bore and size outside"));
        }
    }
}

/// A bore as wide as the outside, whether a pressed size is stated or not.
fn without_wall(part: &Part, kind: &str, tube: &Ferrule, numerals: Numerals) -> Option<Finding> {
    let (outside, bore) = (tube.outside?, tube.bore?.width());
    let field = format!("geometry.{kind}.outside_mm");
    let message = "its outside is not larger than its bore: it has no wall".to_owned();
    let finding = on_part(Severity::Error, "pressed-size-implausible", part, &field, message);
    (outside <= bore).then(|| {
        finding
            .found(numerals.length(outside, 2))
            .expected(format!("more than its bore of {}", numerals.length(bore, 2)))
            .help("check bore and size outside")
    })
}

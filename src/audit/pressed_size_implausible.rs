#![doc = include_str!("../explain/codes/pressed-size-implausible.md")]

use super::Context;
use super::inspected::{numerals, on_part};
use crate::diagnostics::{Findings, Severity};
use crate::grip::{Bore, Geometry};
use crate::units::Length;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for part in context.catalogue.parts.values() {
        let (kind, tube) = match &part.geometry {
            Some(Geometry::Ferrule(tube)) => ("ferrule", tube),
            Some(Geometry::Sleeve(tube)) => ("sleeve", tube),
            _ => continue,
        };
        let Some(pressed) = tube.pressed else { continue };
        let under = tube.bore.map(Bore::width).filter(|bore| pressed.least() <= *bore);
        let over = tube.outside.filter(|outside| pressed.most() >= *outside);
        let limits = [
            under.map(|bore| format!("more than its bore of {}", numerals.length(bore, 2))),
            over.map(|outside| format!("less than its {} outside", numerals.length(outside, 2))),
        ];
        for expected in limits.into_iter().flatten() {
            let field = format!("geometry.{kind}.pressed_mm");
            let message = "pressing can't give this size".to_owned();
            let finding = on_part(Severity::Error, "pressed-size-implausible", part, &field, message)
                .found(numerals.range(pressed.map(Length::mm), 1, "mm"))
                .expected(expected);
            findings.push(finding.help("check pressed size, bore and size outside"));
        }
    }
}

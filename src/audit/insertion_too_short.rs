#![doc = include_str!("../explain/codes/insertion-too-short.md")]

use super::Context;
use super::inspected::{built, numerals, on_fitting};
use crate::diagnostics::{Findings, Severity};
use crate::grip::Geometry;
use crate::units::Length;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for fitting in built(context) {
        let Some(insertion) = fitting.insertion else { continue };
        let tail = fitting.tail.unwrap_or_default();
        for item in fitting.gripping() {
            let Some(length) = item.part.geometry.as_ref().and_then(length) else { continue };
            let (severity, asked, what) = if insertion <= length {
                (Severity::Error, length, "ends inside")
            } else if insertion < length + tail - Length::from_mm(1e-9) {
                (Severity::Warning, length + tail, "leaves too little for the tail behind")
            } else {
                continue;
            };
            let message = format!("the conductor {what} {}", item.part.number);
            let finding = on_fitting(severity, "insertion-too-short", fitting, "insertion_mm", message)
                .found(numerals.length(insertion, 1))
                .expected(format!(
                    "{} {}\u{a0}mm",
                    if tail > Length::ZERO && severity == Severity::Warning {
                        "at least"
                    } else {
                        "more than"
                    },
                    numerals.at_least(asked.mm(), 1)
                ))
                .related(item.part.origin.of("geometry"), "the gripping part");
            findings.push(finding.help("check insertion, tail and the length of the gripping part"));
        }
    }
}

/// How long a cone or wedge grips.
fn length(geometry: &Geometry) -> Option<Length> {
    match geometry {
        Geometry::Collet(cone) => cone.length,
        Geometry::SpreadingCone(cone) => cone.length,
        Geometry::Wedge(wedge) => wedge.length,
        _ => None,
    }
}

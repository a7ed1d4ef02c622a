#![doc = include_str!("../explain/codes/insertion-too-short.md")]

use super::Context;
use super::inspected::{built, grip_length, half_sleeve, numerals, on_fitting};
use crate::catalogue::Fitting;
use crate::diagnostics::{Finding, Findings, Severity};
use crate::units::{Length, Numerals};

/// The part of half a sleeve that a conductor fills at least: what remains is for the gap in the middle and for
/// cutting. A rule of this program, no source.
const FILLED: f64 = 0.8;
/// Below this part no way of measuring explains it. A rule of this program, no source.
const MISTAKEN: f64 = 0.5;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for fitting in built(context) {
        let Some(insertion) = fitting.insertion else { continue };
        in_taper(fitting, insertion, numerals, findings);
        findings.extend(in_sleeve(fitting, insertion, numerals));
    }
}

fn in_taper(fitting: &Fitting, insertion: Length, numerals: Numerals, findings: &mut Findings) {
    let tail = fitting.tail.unwrap_or_default();
    for item in fitting.gripping() {
        let Some(length) = grip_length(&item.part) else { continue };
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
                if tail > Length::ZERO && severity == Severity::Warning { "at least" } else { "more than" },
                numerals.at_least(asked.mm(), 1)
            ))
            .related(item.part.origin.of("geometry"), "the gripping part");
        findings.push(finding.help("check insertion, tail and the length of the gripping part"));
    }
}

fn in_sleeve(fitting: &Fitting, insertion: Length, numerals: Numerals) -> Option<Finding> {
    let (sleeve, half) = half_sleeve(fitting)?;
    let (asked, mistaken) = (half * FILLED, half * MISTAKEN);
    if insertion > asked - Length::from_mm(1e-9) {
        return None;
    }
    let severity = if insertion < mistaken { Severity::Error } else { Severity::Warning };
    let message = format!("the conductors fill too little of {}", sleeve.number);
    let finding = on_fitting(severity, "insertion-too-short", fitting, "insertion_mm", message)
        .found(numerals.length(insertion, 1))
        .expected(format!(
            "at least {}\u{a0}mm (0.8 of half the sleeve; a rule of this program)",
            numerals.at_least(asked.mm(), 1)
        ))
        .related(sleeve.origin.of("geometry"), "the sleeve");
    Some(finding.help("check insertion and the sleeve's length"))
}

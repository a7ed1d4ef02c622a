#![doc = include_str!("../explain/codes/insertion-too-long.md")]

use super::Context;
use super::inspected::{built, numerals, on_fitting};
use crate::catalogue::{Family, Role};
use crate::diagnostics::{Findings, Severity};
use crate::grip::Geometry;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for fitting in built(context).filter(|fitting| fitting.family == Family::Sleeve) {
        let sleeves: Vec<_> = fitting.gripping().filter(|item| item.part.role == Role::Sleeve).collect();
        let ([only], Some(insertion)) = (&sleeves[..], fitting.insertion) else { continue };
        let Some(Geometry::Sleeve(sleeve)) = &only.part.geometry else { continue };
        let Some(length) = sleeve.length.filter(|length| insertion > *length / 2.0) else { continue };
        let message = format!("the conductors go in further than half the length of {}", only.part.number);
        let finding = on_fitting(Severity::Error, "insertion-too-long", fitting, "insertion_mm", message)
            .found(numerals.length(insertion, 1))
            .expected(format!("at most {}\u{a0}mm", numerals.at_most((length / 2.0).mm(), 1)))
            .related(only.part.origin.of("geometry"), "the sleeve");
        findings.push(finding.help("at most half the sleeve's length for each conductor"));
    }
}

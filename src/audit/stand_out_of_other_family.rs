#![doc = include_str!("../explain/codes/stand-out-of-other-family.md")]

use super::Context;
use super::inspected::on_fitting;
use crate::catalogue::{Family, StandOutFrom};
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        let Some(from) = fitting.stand_out.as_ref().map(|stated| stated.from) else { continue };
        let expected = match (fitting.family, from) {
            (Family::ConeDeadEnd, StandOutFrom::WedgeEnd) => StandOutFrom::ConeFace,
            (Family::WedgeDeadEnd, StandOutFrom::ConeFace) => StandOutFrom::WedgeEnd,
            _ => continue,
        };
        let message = "the fitting has no such face".to_owned();
        let finding =
            on_fitting(Severity::Error, "stand-out-of-other-family", fitting, "stand_out.from", message)
                .found(from.word())
                .expected(expected.word());
        findings.push(finding.help("state the face that is measured, or correct the family"));
    }
}

#![doc = include_str!("../explain/codes/unusable-part-in-fitting.md")]

use super::Context;
use super::inspected::on_fitting;
use crate::catalogue::Status;
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let current = context.catalogue.fittings.values().filter(|fitting| fitting.status == Status::Current);
    for fitting in current {
        for (nth, item) in fitting.items.iter().enumerate() {
            let how = match item.part.status {
                Status::Withdrawn => "withdrawn",
                Status::OnHold => "on hold",
                Status::Current | Status::Superseded => continue,
            };
            let message = format!("it is current, and its part {} is {how}", item.part.number);
            let field = format!("parts.{nth}");
            let finding = on_fitting(Severity::Error, "unusable-part-in-fitting", fitting, &field, message)
                .related(item.part.origin.of("status"), "the part's status");
            findings.push(finding.help("put the fitting on hold or supersede it, or take another part"));
        }
    }
}

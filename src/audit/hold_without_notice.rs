#![doc = include_str!("../explain/codes/hold-without-notice.md")]

use super::Context;
use super::inspected::on_fitting;
use crate::catalogue::Status;
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        if fitting.status == Status::OnHold && fitting.notices.is_empty() {
            let message = "it is on hold, and no notice says so".to_owned();
            let finding = on_fitting(Severity::Warning, "hold-without-notice", fitting, "status", message);
            findings.push(finding.help("write a notice, and name it in `notices`"));
        }
    }
}

#![doc = include_str!("../explain/codes/no-gripping-part.md")]

use super::Context;
use super::inspected::{built, on_fitting};
use crate::catalogue::Family;
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in built(context) {
        let needs_one = !matches!(fitting.family, Family::ParallelGroove | Family::Other);
        if needs_one && fitting.gripping().next().is_none() {
            let message = "none of its parts holds the conductor".to_owned();
            let finding = on_fitting(Severity::Warning, "no-gripping-part", fitting, "parts", message);
            findings.push(finding.help("list the cone, wedge, sleeve, ferrule or rope grip with its role"));
        }
    }
}

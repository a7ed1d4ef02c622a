#![doc = include_str!("../explain/codes/thimble-does-not-fit.md")]

use super::Context;
use super::inspected::{built, numerals, on_fitting};
use crate::catalogue::Role;
use crate::diagnostics::{Findings, Severity};
use crate::grip::Verdict;
use crate::mixups::own;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in built(context) {
        let all = own(fitting, &context.catalogue.settings.limits);
        for own in all.iter().filter(|own| own.part.role == Role::Thimble) {
            let (severity, how) = match own.outcome.verdict {
                Verdict::WillNotEnter => (Severity::Error, "narrower than"),
                Verdict::Marginal => (Severity::Warning, "over 1.15 times"),
                _ => continue,
            };
            let diameter = numerals(context).length(own.conductor.section.overall_diameter, 1);
            let message = format!("the groove of {} is {how} the rope's {diameter}", own.part.number);
            let finding = on_fitting(severity, "thimble-does-not-fit", fitting, "parts", message)
                .related(own.part.origin.of("geometry.thimble.groove_mm"), "the groove");
            findings.push(finding.help("take the thimble for that rope"));
        }
    }
}

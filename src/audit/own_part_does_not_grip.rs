#![doc = include_str!("../explain/codes/own-part-does-not-grip.md")]

use super::Context;
use super::inspected::{built, on_fitting};
use crate::catalogue::Role;
use crate::diagnostics::{Findings, Severity};
use crate::grip::{HeldConstruction, Verdict};
use crate::mixups::{Own, Summary, held, own, proven_in};
use crate::units::Numerals;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = super::inspected::numerals(context);
    let limits = &context.catalogue.settings.limits;
    for fitting in built(context) {
        for own in own(fitting, limits) {
            let severity = match own.outcome.verdict {
                Verdict::Grips | Verdict::Unknown => continue,
                _ if matches!(own.part.role, Role::Thimble) => continue,
                Verdict::Marginal if proven_in(fitting, &own.part, &own.conductor, limits) => continue,
                Verdict::Marginal if own.part.role == Role::RopeGrip && !is_stranded(&own) => continue,
                Verdict::Marginal => Severity::Warning,
                _ => Severity::Error,
            };
            let message = format!("{} on {}: {}", own.part.number, own.conductor.id, what(&own, numerals));
            let finding = on_fitting(severity, "own-part-does-not-grip", fitting, "parts", message)
                .related(own.part.origin.of("geometry"), "the part's measurements")
                .related(own.conductor.origin.of("construction"), "the conductor");
            findings.push(finding.help(
                "check the measurements and the conductor; if they are right, take the fitting out of use",
            ));
        }
    }
}

/// Screwed grips on a single strand have a finding of their own.
fn is_stranded(own: &Own) -> bool {
    held(&own.conductor).construction == HeldConstruction::StrandedRope
}

fn what(own: &Own, numerals: Numerals) -> String {
    let said = Summary::of_wrong(&own.outcome).words();
    let lengths = [
        ("clearance", own.outcome.clearance),
        ("closure", own.outcome.closure),
        ("depth", own.outcome.depth),
    ];
    let lengths: Vec<String> = lengths
        .into_iter()
        .filter_map(|(name, length)| Some(format!("{name} {}", numerals.length(length?, 2))))
        .collect();
    if lengths.is_empty() { said.to_owned() } else { format!("{said} ({})", lengths.join(", ")) }
}

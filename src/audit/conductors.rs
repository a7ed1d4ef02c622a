//! What the rules on conductors share: each conductor held against what is computed of it.

use super::Context;
use crate::catalogue::Conductor;
use crate::diagnostics::{Finding, Findings};
use crate::section::stated::Against;

/// Adds what a rule finds of each conductor.
pub(super) fn each(
    context: Context<'_>,
    findings: &mut Findings,
    rule: impl Fn(&Conductor, Against<'_>) -> Option<Finding>,
) {
    let limits = &context.catalogue.settings.limits;
    findings.extend(context.catalogue.conductors.values().filter_map(|conductor| {
        let against = Against {
            section: &conductor.section,
            nominal_size: conductor.nominal_size,
            stated_section: conductor.stated.section,
            stated_diameter: conductor.stated.overall_diameter,
            section_tolerance_percent: limits.section_tolerance_percent,
            diameter_tolerance: limits.diameter_tolerance,
        };
        rule(conductor, against)
    }));
}

/// A finding on a field of a conductor that stops the run.
pub(super) fn error(
    conductor: &Conductor,
    code: &'static str,
    field: &str,
    message: impl Into<String>,
) -> Finding {
    Finding::error(code, conductor.origin.of(field), message).record(&conductor.id).field(field)
}

/// A finding on a field of a conductor that somebody must look at.
pub(super) fn warning(
    conductor: &Conductor,
    code: &'static str,
    field: &str,
    message: impl Into<String>,
) -> Finding {
    Finding::warning(code, conductor.origin.of(field), message).record(&conductor.id).field(field)
}

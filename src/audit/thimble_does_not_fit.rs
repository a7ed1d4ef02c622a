#![doc = include_str!("../explain/codes/thimble-does-not-fit.md")]

use super::Context;
use super::inspected::{built, numerals, on_fitting};
use crate::catalogue::Role;
use crate::diagnostics::{Findings, Severity};
use crate::grip::{Geometry, Thimble, Verdict};
use crate::mixups::{Own, held, own};
use crate::units::Length;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in built(context) {
        let all = own(fitting, &context.catalogue.settings.limits);
        for own in all.iter().filter(|own| own.part.role == Role::Thimble) {
            let (severity, how) = match own.outcome.verdict {
                Verdict::WillNotEnter => (Severity::Error, "narrower than"),
                Verdict::Marginal => (Severity::Warning, how_marginal(own)),
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

/// On which side a groove may be off, by the tolerances of thimble and rope.
fn how_marginal(own: &Own) -> &'static str {
    let Some(Geometry::Thimble(Thimble { groove: Some(groove), groove_tolerance, .. })) = &own.part.geometry
    else {
        return "not known to fit";
    };
    let held = held(&own.conductor);
    let narrowest = *groove - groove_tolerance.unwrap_or(Length::ZERO);
    let is_narrow = narrowest < held.overall_diameter + held.diameter_tolerance;
    if is_narrow { "narrower, within the tolerances, than" } else { "over 1.15 times" }
}

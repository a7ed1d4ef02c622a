#![doc = include_str!("../explain/codes/holding-load-too-low.md")]

use super::Context;
use super::inspected::{built, numerals, on_fitting};
use crate::catalogue::{Conductor, Family, Fitting};
use crate::diagnostics::{Findings, Severity};
use crate::grip::{Termination, holding_percent};
use crate::mixups;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let limit = context.catalogue.settings.limits.holding_percent_of_breaking_load;
    let tension = |fitting: &Fitting| !matches!(fitting.family, Family::ParallelGroove | Family::Other);
    for fitting in built(context).filter(|fitting| tension(fitting)) {
        let Some(holding) = fitting.holding_load else { continue };
        for conductor in &fitting.conductors {
            let Some(breaking) = conductor.breaking_load() else { continue };
            let kept = termination(fitting, conductor).map_or(100.0, |end| end.efficiency() * 100.0);
            let (percent, limit) = (holding_percent(holding, breaking), limit.min(kept));
            if percent >= limit - 1e-9 {
                continue;
            }
            let numerals = numerals(context);
            let message = format!(
                "it holds {} % of the breaking load of {}",
                numerals.at_most(percent, 1),
                conductor.id
            );
            let finding =
                on_fitting(Severity::Error, "holding-load-too-low", fitting, "holding_load_kN", message)
                    .found(fitting.with_unit("holding_load_kN", holding.kn(), "kN", numerals))
                    .expected(format!(
                        "at least {} % of {}: {}",
                        numerals.shortest(limit, 1),
                        numerals.force(breaking),
                        numerals.force_at_least(breaking * (limit / 100.0))
                    ));
            findings.push(finding.help(
                "check both loads and their units; if they are right, the fitting is not for that conductor",
            ));
        }
    }
}

/// What ends a rope in this fitting; `None` for other conductors.
pub(super) fn termination(fitting: &Fitting, conductor: &Conductor) -> Option<Termination> {
    fitting.gripping().find_map(|item| mixups::termination(&item.part, conductor))
}

#![doc = include_str!("../explain/codes/line-tension-near-breaking.md")]

use super::Context;
use super::inspected::{built, numerals, on_fitting};
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    let limit = context.catalogue.settings.limits.tension_percent_of_breaking_load;
    for fitting in built(context) {
        let Some(used) = fitting.line_tension_max else { continue };
        for conductor in &fitting.conductors {
            let Some(carried) = conductor.carries() else { continue };
            let percent = used / carried.load * 100.0;
            if percent <= limit + 1e-9 || used > carried.load {
                continue;
            }
            let message = format!(
                "the line tension is {} % of {} of {}",
                numerals.at_least(percent, 1),
                carried.words,
                conductor.id
            );
            let finding = on_fitting(
                Severity::Warning,
                "line-tension-near-breaking",
                fitting,
                "line_tension_max_kN",
                message,
            )
            .found(fitting.with_unit("line_tension_max_kN", used.kn(), "kN", numerals))
            .expected(format!(
                "at most {} % of {}: {}",
                numerals.shortest(limit, 1),
                numerals.force(carried.load),
                numerals.force_at_most(carried.load * (limit / 100.0))
            ));
            findings.push(
                finding.help("check both; if they are right, choose a lower tension or a stronger conductor"),
            );
        }
    }
}

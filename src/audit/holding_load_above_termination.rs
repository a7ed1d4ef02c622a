#![doc = include_str!("../explain/codes/holding-load-above-termination.md")]

use super::Context;
use super::holding_load_too_low::termination;
use super::inspected::{built, numerals, on_fitting};
use crate::diagnostics::{Findings, Severity};
use crate::grip::termination_load;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for fitting in built(context) {
        let Some(holding) = fitting.holding_load else { continue };
        for conductor in &fitting.conductors {
            let (Some(end), Some(breaking)) = (termination(fitting, conductor), conductor.breaking_load())
            else {
                continue;
            };
            let kept = termination_load(breaking, end);
            if holding.newtons() <= kept.newtons() + 1e-6 {
                continue;
            }
            let message =
                format!("this kind of rope end holds only {} of {}", numerals.force(kept), conductor.id);
            let field = "holding_load_kN";
            let finding =
                on_fitting(Severity::Warning, "holding-load-above-termination", fitting, field, message)
                    .found(numerals.force(holding));
            findings.push(finding.help("check that the load was tested with this termination"));
        }
    }
}

#![doc = include_str!("../explain/codes/holding-load-above-termination.md")]

use super::Context;
use super::inspected::{built, numerals, on_fitting};
use crate::diagnostics::{Findings, Severity};
use crate::mixups::rope_end_keeps;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for fitting in built(context) {
        let Some(holding) = fitting.holding_load else { continue };
        for conductor in &fitting.conductors {
            let Some(kept) = rope_end_keeps(fitting, conductor) else { continue };
            // Loads are stated to a tenth of a kilonewton: the tenth that is needed is not too much.
            if holding.kn() <= (kept.kn() * 10.0 - 1e-6).ceil() / 10.0 + 1e-9 {
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

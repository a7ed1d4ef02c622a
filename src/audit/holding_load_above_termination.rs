//! `holding-load-above-termination`: a rope fitting that is said to hold more than its termination
//! keeps of the rope.
//!
//! Why: a pressed ferrule keeps 90 % of a rope's breaking load (EN 13411-3), grips and wedge sockets
//! 80 % (EN 13411-5; -6 from memory). More may be proven, but it is worth a look.
//!
//! To put it right: check that the load was tested with this termination.

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
            let message = format!("its termination keeps {} of {}", numerals.force(kept), conductor.id);
            let field = "holding_load_kN";
            let finding =
                on_fitting(Severity::Note, "holding-load-above-termination", fitting, field, message)
                    .found(numerals.force(holding));
            findings.push(finding.help("check that the load was tested with this termination"));
        }
    }
}

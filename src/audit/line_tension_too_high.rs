//! `line-tension-too-high`: a fitting that may be used at more than it is proven to hold.
//!
//! Why: a line tension over the holding load is a line that comes down.
//!
//! To put it right: check both loads and their units.

use super::Context;
use super::inspected::{numerals, on_fitting};
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for fitting in context.catalogue.fittings.values() {
        let (Some(used), Some(holds)) = (fitting.line_tension_max, fitting.holding_load) else { continue };
        if used <= holds {
            continue;
        }
        let message = "it may be used at more than it is proven to hold".to_owned();
        let finding =
            on_fitting(Severity::Error, "line-tension-too-high", fitting, "line_tension_max_kN", message)
                .found(numerals.force(used))
                .expected(format!("at most its holding load of {}", numerals.force(holds)));
        findings.push(finding.help("check both loads and their units"));
    }
}

//! `line-tension-too-high`: a fitting that may be used at more than it is proven to hold, or than its
//! conductor can carry.
//!
//! Why: a line tension over the holding load or the breaking load is a line that comes down. Of a contact
//! wire that counts which is left at its stop height.
//!
//! To put it right: check the loads and their units.

use super::Context;
use super::inspected::{carries, numerals, on_fitting, stated_force};
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for fitting in context.catalogue.fittings.values() {
        let Some(used) = fitting.line_tension_max else { continue };
        let mut limits = Vec::new();
        limits.extend(fitting.holding_load.map(|load| {
            (
                "it may be used at more than it is proven to hold".to_owned(),
                "its holding load".to_owned(),
                load,
            )
        }));
        limits.extend(fitting.conductors.iter().filter_map(|conductor| {
            let carried = carries(conductor)?;
            let message = format!("it may be used at more than {} carries", conductor.id);
            Some((message, carried.words.to_owned(), carried.load))
        }));
        for (message, what, load) in limits.into_iter().filter(|(.., load)| used > *load) {
            let finding =
                on_fitting(Severity::Error, "line-tension-too-high", fitting, "line_tension_max_kN", message)
                    .found(stated_force(fitting, "line_tension_max_kN", used, numerals))
                    .expected(format!("at most {what} of {}", numerals.force_at_most(load)));
            findings.push(finding.help("check the loads and their units"));
        }
    }
}

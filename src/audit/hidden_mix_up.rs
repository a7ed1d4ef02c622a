//! `hidden-mix-up`: wrong parts that go into a fitting and that nobody would see afterwards.
//!
//! Why: their marks differ and are seen or witnessed, so the fitting may be built; but the card must
//! name them, and whoever signs it must know.
//!
//! To put it right: nothing, or change a measurement so that the wrong part refuses or shows
//! (`fittingcards mixups --ways-out`).

use super::Context;
use super::inspected::{is_built, list, on_fitting};
use crate::catalogue::Fitting;
use crate::diagnostics::{Findings, Severity};
use crate::mixups::Case;
use std::collections::BTreeMap;
use std::sync::Arc;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for (fitting, cases) in hidden(context) {
        let mut covered: Vec<&str> = cases
            .iter()
            .filter(|case| case.marks_distinct && (case.mark_seen || fitting.witness.is_some()))
            .map(|case| case.part.number.as_str())
            .collect();
        covered.dedup();
        if covered.is_empty() {
            continue;
        }
        let verb = if covered.len() == 1 { "goes" } else { "go" };
        let message = format!("{} {verb} into it unseen; only mark and witness tell", list(&covered));
        let finding = on_fitting(Severity::Warning, "hidden-mix-up", fitting, "parts", message);
        findings.push(
            finding.help(
                "the card names them; `fittingcards mixups --ways-out` says what would remove the danger",
            ),
        );
    }
}

/// The hidden dangers of each fitting that is built, part by part.
pub(super) fn hidden(context: Context<'_>) -> Vec<(&Arc<Fitting>, Vec<&Case>)> {
    let mut hidden: BTreeMap<&str, (&Arc<Fitting>, Vec<&Case>)> = BTreeMap::new();
    for case in context.mixups.cases().filter(|case| case.hidden && is_built(&case.fitting)) {
        hidden.entry(&case.fitting.number).or_insert_with(|| (&case.fitting, Vec::new())).1.push(case);
    }
    hidden.into_values().collect()
}

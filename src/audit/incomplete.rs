//! `incomplete`: a fitting's record lacks what its card must not lack.
//!
//! Why: what isn't on the card is guessed, or not done. While something is lacking the card says so.
//!
//! To put it right: state what is named, or say in `complete_without` that the fitting has no need of it, and why.

use super::Context;
use super::inspected::list;
use crate::diagnostics::{Finding, Findings};
use crate::facts;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        let keys: Vec<String> = facts::lacking(fitting, context.catalogue, context.mixups)
            .into_iter()
            .map(|key| format!("`{}`", key.word()))
            .collect();
        if keys.is_empty() {
            continue;
        }
        let message = format!("its card lacks {}", list(&keys));
        let finding = Finding::warning("incomplete", fitting.origin.place.clone(), message);
        findings.push(
            finding
                .record(&fitting.number)
                .help("state it, or say in `complete_without` that it has no need of it, and why"),
        );
    }
}

#![doc = include_str!("../explain/codes/incomplete.md")]

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

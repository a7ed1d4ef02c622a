//! `not-lacking`: a fitting says that it has no need of what its record states, or of what its family never needs.
//!
//! Why: the line is left over from an earlier state, and would hide it once the value is taken out.
//!
//! To put it right: take the key out of `complete_without`.

use super::Context;
use super::inspected::on_fitting;
use crate::diagnostics::{Findings, Severity};
use crate::facts;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        let unstated = facts::unstated(fitting, context.catalogue, context.mixups);
        for (nth, key) in fitting.complete_without.keys.iter().enumerate() {
            if unstated.contains(key) {
                continue;
            }
            let message = format!("its card does not lack `{}`", key.word());
            let field = format!("complete_without.keys.{nth}");
            let finding = on_fitting(Severity::Note, "not-lacking", fitting, &field, message);
            findings.push(finding.help("take the key out of `complete_without`"));
        }
    }
}

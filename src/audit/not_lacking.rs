#![doc = include_str!("../explain/codes/not-lacking.md")]

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
            let message =
                format!("`{}` is stated, or never needed, so the card does not lack it", key.word());
            let field = format!("complete_without.keys.{nth}");
            let finding = on_fitting(Severity::Note, "not-lacking", fitting, &field, message);
            findings.push(finding.help("take the key out of `complete_without`"));
        }
    }
}

#![doc = include_str!("../explain/codes/proof-given-up.md")]

use super::Context;
use super::inspected::{built, on_fitting};
use crate::catalogue::CardKey;
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in built(context).filter(|fitting| fitting.line_tension_max.is_some()) {
        for (nth, key) in fitting.complete_without.keys.iter().enumerate() {
            if !matches!(key, CardKey::Proof | CardKey::HoldingLoad) {
                continue;
            }
            let message = format!("it bears a line tension, and is said to have no need of `{}`", key.word());
            let field = format!("complete_without.keys.{nth}");
            let finding = on_fitting(Severity::Note, "proof-given-up", fitting, &field, message)
                .related(fitting.place_of("line_tension_max_kN"), "the line tension")
                .help("state it; or, where the fitting never is under tension, take the line tension out");
            findings.push(finding);
        }
    }
}

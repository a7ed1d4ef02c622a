#![doc = include_str!("../explain/codes/hidden-mix-up.md")]

use super::Context;
use super::inspected::{list, numerals, on_fitting};
use super::unseen::{Unseen, hidden, names};
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for (fitting, unseen) in hidden(context) {
        let is_covered = |unseen: &&Unseen<'_>| {
            unseen.comes.marks_distinct && (unseen.comes.mark_seen || fitting.witness.is_some())
        };
        let covered = names(unseen.iter().filter(is_covered), numerals(context));
        if covered.is_empty() {
            continue;
        }
        let verb = if covered.len() == 1 { "goes" } else { "go" };
        let message = format!(
            "{} {verb} into it, and nobody sees it afterwards: only mark and witness help",
            list(&covered)
        );
        let finding = on_fitting(Severity::Warning, "hidden-mix-up", fitting, "parts", message);
        findings.push(
            finding.help(
                "the card names them; `fittingcards mixups --ways-out` says what would remove the danger",
            ),
        );
    }
}

//! `hidden-mix-up`: wrong parts that go into a fitting and that nobody would see afterwards.
//!
//! Why: their marks differ and are seen or witnessed, so the fitting may be built; but the card must
//! name them, and whoever signs it must know.
//!
//! To put it right: nothing, or change a measurement so that the wrong part refuses or shows
//! (`fittingcards mixups --ways-out`).

use super::Context;
use super::inspected::{list, on_fitting};
use super::unseen::{hidden, names};
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for (fitting, unseen) in hidden(context) {
        let covered = names(unseen.iter().filter(|unseen| {
            unseen.comes.marks_distinct && (unseen.comes.mark_seen || fitting.witness.is_some())
        }));
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

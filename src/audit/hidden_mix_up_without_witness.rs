//! `hidden-mix-up-without-witness`: a wrong part that nobody would see afterwards, not even by its
//! mark, in a fitting without a witness.
//!
//! Why: a mark inside a closed body helps only while the body is open, and only if a second person
//! looks.
//!
//! To put it right: add `witness`, saying what is read before the body is closed; or put the mark where
//! it is seen afterwards, and say `seen_after_assembly: true`.

use super::Context;
use super::inspected::{list, on_fitting};
use super::unseen::{hidden, names};
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for (fitting, all) in hidden(context) {
        let unseen = names(all.iter().filter(|unseen| !unseen.comes.mark_seen));
        if unseen.is_empty() || fitting.witness.is_some() {
            continue;
        }
        let (verb, whose) = if unseen.len() == 1 { ("goes", "its mark") } else { ("go", "their marks") };
        let message = format!(
            "{} {verb} into it unseen, {whose} can't be seen afterwards, and no second person checks it",
            list(&unseen)
        );
        let finding =
            on_fitting(Severity::Error, "hidden-mix-up-without-witness", fitting, "witness", message);
        findings
            .push(finding.help("add `witness: …`, saying what a second person reads before it is closed"));
    }
}

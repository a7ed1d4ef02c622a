#![doc = include_str!("../explain/codes/hidden-mix-up-without-witness.md")]

use super::Context;
use super::inspected::{list, numerals, on_fitting};
use super::unseen::{hidden, names};
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for (fitting, all) in hidden(context) {
        let unseen = names(all.iter().filter(|unseen| !unseen.comes.mark_seen), numerals(context));
        if unseen.is_empty() || fitting.witness.is_some() {
            continue;
        }
        let (verb, whose) = if unseen.len() == 1 { ("goes", "its mark") } else { ("go", "their marks") };
        let message = format!(
            "{} {verb} into it, nobody sees it afterwards, not even by {whose}, and no second person checks it",
            list(&unseen)
        );
        let finding =
            on_fitting(Severity::Error, "hidden-mix-up-without-witness", fitting, "witness", message);
        findings
            .push(finding.help("add `witness: …`, saying what a second person reads before it is closed"));
    }
}

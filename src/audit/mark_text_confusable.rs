#![doc = include_str!("../explain/codes/mark-text-confusable.md")]

use super::Context;
use super::inspected::{MarkPair, mark_pairs, on_part};
use crate::colour::{Confusion, confusion};
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for MarkPair { one, two } in mark_pairs(context) {
        let Some(confusion) = confusion(&one.1.text, &two.1.text).filter(|how| *how != Confusion::Same)
        else {
            continue;
        };
        let message = format!("{} {}: {} on {}", two.1.text, confusion.words(), one.1.text, one.0.number);
        let finding = on_part(Severity::Warning, "mark-text-confusable", two.0, "mark.text", message)
            .related(one.0.origin.of("mark.text"), "the other text");
        findings.push(finding.help("change one of the texts by two characters"));
    }
}

#![doc = include_str!("../explain/codes/marks-alike.md")]

use super::Context;
use super::inspected::{MarkPair, list, mark_pairs, on_part};
use super::proposals::Proposals;
use crate::colour::{Confusion, confusion};
use crate::diagnostics::{Findings, Severity};
use std::cell::OnceCell;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let proposals = OnceCell::new();
    for MarkPair { one, two } in mark_pairs(context) {
        let same_text = confusion(&one.1.text, &two.1.text) == Some(Confusion::Same);
        let same: Vec<&str> = [
            (one.1.colour == two.1.colour, "colour"),
            (same_text, "text"),
            (one.1.notches == two.1.notches, "number of notches"),
        ]
        .into_iter()
        .filter_map(|(same, what)| same.then_some(what))
        .collect();
        if same.is_empty() {
            continue;
        }
        let message = format!("its mark has the {} of {}", list(&same), one.0.number);
        let finding = on_part(Severity::Error, "marks-alike", two.0, "mark", message)
            .found(two.1.words())
            .related(one.0.origin.of("mark"), one.1.words());
        findings.push(finding.help(proposals.get_or_init(|| Proposals::of(context)).help(&two.0.number)));
    }
}

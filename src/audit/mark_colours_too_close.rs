#![doc = include_str!("../explain/codes/mark-colours-too-close.md")]

use super::Context;
use super::inspected::{MarkPair, mark_pairs, on_part};
use super::proposals::Proposals;
use crate::colour::{Likeness, compare};
use crate::diagnostics::{Findings, Severity};
use crate::mixups::mark_limits;
use std::cell::OnceCell;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let proposals = OnceCell::new();
    let limits = mark_limits(&context.catalogue.settings.limits);
    for MarkPair { one, two } in mark_pairs(context) {
        let close: Vec<String> = compare(one.1, two.1, limits)
            .likenesses
            .iter()
            .filter_map(|likeness| match likeness {
                Likeness::ColourTooClose { sight, difference } => {
                    Some(format!("{} ({difference:.1})", sight.words()))
                }
                _ => None,
            })
            .collect();
        if close.is_empty() {
            continue;
        }
        let message = format!(
            "{} looks like the {} of {} {}",
            two.1.colour.word(),
            one.1.colour.word(),
            one.0.number,
            close.join(" and ")
        );
        let finding = on_part(Severity::Error, "mark-colours-too-close", two.0, "mark.colour", message)
            .found(format!("{} beside {}", two.1.colour.letters(), one.1.colour.letters()))
            .expected(format!("a difference of at least {} for every eye", limits.difference))
            .related(one.0.origin.of("mark.colour"), "the other mark");
        findings.push(finding.help(proposals.get_or_init(|| Proposals::of(context)).help(&two.0.number)));
    }
}

#![doc = include_str!("../explain/codes/marks-alike-in-grey.md")]

use super::Context;
use super::inspected::{MarkPair, mark_pairs, on_part};
use crate::colour::{Likeness, compare};
use crate::diagnostics::{Findings, Severity};
use crate::mixups::mark_limits;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let limits = mark_limits(&context.catalogue.settings.limits);
    for MarkPair { one, two } in mark_pairs(context) {
        let comparison = compare(one.1, two.1, limits);
        let grey = |likeness: &&Likeness| matches!(likeness, Likeness::GreyCopy { .. });
        let Some(likeness) = comparison.likenesses.iter().find(grey) else { continue };
        let message = format!("beside the mark of {}, {}", one.0.number, likeness.words());
        let finding = on_part(Severity::Warning, "marks-alike-in-grey", two.0, "mark", message)
            .found(two.1.words())
            .related(one.0.origin.of("mark"), one.1.words());
        findings
            .push(finding.help("let the texts differ by two characters, or take a lighter or darker colour"));
    }
}

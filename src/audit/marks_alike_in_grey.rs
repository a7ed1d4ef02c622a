//! `marks-alike-in-grey`: two marks of one body that a grey copy doesn't tell apart.
//!
//! Why: cards get photocopied. There the swatches differ by less than 10 L*, and the texts by one
//! character.
//!
//! To put it right: let the texts differ by two characters, or take a lighter or darker colour.

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

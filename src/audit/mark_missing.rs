//! `mark-missing`: a gripping part without a mark, in a body that others go into as well.
//!
//! Why: where parts look alike the mark is what crews go by.
//!
//! To put it right: give it the mark that is proposed: the free colour that keeps the least difference
//! largest.

use super::Context;
use super::inspected::on_part;
use super::proposals::Proposals;
use crate::diagnostics::{Findings, Severity};
use crate::mixups::marks;
use std::cell::OnceCell;
use std::collections::BTreeSet;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let proposals = OnceCell::new();
    let marks = marks(context.catalogue);
    let mut told: BTreeSet<&str> = BTreeSet::new();
    for body in context.mixups.bodies.iter().filter(|body| body.gripping_parts.len() > 1) {
        for part in &body.gripping_parts {
            if marks.contains_key(part.number.as_str()) || !told.insert(&part.number) {
                continue;
            }
            let others = body.gripping_parts.len() - 1;
            let message =
                format!("it has no mark, and {others} other gripping parts go into {}", body.body.number);
            let message = if others == 1 {
                message.replace("1 other gripping parts go", "another gripping part goes")
            } else {
                message
            };
            let finding = on_part(Severity::Warning, "mark-missing", part, "mark", message);
            findings.push(finding.help(proposals.get_or_init(|| Proposals::of(context)).help(&part.number)));
        }
    }
}

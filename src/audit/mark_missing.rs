#![doc = include_str!("../explain/codes/mark-missing.md")]

use super::Context;
use super::inspected::on_part;
use super::proposals::Proposals;
use crate::catalogue::Part;
use crate::diagnostics::{Findings, Severity};
use crate::mixups::{alike_in_place, marks};
use std::cell::OnceCell;
use std::collections::BTreeSet;
use std::sync::Arc;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let proposals = OnceCell::new();
    let marks = marks(context.catalogue);
    let mut told: BTreeSet<&str> = BTreeSet::new();
    for body in context.mixups.bodies.iter().filter(|body| body.parts.len() > 1) {
        for part in &body.parts {
            if marks.contains_key(part.number.as_str()) || told.contains(part.number.as_str()) {
                continue;
            }
            let alike = |other: &&Arc<Part>| other.number != part.number && alike_in_place(other, part);
            let message = match body.parts.iter().filter(alike).count() {
                0 => continue,
                1 => format!("it has no mark, and another part goes into its place in {}", body.body.number),
                others => {
                    format!(
                        "it has no mark, and {others} other parts go into its place in {}",
                        body.body.number
                    )
                }
            };
            told.insert(&part.number);
            let finding = on_part(Severity::Warning, "mark-missing", part, "mark", message);
            findings.push(finding.help(proposals.get_or_init(|| Proposals::of(context)).help(&part.number)));
        }
    }
}

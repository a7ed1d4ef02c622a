#![doc = include_str!("../explain/codes/stamps-alike.md")]

use super::Context;
use super::inspected::on_part;
use crate::colour::reads_worn;
use crate::diagnostics::{Findings, Severity};
use std::collections::BTreeMap;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for body in &context.mixups.bodies {
        let mut first = BTreeMap::new();
        for part in body.parts.iter().filter(|part| !part.stamp.is_empty()) {
            let one = *first.entry(reads_worn(&part.stamp)).or_insert(part);
            if one.number != part.number {
                let (message, other) = if one.stamp == part.stamp {
                    (format!("{} has the same stamp", one.number), "the other stamp".to_owned())
                } else {
                    let message = format!("worn or dirty, it reads as the stamp of {} does", one.number);
                    (message, format!("the other stamp, {}", one.stamp))
                };
                let finding = on_part(Severity::Warning, "stamps-alike", part, "stamp", message)
                    .found(&*part.stamp)
                    .related(one.origin.of("stamp"), other);
                findings.push(finding.help("parts that differ must not be stamped alike"));
            }
        }
    }
}

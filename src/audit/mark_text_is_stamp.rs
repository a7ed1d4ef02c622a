#![doc = include_str!("../explain/codes/mark-text-is-stamp.md")]

use super::Context;
use super::inspected::on_part;
use crate::catalogue::Part;
use crate::colour::reads_as;
use crate::diagnostics::{Findings, Severity};
use std::collections::BTreeMap;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let mut stamped: BTreeMap<String, Vec<&Part>> = BTreeMap::new();
    for part in context.catalogue.parts.values().filter(|part| !part.stamp.is_empty()) {
        stamped.entry(reads_as(&part.stamp)).or_default().push(part);
    }
    for part in context.catalogue.parts.values() {
        let Some(mark) = part.mark.as_ref().filter(|mark| !mark.text.is_empty()) else { continue };
        let alike = stamped.get(&reads_as(&mark.text)).into_iter().flatten();
        let Some(other) = alike.copied().find(|other| other.number != part.number) else { continue };
        let message = format!("its text is the stamp of {}", other.number);
        let finding = on_part(Severity::Warning, "mark-text-is-stamp", part, "mark.text", message)
            .found(&*mark.text)
            .related(other.origin.of("stamp"), "the stamp");
        findings.push(finding.help("choose a text that is not stamped on any part"));
    }
}

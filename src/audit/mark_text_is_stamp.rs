//! `mark-text-is-stamp`: a mark whose text is stamped on another part.
//!
//! Why: whoever reads it can't tell a mark from a stamp, and takes one part for the other.
//!
//! To put it right: take a text that is stamped on nothing.

use super::Context;
use super::inspected::on_part;
use crate::colour::{Confusion, confusion};
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let stamped: Vec<_> = context.catalogue.parts.values().filter(|part| !part.stamp.is_empty()).collect();
    for part in context.catalogue.parts.values() {
        let Some(mark) = part.mark.as_ref().filter(|mark| !mark.text.is_empty()) else { continue };
        let same = |stamp: &str| confusion(&mark.text, stamp) == Some(Confusion::Same);
        let Some(other) = stamped.iter().find(|other| other.number != part.number && same(&other.stamp))
        else {
            continue;
        };
        let message = format!("its text is the stamp of {}", other.number);
        let finding = on_part(Severity::Warning, "mark-text-is-stamp", part, "mark.text", message)
            .found(&*mark.text)
            .related(other.origin.of("stamp"), "the stamp");
        findings.push(finding.help("take a text that is stamped on nothing"));
    }
}

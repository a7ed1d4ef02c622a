//! `mark-text-is-nominal-size`: a mark whose text is the nominal size of a conductor.
//!
//! Why: a mark tells parts of one body apart and says nothing of conductors; one that reads 95 is
//! taken for leave to put it on a 95.
//!
//! To put it right: take a text that means nothing.

use super::Context;
use super::mark_colour_reserved::{Marked, marked};
use crate::colour::{Confusion, confusion};
use crate::diagnostics::{Finding, Findings};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let sizes: Vec<(String, &str)> = context
        .catalogue
        .conductors
        .values()
        .filter_map(|wire| Some((wire.nominal_size?.mm2().to_string(), wire.id.as_str())))
        .collect();
    for Marked { record, origin, mark } in marked(context) {
        let same = |size: &str| confusion(&mark.text, size) == Some(Confusion::Same);
        let Some((_, wire)) = sizes.iter().find(|(size, _)| same(size)) else { continue };
        let message = format!("it reads like the nominal size of {wire}");
        let finding = Finding::warning("mark-text-is-nominal-size", origin.of("mark.text"), message)
            .record(record)
            .field("mark.text")
            .found(&*mark.text);
        findings.push(finding.help("take a text that means nothing"));
    }
}

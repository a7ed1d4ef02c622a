//! `mark-colour-forbidden`: a mark in green-and-yellow.
//!
//! Why: IEC 60757 and IEC 60445 keep GNYE for the protective conductor; nothing else may carry it.
//!
//! To put it right: take another colour.

use super::Context;
use super::mark_colour_reserved::{Marked, marked};
use crate::colour::ColourCode;
use crate::diagnostics::{Finding, Findings};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for Marked { record, origin, mark } in marked(context) {
        if mark.colour == ColourCode::GNYE {
            let message = "green-and-yellow is only for protective conductors";
            let finding = Finding::error("mark-colour-forbidden", origin.of("mark.colour"), message)
                .record(record)
                .field("mark.colour")
                .found("GNYE");
            findings.push(finding.help("use another colour"));
        }
    }
}

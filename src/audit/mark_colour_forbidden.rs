#![doc = include_str!("../explain/codes/mark-colour-forbidden.md")]

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

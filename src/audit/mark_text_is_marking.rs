#![doc = include_str!("../explain/codes/mark-text-is-marking.md")]

use super::Context;
use super::mark_colour_reserved::{Marked, marked};
use crate::colour::common_marking;
use crate::diagnostics::{Finding, Findings};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for Marked { record, origin, mark } in marked(context) {
        let Some(marking) = common_marking(&mark.text) else { continue };
        let message = format!("it reads like {}", marking.words());
        let finding = Finding::warning("mark-text-is-marking", origin.of("mark.text"), message)
            .record(record)
            .field("mark.text")
            .found(&*mark.text);
        findings.push(finding.help("take a text that means nothing"));
    }
}

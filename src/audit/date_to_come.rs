#![doc = include_str!("../explain/codes/date-to-come.md")]

use super::Context;
use super::inspected::on_part;
use crate::diagnostics::{Findings, Severity};

const HELP: &str = "compare it with the report, or bring `date` in catalogue.yaml up to date";

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let settings = &context.catalogue.settings;
    // What is worked out from editions and notices says nothing of tests.
    let Some(today) = settings.date.filter(|_| settings.origin.fields.contains_key("date")) else { return };
    for part in context.catalogue.parts.values() {
        for (nth, proof) in part.proven_on.iter().enumerate() {
            let Some(day) = proof.date.filter(|day| *day > today) else { continue };
            let message = format!("a test of {day} has not been made yet: the catalogue is of {today}");
            let field = format!("proven_on.{nth}.date");
            findings.push(on_part(Severity::Warning, "date-to-come", part, &field, message).help(HELP));
        }
    }
}

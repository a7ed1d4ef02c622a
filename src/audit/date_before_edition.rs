#![doc = include_str!("../explain/codes/date-before-edition.md")]

use super::Context;
use crate::diagnostics::{Finding, Findings};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let settings = &context.catalogue.settings;
    let (Some(date), Some(newest)) = (settings.stated_date(), context.catalogue.editions.last()) else {
        return;
    };
    if date >= newest.date {
        return;
    }
    let message =
        format!("the catalogue is of {date}; edition {} was issued on {}", newest.name, newest.date);
    let finding = Finding::warning("date-before-edition", settings.origin.of("date"), message).field("date");
    findings.push(finding.help("bring it up to date: what is due and overdue is told by it"));
}

#![doc = include_str!("../explain/codes/date-gone-by.md")]

use super::Context;
use super::inspected::on_fitting;
use crate::catalogue::InService;
use crate::diagnostics::{Finding, Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let Some(today) = context.catalogue.settings.date else { return };
    for fitting in context.catalogue.fittings.values() {
        let Some(InService::ReplaceBy(day)) = fitting.in_service else { continue };
        if day < today {
            let message = format!("those in the line were to be replaced by {day}");
            let finding = on_fitting(Severity::Warning, "date-gone-by", fitting, "in_service_date", message);
            findings.push(finding.help("see whether it was done; then take the date out, or set a new one"));
        }
    }
    for notice in context.catalogue.notices.values() {
        let Some(day) = notice.action_by.filter(|day| *day < today) else { continue };
        let message = format!("what it asks for was to be done by {day}");
        let finding = Finding::warning("date-gone-by", notice.origin.of("action_by"), message);
        findings.push(
            finding
                .record(&notice.number)
                .field("action_by")
                .help("see whether it was done; then take the date out, or set a new one"),
        );
    }
}

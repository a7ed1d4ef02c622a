#![doc = include_str!("../explain/codes/date-to-come.md")]

use super::Context;
use super::inspected::on_part;
use crate::catalogue::Holder;
use crate::diagnostics::{Finding, Findings, Severity};
use jiff::civil::Date;

const HELP: &str = "compare it with the report, or bring `date` in catalogue.yaml up to date";

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let Some(today) = context.catalogue.settings.stated_date() else { return };
    for holder in context.catalogue.holders.values() {
        receipts(holder, today, findings);
    }
    for notice in context.catalogue.notices.values().filter(|notice| notice.date > today) {
        let message =
            format!("a notice of {} has not been given yet: the catalogue is of {today}", notice.date);
        findings.push(
            Finding::warning("date-to-come", notice.origin.of("date"), message)
                .record(&notice.number)
                .field("date")
                .help("read the day again, or bring `date` in catalogue.yaml up to date"),
        );
    }
    for part in context.catalogue.parts.values() {
        for (nth, proof) in part.proven_on.iter().enumerate() {
            let Some(day) = proof.date.filter(|day| *day > today) else { continue };
            let message = format!(
                "a test of {day} has not been made yet and does not count: the catalogue is of {today}"
            );
            let field = format!("proven_on.{nth}.date");
            findings.push(on_part(Severity::Warning, "date-to-come", part, &field, message).help(HELP));
        }
    }
}

/// What came back on a day to come has not come back.
fn receipts(holder: &Holder, today: Date, findings: &mut Findings) {
    for (nth, receipt) in holder.receipts.iter().enumerate().filter(|(_, receipt)| receipt.date > today) {
        let (what, day) = (receipt.what.word(), receipt.date);
        let message = format!("{what} on {day} has not happened yet: the catalogue is of {today}");
        let field = format!("receipts.{nth}.date");
        findings.push(
            Finding::warning("date-to-come", holder.origin.of(&field), message)
                .record(&holder.id)
                .field(field)
                .help("read the day again, or bring `date` in catalogue.yaml up to date"),
        );
    }
}

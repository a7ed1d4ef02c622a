#![doc = include_str!("../explain/codes/not-yet-in-force.md")]

use super::Context;
use super::inspected::on_fitting;
use crate::catalogue::Status;
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let Some(today) = context.catalogue.settings.date else { return };
    for fitting in context.catalogue.fittings.values().filter(|fitting| fitting.status == Status::Current) {
        for (nth, notice) in fitting.notices.iter().enumerate() {
            let Some(day) = notice.effective.filter(|day| *day > today) else { continue };
            let message = format!("its card is valid only from {day}, as its notice {} says", notice.number);
            let field = format!("notices.{nth}");
            let finding = on_fitting(Severity::Note, "not-yet-in-force", fitting, &field, message);
            findings.push(
                finding
                    .help("hand the cards out on that day, not before")
                    .related(notice.origin.of("effective"), "from when the notice holds"),
            );
        }
    }
}

//! `not-yet-in-force`: a card prints what its notice brings, and the notice is not in force yet.
//!
//! Why: a crew that gets the card early does too early what it says. The card says from when it holds.
//!
//! To put it right: nothing, if cards are handed out on that day; else wait with the change.

use super::Context;
use super::inspected::on_fitting;
use crate::catalogue::Status;
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let Some(today) = context.catalogue.settings.date else { return };
    for fitting in context.catalogue.fittings.values().filter(|fitting| fitting.status == Status::Current) {
        for (nth, notice) in fitting.notices.iter().enumerate() {
            let Some(day) = notice.effective.filter(|day| *day > today) else { continue };
            let message = format!("its card holds from {day}, as its notice {} does", notice.number);
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

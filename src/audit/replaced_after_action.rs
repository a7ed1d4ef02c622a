#![doc = include_str!("../explain/codes/replaced-after-action.md")]

use super::Context;
use super::inspected::on_fitting;
use crate::catalogue::InService;
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        let Some(InService::ReplaceBy(day)) = fitting.in_service else { continue };
        for notice in &fitting.notices {
            let Some(action_by) = notice.action_by.filter(|action_by| *action_by < day) else { continue };
            let message = format!("{day} lies after the day of {}", notice.number);
            let field = "in_service_date";
            let finding = on_fitting(Severity::Warning, "replaced-after-action", fitting, field, message)
                .found(day.to_string())
                .expected(format!("{action_by} or before"))
                .related(notice.origin.of("action_by"), "what it asks for is to be done by then");
            findings.push(finding.help("compare both days with the notice"));
        }
    }
}

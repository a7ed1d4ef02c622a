#![doc = include_str!("../explain/codes/window-not-measured.md")]

use super::Context;
use super::inspected::on_fitting;
use crate::catalogue::StandOutFrom;
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        let Some(stated) = fitting.stand_out.as_ref().filter(|stated| stated.from == StandOutFrom::None)
        else {
            continue;
        };
        let stated = [
            ("stand_out.seated_mm", stated.seated.is_some()),
            ("stand_out.tensioned_mm", stated.tensioned.is_some()),
            ("stand_out.draw_in_max_mm", stated.draw_in_max.is_some()),
        ];
        if let Some((field, _)) = stated.into_iter().find(|(_, is_stated)| *is_stated) {
            let message =
                "`from: none` says that stand-out is not seen, and here is what it must be".to_owned();
            let finding = on_fitting(Severity::Error, "window-not-measured", fitting, field, message)
                .related(fitting.place_of("stand_out.from"), "where it is measured");
            findings.push(finding.help("say in `from` where it is measured, or delete its windows"));
        }
    }
}

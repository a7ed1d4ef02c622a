#![doc = include_str!("../explain/codes/stand-out-too-deep.md")]

use super::Context;
use super::inspected::{numerals, on_fitting};
use crate::catalogue::StandOutFrom;
use crate::diagnostics::{Findings, Severity};
use crate::facts::stated_window;
use crate::mixups::own;
use crate::units::Length;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for fitting in context.catalogue.fittings.values() {
        let Some(stated) = &fitting.stand_out else { continue };
        if !matches!(stated.from, StandOutFrom::ConeFace | StandOutFrom::WedgeEnd) {
            continue;
        }
        let windows = [("stand_out.seated_mm", stated.seated), ("stand_out.tensioned_mm", stated.tensioned)];
        for own in own(fitting, &context.catalogue.settings.limits) {
            let Some(deepest) = own.outcome.deepest else { continue };
            for (field, window) in windows {
                let Some(window) = window.filter(|window| window.least() < deepest - Length::from_mm(1e-9))
                else {
                    continue;
                };
                let message = format!("the window goes deeper than {} can", own.part.number);
                let finding = on_fitting(Severity::Error, "stand-out-too-deep", fitting, field, message)
                    .found(stated_window(fitting, field, window.map(Length::mm), "mm", numerals))
                    .expected(format!(
                        "at least {}\u{a0}mm: there the slits are shut, or the travel ends",
                        numerals.at_least(deepest.mm(), 2)
                    ))
                    .related(own.part.origin.of("geometry"), "the part's measurements");
                findings.push(finding.help("raise the `min` of the window, or correct the measurements"));
            }
        }
    }
}

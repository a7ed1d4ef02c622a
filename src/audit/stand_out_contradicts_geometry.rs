#![doc = include_str!("../explain/codes/stand-out-contradicts-geometry.md")]

use super::Context;
use super::inspected::{built, numerals, on_fitting};
use crate::catalogue::StandOutFrom;
use crate::diagnostics::{Findings, Severity};
use crate::mixups::own;
use crate::units::{Length, Range};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for fitting in built(context) {
        let of_the_part = |from| matches!(from, StandOutFrom::ConeFace | StandOutFrom::WedgeEnd);
        let Some(stated) = fitting.stand_out.as_ref().filter(|stated| of_the_part(stated.from)) else {
            continue;
        };
        let Some(window) = stated.seated else { continue };
        for own in own(fitting, &context.catalogue.settings.limits) {
            let (Some(at), Some(interval)) = (own.outcome.stand_out, own.outcome.stand_out_interval) else {
                continue;
            };
            let (severity, what) = if !inside(at, window) {
                (Severity::Error, "lies outside the window")
            } else if !inside(interval.least(), window) || !inside(interval.most(), window) {
                (Severity::Warning, "can lie outside the window, within its tolerances")
            } else {
                continue;
            };
            let message = format!("the right stand-out of {} {what}", own.part.number);
            let finding = on_fitting(
                severity,
                "stand-out-contradicts-geometry",
                fitting,
                "stand_out.seated_mm",
                message,
            )
            .found(numerals.range(window.map(Length::mm), 1, "mm"))
            .expected(format!(
                "{} computed, {} with tolerances",
                numerals.length(at, 1),
                numerals.range(interval.map(Length::mm), 1, "mm")
            ))
            .related(own.part.origin.of("geometry"), "the part's measurements");
            findings.push(finding.help("check the window and the measurements of part and conductor"));
        }
    }
}

fn inside(length: Length, window: Range<Length>) -> bool {
    window.widened(Length::from_mm(1e-9)).contains(length)
}

#![doc = include_str!("../explain/codes/spanner-implausible.md")]

use super::Context;
use super::inspected::{numerals, on_fitting};
use crate::diagnostics::{Findings, Severity};
use crate::grip::Thread;

/// A spanner in diameters of its thread: from keys of socket screws to nuts of small bolts. ISO 272, from memory.
const DIAMETERS: std::ops::RangeInclusive<f64> = 0.5..=2.2;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        for (nth, tightening) in fitting.tightening.iter().enumerate() {
            let (Some(spanner), Some(thread)) = (tightening.spanner, Thread::of(&tightening.thread)) else {
                continue;
            };
            if DIAMETERS.contains(&(spanner / thread.diameter)) {
                continue;
            }
            let field = format!("tightening.{nth}.spanner_mm");
            let message = format!("no spanner of this size fits {}", tightening.thread.trim());
            let (least, most) = (thread.diameter * *DIAMETERS.start(), thread.diameter * *DIAMETERS.end());
            let finding = on_fitting(Severity::Warning, "spanner-implausible", fitting, &field, message)
                .found(numerals(context).length(spanner, 1))
                .expected(format!(
                    "from {} to {}",
                    numerals(context).length(least, 0),
                    numerals(context).length(most, 0)
                ));
            findings.push(finding.help("compare spanner and thread with the drawing"));
        }
    }
}

#![doc = include_str!("../explain/codes/torque-window-wide.md")]

use super::Context;
use super::inspected::{numerals, on_fitting};
use crate::diagnostics::{Findings, Severity};
use crate::units::Torque;

/// The most that the upper end of a window may be of the lower: ring spanners are set within a tenth. Common practice,
/// no source.
const WIDEST: f64 = 1.5;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        for (nth, tightening) in fitting.tightening.iter().enumerate() {
            let Some(window) = tightening.torque.map(|torque| torque.map(Torque::nm)) else { continue };
            if window.most() <= WIDEST * window.least() {
                continue;
            }
            let field = format!("tightening.{nth}.torque_Nm");
            let message = "least and most torque lie far apart".to_owned();
            let finding = on_fitting(Severity::Warning, "torque-window-wide", fitting, &field, message)
                .found(numerals(context).range(window, 1, "N·m"))
                .expected(format!("a most of at most {WIDEST} times the least"));
            findings.push(finding.help("compare both with the specification: a digit may be lost or added"));
        }
    }
}

#![doc = include_str!("../explain/codes/torque-implausible.md")]

use super::Context;
use super::inspected::{numerals, on_fitting};
use crate::catalogue::Tightening;
use crate::diagnostics::{Findings, Severity};
use crate::grip::{NUT_FACTOR, Thread, nut_factor};
use crate::units::Range;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        for (nth, tightening) in fitting.tightening.iter().enumerate() {
            let Some(factors) = factors(tightening) else { continue };
            if NUT_FACTOR.contains(&factors.least()) && NUT_FACTOR.contains(&factors.most()) {
                continue;
            }
            let message = format!("the torque on {} does not give the stated preload", tightening.thread);
            let field = format!("tightening.{nth}.torque_Nm");
            let finding = on_fitting(Severity::Warning, "torque-implausible", fitting, &field, message)
                .found(format!("a nut factor of {}", numerals(context).range(factors, 2, "").trim_end()))
                .expected(format!("{} to {}", NUT_FACTOR.start(), NUT_FACTOR.end()));
            findings.push(finding.help("check torque, preload and thread"));
        }
    }
}

fn factors(tightening: &Tightening) -> Option<Range<f64>> {
    let diameter = Thread::of(&tightening.thread)?.diameter;
    let (torque, preload) = (tightening.torque?, tightening.preload?);
    Some(torque.map(|torque| nut_factor(torque, preload, diameter)))
}

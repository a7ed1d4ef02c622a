#![doc = include_str!("../explain/codes/torque-above-bolt-strength.md")]

use super::Context;
use super::inspected::{numerals, on_fitting};
use crate::diagnostics::{Findings, Severity};
use crate::grip::Thread;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for fitting in context.catalogue.fittings.values() {
        for (nth, tightening) in fitting.tightening.iter().enumerate() {
            let (Some(torque), Some(thread)) = (tightening.torque, Thread::of(&tightening.thread)) else {
                continue;
            };
            let yields = thread.yields_at();
            if torque.most() < yields {
                continue;
            }
            let message = format!("a bolt {} of class 12.9 yields at this torque", tightening.thread.trim());
            let field = format!("tightening.{nth}.torque_Nm");
            let finding = on_fitting(Severity::Error, "torque-above-bolt-strength", fitting, &field, message)
                .found(fitting.with_unit(&format!("{field}.max"), torque.most().nm(), "N·m", numerals))
                .expected(format!(
                    "under {} N·m (ISO 898-1, nut factor 0.20)",
                    numerals.at_most(yields.nm(), 1)
                ));
            findings.push(finding.help("check torque, unit and thread"));
        }
    }
}

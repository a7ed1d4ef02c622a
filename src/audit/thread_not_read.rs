#![doc = include_str!("../explain/codes/thread-not-read.md")]

use super::Context;
use super::inspected::on_fitting;
use crate::diagnostics::{Findings, Severity};
use crate::grip::Thread;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        for (nth, tightening) in fitting.tightening.iter().enumerate() {
            let thread = tightening.thread.trim();
            if tightening.torque.is_none() || thread.is_empty() || Thread::of(thread).is_some() {
                continue;
            }
            let message = "the torque is not checked: this is not read as a metric thread".to_owned();
            let field = format!("tightening.{nth}.thread");
            let finding = on_fitting(Severity::Note, "thread-not-read", fitting, &field, message)
                .found(thread)
                .expected("such as M12, M36x2, M12 left, M12-8.8");
            findings.push(finding.help("check the torque of another thread by hand"));
        }
    }
}

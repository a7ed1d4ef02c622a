#![doc = include_str!("../explain/codes/stand-out-grows-under-tension.md")]

use super::Context;
use super::inspected::on_fitting;
use crate::diagnostics::{Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        let Some(stated) = &fitting.stand_out else { continue };
        let (Some(seated), Some(tensioned)) = (stated.seated, stated.tensioned) else { continue };
        if tensioned.most() <= seated.most() {
            continue;
        }
        let message = "it stands out further under tension than after seating".to_owned();
        let code = "stand-out-grows-under-tension";
        let finding = on_fitting(Severity::Warning, code, fitting, "stand_out.tensioned_mm", message)
            .related(fitting.origin.of("stand_out.seated_mm"), "the seated window");
        findings.push(finding.help("check both windows"));
    }
}

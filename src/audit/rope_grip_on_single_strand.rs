#![doc = include_str!("../explain/codes/rope-grip-on-single-strand.md")]

use super::Context;
use super::inspected::{built, on_fitting};
use crate::catalogue::Role;
use crate::diagnostics::{Findings, Severity};
use crate::grip::HeldConstruction;
use crate::mixups::held;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in built(context) {
        let Some(grip) = fitting.gripping().find(|item| item.part.role == Role::RopeGrip) else { continue };
        for wire in
            fitting.conductors.iter().filter(|wire| held(wire).construction != HeldConstruction::StrandedRope)
        {
            let message = format!(
                "{} is for ropes of several strands, and {} is not such a rope",
                grip.part.number, wire.id
            );
            let finding =
                on_fitting(Severity::Error, "rope-grip-on-single-strand", fitting, "parts", message)
                    .related(wire.origin.of("construction"), "the conductor");
            findings.push(finding.help("end it with a cone, a wedge or a pressed ferrule"));
        }
    }
}

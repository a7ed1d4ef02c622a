#![doc = include_str!("../explain/codes/wires-through-hole-differ.md")]

use super::Context;
use super::inspected::{built, on_part};
use crate::diagnostics::{Findings, Severity};
use crate::grip::Geometry;
use crate::mixups::own;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in built(context) {
        for own in own(fitting, &context.catalogue.settings.limits) {
            let Some(Geometry::SpreadingCone(cone)) = &own.part.geometry else { continue };
            let (Some(stated), Some(found)) = (cone.wires_through_hole, own.outcome.wires_through_hole)
            else {
                continue;
            };
            if stated == found {
                continue;
            }
            let message = format!("{found} wires of {} go through its hole", own.conductor.id);
            let field = "geometry.spreading_cone.wires_through_hole";
            let finding = on_part(Severity::Warning, "wires-through-hole-differ", &own.part, field, message)
                .found(stated.to_string())
                .expected(found.to_string())
                .related(own.conductor.origin.of("construction"), "the conductor");
            findings.push(finding.help("check the hole and the conductor's layers"));
        }
    }
}

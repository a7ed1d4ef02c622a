#![doc = include_str!("../explain/codes/cone-thinner-than-hole.md")]

use super::Context;
use super::inspected::{numerals, on_part};
use crate::diagnostics::{Findings, Severity};
use crate::grip::{Geometry, SpreadingCone, small_end_diameter};
use crate::units::Length;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for part in context.catalogue.parts.values() {
        let Some(Geometry::SpreadingCone(cone)) = &part.geometry else { continue };
        let Some((end, hole)) = thin_end(cone) else { continue };
        let numerals = numerals(context);
        let message = format!(
            "the small end of {} is thinner than the hole of {}",
            numerals.length(end, 2),
            numerals.length(hole, 2)
        );
        let field = "geometry.spreading_cone.hole_diameter_mm";
        let finding = on_part(Severity::Warning, "cone-thinner-than-hole", part, field, message);
        findings.push(finding.help("check large end, half-angle, length and hole against the drawing"));
    }
}

fn thin_end(cone: &SpreadingCone) -> Option<(Length, Length)> {
    let end = small_end_diameter(cone.large_diameter?, cone.half_angle?, cone.length?);
    let hole = cone.hole_diameter?;
    (end <= hole).then_some((end, hole))
}

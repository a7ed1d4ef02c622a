#![doc = include_str!("../explain/codes/taper-not-self-holding.md")]

use super::Context;
use super::inspected::{numerals, on_part};
use crate::catalogue::Part;
use crate::diagnostics::{Findings, Severity};
use crate::grip::{Friction, Geometry};
use crate::units::Angle;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let limits = &context.catalogue.settings.limits;
    let friction = Friction { wire: limits.wire_friction, seat: limits.seat_friction };
    for part in context.catalogue.parts.values() {
        let Some((key, taper)) = taper(part).filter(|(_, taper)| !friction.draws_in(*taper)) else {
            continue;
        };
        let numerals = numerals(context);
        let message = "its taper is so steep that line tension does not draw it in".to_owned();
        let steepest = friction.steepest_taper().degrees();
        let expected = if steepest > 0.0 {
            format!("at most {}°", numerals.at_most(steepest, 2))
        } else {
            "with this friction, no taper would be drawn in".to_owned()
        };
        let finding = on_part(Severity::Warning, "taper-not-self-holding", part, key, message)
            .found(format!("{}°", numerals.shortest(taper.degrees(), 2)))
            .expected(expected);
        findings.push(
            finding.help(
                "choose a smaller taper, the same in part and seat, or correct the friction in `limits`",
            ),
        );
    }
}

fn taper(part: &Part) -> Option<(&'static str, Angle)> {
    match part.geometry.as_ref()? {
        Geometry::Collet(cone) => Some(("geometry.collet.half_angle_deg", cone.half_angle?)),
        Geometry::SpreadingCone(cone) => Some(("geometry.spreading_cone.half_angle_deg", cone.half_angle?)),
        Geometry::Wedge(wedge) => Some(("geometry.wedge.taper_deg", wedge.taper?)),
        _ => None,
    }
}

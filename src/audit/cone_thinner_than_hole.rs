#![doc = include_str!("../explain/codes/cone-thinner-than-hole.md")]

use super::Context;
use super::inspected::{numerals, on_part};
use crate::catalogue::Part;
use crate::diagnostics::{Finding, Findings, Severity};
use crate::grip::{Body, Collet, Geometry, SpreadingCone, small_end_diameter};
use crate::units::{Length, Numerals};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for part in context.catalogue.parts.values() {
        let Some(Geometry::SpreadingCone(cone)) = &part.geometry else { continue };
        let field = "geometry.spreading_cone.hole_diameter_mm";
        if let Some(finding) =
            Walls::of_spreading_cone(cone).and_then(|walls| walls.finding(part, field, numerals))
        {
            findings.push(finding.help("check large end, half-angle, length and hole against the drawing"));
        }
    }
    for found in &context.mixups.bodies {
        let Some(Geometry::Body(body)) = &found.body.geometry else { continue };
        for part in &found.parts {
            let Some(Geometry::Collet(cone)) = &part.geometry else { continue };
            let walls = Walls::of_collet(cone, body);
            let Some(finding) =
                walls.and_then(|walls| walls.finding(part, "geometry.collet.bore_mm", numerals))
            else {
                continue;
            };
            findings.push(
                finding
                    .related(
                        found.body.origin.of("geometry"),
                        "the body, whose large end the cone has where it sits",
                    )
                    .help(
                        "check bore, length and stand-out of the cone, large end and half-angle of the body",
                    ),
            );
        }
    }
}

/// A cone's two ends and the hole through it.
struct Walls {
    large: Length,
    small: Length,
    hole: Length,
}

impl Walls {
    fn of_spreading_cone(cone: &SpreadingCone) -> Option<Self> {
        let large = cone.large_diameter?;
        let small = small_end_diameter(large, cone.half_angle?, cone.length?);
        Some(Self { large, small, hole: cone.hole_diameter? })
    }

    /// A collet is as wide as its body's large end where it leaves it, on a conductor as thick as its bore.
    fn of_collet(cone: &Collet, body: &Body) -> Option<Self> {
        let (at_face, half_angle, out) = (body.large_diameter?, body.half_angle?, cone.stand_out_at_bore?);
        let large = small_end_diameter(at_face, half_angle, -out);
        Some(Self { large, small: small_end_diameter(large, half_angle, cone.length?), hole: cone.bore? })
    }

    /// An error where no wall is left anywhere, since such a part can't be drawn.
    fn finding(&self, part: &Part, field: &str, numerals: Numerals) -> Option<Finding> {
        let (severity, which, end) = if self.large <= self.hole {
            (Severity::Error, "large", self.large)
        } else if self.small <= self.hole {
            (Severity::Warning, "small", self.small)
        } else {
            return None;
        };
        let message = format!(
            "the {which} end of {} is thinner than the hole of {}",
            numerals.length(end, 2),
            numerals.length(self.hole, 2)
        );
        Some(on_part(severity, "cone-thinner-than-hole", part, field, message))
    }
}

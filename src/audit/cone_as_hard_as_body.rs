#![doc = include_str!("../explain/codes/cone-as-hard-as-body.md")]

use super::Context;
use super::inspected::{built, on_part};
use crate::catalogue::{Fitting, Part, Role};
use crate::diagnostics::{Findings, Severity};
use crate::grip::Geometry;
use std::sync::Arc;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in built(context) {
        let cones = fitting.gripping().map(|item| &item.part).filter(|part| part.role == Role::Cone);
        for cone in cones {
            let Some(seat) = seat(fitting, cone) else { continue };
            let (Some(cone_hb), Some(seat_hb)) = (cone.material.hardness_hb, seat.material.hardness_hb)
            else {
                continue;
            };
            if cone_hb >= seat_hb {
                let message = format!("the cone ({cone_hb} HB) is as hard as {} ({seat_hb} HB)", seat.number);
                let finding = on_part(Severity::Warning, "cone-as-hard-as-body", cone, "material", message);
                findings.push(
                    finding
                        .help("a cone must be softer than its seat: check both materials")
                        .related(seat.origin.of("material"), "the seat's material"),
                );
            }
        }
    }
}

/// What the cone is drawn into: a socket for a spreading cone, else the body.
fn seat<'a>(fitting: &'a Fitting, cone: &Part) -> Option<&'a Arc<Part>> {
    let role = match cone.geometry {
        Some(Geometry::SpreadingCone(_)) => Role::Socket,
        _ => Role::Body,
    };
    fitting.items.iter().map(|item| &item.part).find(|part| part.role == role)
}

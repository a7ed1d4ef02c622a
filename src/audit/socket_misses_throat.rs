#![doc = include_str!("../explain/codes/socket-misses-throat.md")]

use super::Context;
use super::inspected::{numerals, on_part};
use crate::diagnostics::{Findings, Severity};
use crate::grip::{Geometry, Socket, small_end_diameter};
use crate::units::Length;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let tolerance = context.catalogue.settings.limits.diameter_tolerance;
    let numerals = numerals(context);
    for part in context.catalogue.parts.values() {
        let Some(Geometry::Socket(socket)) = &part.geometry else { continue };
        let Some((end, throat)) = ends(socket) else { continue };
        if (end - throat).abs() <= tolerance + Length::from_mm(1e-9) {
            continue;
        }
        let how = if end > throat { "wider" } else { "narrower" };
        let message = format!(
            "its taper ends at {}, {how} than the throat of {}",
            numerals.length(end, 2),
            numerals.length(throat, 2)
        );
        let field = "geometry.socket.throat_diameter_mm";
        let finding = on_part(Severity::Warning, "socket-misses-throat", part, field, message);
        findings.push(finding.help("check large end, half-angle, length and throat against the drawing"));
    }
}

fn ends(socket: &Socket) -> Option<(Length, Length)> {
    let end = small_end_diameter(socket.large_diameter?, socket.half_angle?, socket.length?);
    Some((end, socket.throat_diameter?))
}

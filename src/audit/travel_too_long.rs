#![doc = include_str!("../explain/codes/travel-too-long.md")]

use super::Context;
use super::inspected::{numerals, on_part};
use crate::diagnostics::{Findings, Severity};
use crate::grip::Geometry;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for part in context.catalogue.parts.values() {
        let (field, travel, length) = match &part.geometry {
            Some(Geometry::Socket(socket)) => ("geometry.socket.travel_mm", socket.travel, socket.length),
            Some(Geometry::WedgeBody(body)) => ("geometry.wedge_body.travel_mm", body.travel, body.length),
            _ => continue,
        };
        let (Some(travel), Some(length)) = (travel, length) else { continue };
        if travel < length {
            continue;
        }
        let message = "the travel is as long as the seat, or longer".to_owned();
        let finding = on_part(Severity::Warning, "travel-too-long", part, field, message)
            .found(numerals.length(travel, 1))
            .expected(format!("less than its length of {}", numerals.length(length, 1)));
        findings.push(finding.help("compare travel and length with the drawing"));
    }
}

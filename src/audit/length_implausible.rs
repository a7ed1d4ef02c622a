#![doc = include_str!("../explain/codes/length-implausible.md")]

use super::Context;
use super::inspected::{built, grip_length, numerals, on_part};
use crate::catalogue::Part;
use crate::diagnostics::{Findings, Severity};
use crate::grip::Geometry;
use crate::units::Length;
use std::collections::BTreeMap;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    let mut thickest: BTreeMap<&str, (&Part, Length)> = BTreeMap::new();
    for fitting in built(context) {
        let widths = fitting.conductors.iter().map(|held| held.section.overall_diameter);
        let Some(width) = widths.reduce(Length::max) else { continue };
        for item in fitting.gripping() {
            let known = thickest.entry(&item.part.number).or_insert((&*item.part, width));
            known.1 = known.1.max(width);
        }
    }
    for (part, width) in thickest.into_values() {
        let Some((field, length)) = stated(part) else { continue };
        if length >= width {
            continue;
        }
        let message = "it is shorter than its conductor is thick, and grips next to nothing".to_owned();
        let finding = on_part(Severity::Warning, "length-implausible", part, field, message)
            .found(numerals.length(length, 1))
            .expected(format!("{} at least, mostly several times that", numerals.length(width, 1)));
        findings.push(finding.help("compare it with the drawing: a figure or the point may be wrong"));
    }
}

/// How long a part grips, and the field that states it.
fn stated(part: &Part) -> Option<(&'static str, Length)> {
    let field = match part.geometry.as_ref()? {
        Geometry::Collet(_) => "geometry.collet.length_mm",
        Geometry::SpreadingCone(_) => "geometry.spreading_cone.length_mm",
        Geometry::Wedge(_) => "geometry.wedge.length_mm",
        _ => return None,
    };
    Some((field, grip_length(part)?))
}

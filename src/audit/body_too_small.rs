#![doc = include_str!("../explain/codes/body-too-small.md")]

use super::Context;
use super::inspected::{built, grip_length, numerals, on_part};
use crate::catalogue::{Conductor, Fitting, Part};
use crate::diagnostics::{Finding, Findings, Severity};
use crate::grip::{Geometry, small_end_diameter};
use crate::units::{Length, Numerals};
use std::collections::BTreeMap;

/// So much of a gripping part its body holds at least. Common practice, no source.
const HELD: f64 = 0.5;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    let mut taking: BTreeMap<&str, (&Part, Vec<&Fitting>)> = BTreeMap::new();
    for fitting in built(context) {
        for body in fitting.bodies() {
            taking.entry(&body.part.number).or_insert((&body.part, Vec::new())).1.push(fitting);
        }
    }
    for (body, fittings) in taking.values() {
        findings.extend(too_short(body, fittings, numerals));
        findings.extend(too_narrow(body, fittings, numerals));
    }
}

/// By the longest of its gripping parts.
fn too_short(body: &Part, fittings: &[&Fitting], numerals: Numerals) -> Option<Finding> {
    let (length, field) = match body.geometry.as_ref()? {
        Geometry::Body(body) => (body.length?, "geometry.body.length_mm"),
        Geometry::WedgeBody(body) => (body.length?, "geometry.wedge_body.length_mm"),
        _ => return None,
    };
    let gripping = fittings.iter().flat_map(|fitting| fitting.gripping()).map(|item| item.part.as_ref());
    let lengths = gripping.filter_map(|part| Some((part, grip_length(part)?)));
    let (part, longest) = lengths.max_by(|one, two| one.1.mm().total_cmp(&two.1.mm()))?;
    let asked = longest * HELD;
    if length >= asked {
        return None;
    }
    let message = format!("it is shorter than half of {}, which sits in it", part.number);
    let finding = on_part(Severity::Warning, "body-too-small", body, field, message)
        .found(numerals.length(length, 1))
        .expected(format!("at least {}\u{a0}mm", numerals.at_least(asked.mm(), 1)))
        .related(part.origin.of("geometry"), "the gripping part");
    Some(finding.help("check the lengths of both against their drawings"))
}

/// By the thickest of its conductors.
fn too_narrow(body: &Part, fittings: &[&Fitting], numerals: Numerals) -> Option<Finding> {
    let Some(Geometry::Body(seat)) = &body.geometry else { return None };
    let end = small_end_diameter(seat.large_diameter?, seat.half_angle?, seat.length?);
    let conductors = fittings.iter().flat_map(|fitting| &fitting.conductors);
    let diameter = |conductor: &Conductor| conductor.section.overall_diameter;
    let thickest = conductors.max_by(|one, two| diameter(one).mm().total_cmp(&diameter(two).mm()))?;
    if end > diameter(thickest) {
        return None;
    }
    let message = format!("its taper ends narrower than {}, which goes through it", thickest.id);
    let found = if end > Length::ZERO { numerals.length(end, 1) } else { "no opening at all".to_owned() };
    let finding = on_part(Severity::Warning, "body-too-small", body, "geometry.body.length_mm", message)
        .found(found)
        .expected(format!("more than {}", numerals.length(diameter(thickest), 1)))
        .related(thickest.origin.of("construction"), "the conductor");
    Some(finding.help("check large end, half-angle and length of the body against its drawing"))
}

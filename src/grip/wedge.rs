//! A wedge that lies beside the conductor in a tapered body.

use super::compare::{more, tapers_differ};
use super::depth::{Depth, Travel};
use super::outcome::missing;
use super::{BearsOn, HeldConductor, HeldConstruction, Outcome, Verdict, Wedge, WedgeBody};
use crate::units::Length;

/// What a wedge does on a conductor in its body.
///
/// One flank tapers at α, the wire lies along the straight wall: z = (mouth − thickness − t)/tan α, t
/// the overall diameter, or a grooved wire's width or height as `bears_on` says; ± Δz = their stated
/// tolerances / tan α. In this order: tip contact if the tapers differ by more than 0.25°; will not
/// enter if even the deepest end stands out by more than the wedge's length with its tolerance; closes
/// without gripping if z − Δz > travel; stands proud if z + Δz < 0; marginal if z − Δz < 0 or
/// z + Δz > travel, each with the travel's tolerance; else grips.
/// Stand-out of the wedge's end = −min(z, travel). First principles.
///
/// ```
/// use fittingcards::grip::{HeldConductor, Verdict, Wedge, WedgeBody, wedge};
/// use fittingcards::units::{Angle, Length};
/// let mm = Length::from_mm;
/// let six = Some(Angle::from_degrees(6.0));
/// let part = Wedge { thickness: Some(mm(14.0)), taper: six, length: Some(mm(80.0)), ..Wedge::default() };
/// let body = WedgeBody { mouth: Some(mm(27.0)), taper: six, travel: Some(mm(12.0)), ..Default::default() };
/// let outcome = wedge(&part, Some(&body), &HeldConductor::solid(mm(12.0)));
/// assert_eq!(outcome.verdict, Verdict::Grips);
/// assert!((outcome.depth.unwrap().mm() - 9.514).abs() < 0.001);
/// ```
#[must_use]
pub fn wedge(wedge: &Wedge, body: Option<&WedgeBody>, held: &HeldConductor) -> Outcome {
    let nothing = WedgeBody::default();
    let body = body.unwrap_or(&nothing);
    let depth = depth(wedge, body, held);
    let travel = Travel::of(body.travel, body.travel_tolerance);
    let ruled = rule(wedge, body, held, depth, travel);
    if ruled.verdict == Verdict::WillNotEnter {
        return Outcome { depth: depth.map(|depth| depth.stated), ..ruled };
    }
    ruled.with_lengths_of(Depth::lengths(depth, travel))
}

/// What of the conductor lies across the wedge; `None` for a grooved wire where no side is stated, and for a bar, which may
/// lie flat or on edge.
#[must_use]
pub fn bearing_size(held: &HeldConductor, bears_on: Option<BearsOn>) -> Option<Length> {
    match held.construction {
        HeldConstruction::Grooved { height, width } => bears_on.map(|side| match side {
            BearsOn::Width => width,
            BearsOn::Height => height,
        }),
        HeldConstruction::Bar => None,
        _ => Some(held.overall_diameter),
    }
}

fn depth(wedge: &Wedge, body: &WedgeBody, held: &HeldConductor) -> Option<Depth> {
    let gap = body.mouth? - wedge.thickness? - bearing_size(held, body.bears_on)?;
    let parts = body.mouth_tolerance.unwrap_or_default() + wedge.thickness_tolerance.unwrap_or_default();
    // Where one of the tapers is not known, nor is how they lie on each other.
    body.taper?;
    let slope = wedge.taper?.tan();
    Some(Depth { stated: gap / slope, tolerance: (parts + held.diameter_tolerance) / slope, slope })
}

fn rule(
    wedge: &Wedge,
    body: &WedgeBody,
    held: &HeldConductor,
    depth: Option<Depth>,
    travel: Option<Travel>,
) -> Outcome {
    let (Some(wedge_taper), Some(body_taper)) = (wedge.taper, body.taper) else {
        return Outcome::unknown(missing(&[
            (wedge.taper.is_some(), "geometry.wedge.taper_deg"),
            (body.taper.is_some(), "geometry.wedge_body.taper_deg"),
        ]));
    };
    if tapers_differ(wedge_taper, body_taper) {
        return Outcome::of(Verdict::TipContact);
    }
    let is_grooved = matches!(held.construction, HeldConstruction::Grooved { .. });
    let (Some(depth), Some(length)) = (depth, wedge.length) else {
        return Outcome::unknown(missing(&[
            (wedge.thickness.is_some(), "geometry.wedge.thickness_mm"),
            (wedge.length.is_some(), "geometry.wedge.length_mm"),
            (body.mouth.is_some(), "geometry.wedge_body.mouth_mm"),
            (!is_grooved || body.bears_on.is_some(), "geometry.wedge_body.bears_on"),
        ]));
    };
    // Only what can't go in within any of the tolerances is harmless.
    if more(-depth.most(), length + wedge.length_tolerance.unwrap_or_default()) {
        return Outcome::of(Verdict::WillNotEnter);
    }
    match travel {
        Some(travel) => Outcome::of(depth.verdict(travel)),
        None => Outcome::unknown(vec!["geometry.wedge_body.travel_mm"]),
    }
}

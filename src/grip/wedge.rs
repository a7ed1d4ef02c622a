//! A wedge that lies beside the conductor in a tapered body.

use super::compare::{less, more, tapers_differ};
use super::outcome::missing;
use super::{BearsOn, HeldConductor, Make, Outcome, Verdict, Wedge, WedgeBody};
use crate::units::{Length, Range};

/// What a wedge does on a conductor in its body.
///
/// One flank tapers at α, the wire lies along the straight wall: z = (mouth − thickness − t)/tan α, t
/// the overall diameter, or a grooved wire's width or height as `bears_on` says. In this order: tip
/// contact if the tapers differ by more than 0.25°; will not enter if −z exceeds the wedge's length;
/// closes without gripping if z > travel; stands proud if z < 0; else grips. Stand-out =
/// −min(z, travel), over the conductor's tolerance. First principles.
///
/// ```
/// use fittingcards::grip::{HeldConductor, Verdict, Wedge, WedgeBody, wedge};
/// use fittingcards::units::{Angle, Length};
/// let mm = Length::from_mm;
/// let six = Some(Angle::from_degrees(6.0));
/// let part = Wedge { thickness: Some(mm(14.0)), taper: six, length: Some(mm(80.0)) };
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
    let ruled = rule(wedge, body, held, depth);
    if ruled.verdict == Verdict::WillNotEnter {
        return Outcome { depth, ..ruled };
    }
    ruled.with_lengths_of(lengths(wedge, body, held, depth))
}

/// What of the conductor lies across the wedge; `None` for a grooved wire where no side is stated.
#[must_use]
pub fn bearing_size(held: &HeldConductor, bears_on: Option<BearsOn>) -> Option<Length> {
    match held.make {
        Make::Grooved { height, width } => bears_on.map(|side| match side {
            BearsOn::Width => width,
            BearsOn::Height => height,
        }),
        _ => Some(held.overall_diameter),
    }
}

fn depth(wedge: &Wedge, body: &WedgeBody, held: &HeldConductor) -> Option<Length> {
    let gap = body.mouth? - wedge.thickness? - bearing_size(held, body.bears_on)?;
    Some(gap / wedge.taper?.tan())
}

fn rule(wedge: &Wedge, body: &WedgeBody, held: &HeldConductor, depth: Option<Length>) -> Outcome {
    let (Some(wedge_taper), Some(body_taper)) = (wedge.taper, body.taper) else {
        return Outcome::unknown(missing(&[
            (wedge.taper.is_some(), "geometry.wedge.taper_deg"),
            (body.taper.is_some(), "geometry.wedge_body.taper_deg"),
        ]));
    };
    if tapers_differ(wedge_taper, body_taper) {
        return Outcome::of(Verdict::TipContact);
    }
    let (Some(depth), Some(length)) = (depth, wedge.length) else {
        return Outcome::unknown(missing(&[
            (wedge.thickness.is_some(), "geometry.wedge.thickness_mm"),
            (wedge.length.is_some(), "geometry.wedge.length_mm"),
            (body.mouth.is_some(), "geometry.wedge_body.mouth_mm"),
            (bearing_size(held, body.bears_on).is_some(), "geometry.wedge_body.bears_on"),
        ]));
    };
    if more(-depth, length) {
        return Outcome::of(Verdict::WillNotEnter);
    }
    let Some(travel) = body.travel else {
        return Outcome::unknown(vec!["geometry.wedge_body.travel_mm"]);
    };
    Outcome::of(if more(depth, travel) {
        Verdict::ClosesWithoutGripping
    } else if less(depth, Length::ZERO) {
        Verdict::StandsProud
    } else {
        Verdict::Grips
    })
}

fn lengths(wedge: &Wedge, body: &WedgeBody, held: &HeldConductor, depth: Option<Length>) -> Outcome {
    let none = Outcome { depth, ..Outcome::of(Verdict::Unknown) };
    let (Some(depth), Some(travel), Some(taper)) = (depth, body.travel, wedge.taper) else { return none };
    let at = |depth: Length| -depth.min(travel);
    let give = held.diameter_tolerance / taper.tan();
    Outcome {
        stand_out: Some(at(depth)),
        stand_out_interval: Some(Range::between(at(depth + give), at(depth - give))),
        ..none
    }
}

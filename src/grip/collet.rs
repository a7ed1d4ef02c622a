//! A gripping cone split lengthwise that closes round the conductor.

use super::closure::Closure;
use super::compare::{less, more, tapers_differ};
use super::outcome::missing;
use super::{Body, Collet, GripLimits, HeldConductor, Outcome, Verdict};
use crate::units::{Length, Range};

/// Part of the conductor's diameter that a cone without slits can be forced over: half a percent.
const FORCED: f64 = 0.005;

/// What a collet does on a conductor.
///
/// Clearance c = bore − overall diameter; closure Δ = slits × slit width / π; tolerance t = bore's +
/// conductor's. In this order: a cone of one piece will not enter if c + t < −Δ, without slits if
/// c + t < −0.005·D, and is unknown there where its slits are not stated; tip contact if the
/// half-angles of body and cone are known and differ by more than 0.25°; stands proud if c + t < 0,
/// forced where it is one piece; closes without gripping if c − t > Δ; grips if c − t ≥ 0 and
/// c + t ≤ Δ − reserve; else marginal. A tolerance of the slits moves Δ to the side that is less sure.
/// Stand-out = stand-out at bore − min(c, Δ)/(2·tan α). First principles.
///
/// ```
/// use fittingcards::grip::{Collet, GripLimits, HeldConductor, Verdict, collet};
/// use fittingcards::units::{Angle, Length};
/// let cone = Collet {
///     bore: Some(Length::from_mm(14.0)),
///     slits: Some(3),
///     slit_width: Some(Length::from_mm(1.0)),
///     half_angle: Some(Angle::from_degrees(5.0)),
///     stand_out_at_bore: Some(Length::from_mm(6.0)),
///     ..Collet::default()
/// };
/// let outcome = collet(&cone, None, &HeldConductor::solid(Length::from_mm(12.5)), GripLimits::default());
/// assert_eq!(outcome.verdict, Verdict::ClosesWithoutGripping);
/// assert!((outcome.closure.unwrap().mm() - 0.955).abs() < 0.0005);
/// assert!((outcome.stand_out.unwrap().mm() - (6.0 - 5.46)).abs() < 0.005);
/// ```
#[must_use]
pub fn collet(cone: &Collet, body: Option<&Body>, held: &HeldConductor, limits: GripLimits) -> Outcome {
    let Some(bore) = cone.bore else {
        return Outcome {
            closure: collet_closure(cone),
            ..Outcome::unknown(vec!["geometry.collet.bore_mm"])
        };
    };
    let fit = Fit {
        clearance: bore - held.overall_diameter,
        tolerance: cone.bore_tolerance.unwrap_or_default() + held.diameter_tolerance,
        closure: closure(cone),
    };
    let ruled = rule(cone, body, held, fit, limits);
    let closes = collet_closure(cone);
    let lengths = Outcome {
        clearance: Some(fit.clearance),
        closure: closes,
        gap: closes.map(|closes| fit.clearance - closes).filter(|gap| *gap > Length::ZERO),
        ..stand_out(cone, fit, ruled.verdict)
    };
    ruled.with_lengths_of(lengths)
}

/// How far a collet's bore can close before its slits shut, n·w/π; `None` where slits are not stated.
#[must_use]
pub fn collet_closure(cone: &Collet) -> Option<Length> {
    closure(cone).map(|closure| closure.stated)
}

fn closure(cone: &Collet) -> Option<Closure> {
    Closure::of(cone.slits, cone.slit_width, cone.slit_width_tolerance)
}

/// Bore less conductor, how sure it is, and how far the bore can close.
#[derive(Debug, Clone, Copy)]
struct Fit {
    clearance: Length,
    tolerance: Length,
    closure: Option<Closure>,
}

impl Fit {
    fn least(self) -> Length {
        self.clearance - self.tolerance
    }

    fn most(self) -> Length {
        self.clearance + self.tolerance
    }
}

fn rule(cone: &Collet, body: Option<&Body>, held: &HeldConductor, fit: Fit, limits: GripLimits) -> Outcome {
    let one_piece = cone.pieces.unwrap_or(1) == 1;
    if one_piece && let Some(kept_out) = kept_out(cone, held, fit) {
        return kept_out;
    }
    if let (Some(cone), Some(body)) = (cone.half_angle, body.and_then(|body| body.half_angle))
        && tapers_differ(cone, body)
    {
        return Outcome::of(Verdict::TipContact);
    }
    if less(fit.most(), Length::ZERO) {
        return Outcome { forced: one_piece, ..Outcome::of(Verdict::StandsProud) };
    }
    match fit.closure {
        Some(closure) => Outcome::of(closing(fit, closure, limits)),
        None => Outcome::unknown(slits(cone)),
    }
}

/// Rule 1: a cone of one piece goes over a thicker conductor only where its slits can be prised open.
fn kept_out(cone: &Collet, held: &HeldConductor, fit: Fit) -> Option<Outcome> {
    let beyond_force = less(fit.most(), -(held.overall_diameter * FORCED));
    match fit.closure {
        None => beyond_force.then(|| Outcome::unknown(slits(cone))),
        Some(_) if cone.slits == Some(0) => beyond_force.then(|| Outcome::of(Verdict::WillNotEnter)),
        Some(closure) => less(fit.most(), -closure.most()).then(|| Outcome::of(Verdict::WillNotEnter)),
    }
}

fn slits(cone: &Collet) -> Vec<&'static str> {
    missing(&[
        (cone.slits.is_some(), "geometry.collet.slits"),
        (cone.slit_width.is_some(), "geometry.collet.slit_width_mm"),
    ])
}

fn closing(fit: Fit, closure: Closure, limits: GripLimits) -> Verdict {
    let in_hand = closure.least() - limits.closure_reserve;
    if more(fit.least(), closure.most()) {
        Verdict::ClosesWithoutGripping
    } else if !less(fit.least(), Length::ZERO) && !more(fit.most(), in_hand) {
        Verdict::Grips
    } else {
        Verdict::Marginal
    }
}

/// Once the slits are shut the cone goes no deeper; a cone that won't enter has no stand-out.
fn stand_out(cone: &Collet, fit: Fit, verdict: Verdict) -> Outcome {
    let none = Outcome::of(verdict);
    let (Some(at_bore), Some(half_angle)) = (cone.stand_out_at_bore, cone.half_angle) else { return none };
    if verdict == Verdict::WillNotEnter || fit.closure.is_none() && more(fit.most(), Length::ZERO) {
        return none;
    }
    let off = cone.stand_out_at_bore_tolerance.unwrap_or_default();
    let sunk_by = |closed: Length| closed / (2.0 * half_angle.tan());
    let at = |clearance: Length, shut: Option<Length>| {
        at_bore - sunk_by(shut.map_or(clearance, |shut| clearance.min(shut)))
    };
    let deep = at(fit.most(), fit.closure.map(Closure::most)) - off;
    let proud = at(fit.least(), fit.closure.map(Closure::least)) + off;
    Outcome {
        stand_out: Some(at(fit.clearance, fit.closure.map(|closure| closure.stated))),
        stand_out_interval: Some(Range::between(deep, proud)),
        deepest: fit.closure.map(|closure| at_bore - off - sunk_by(closure.most())),
        ..none
    }
}

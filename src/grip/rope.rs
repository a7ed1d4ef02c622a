//! Ropes round a thimble and under rope grips.

use super::compare::{less, more};
use super::{HeldConductor, HeldConstruction, Outcome, RopeGrip, Thimble, Verdict};
use crate::units::Range;
use std::ops::RangeInclusive;

/// Groove of a thimble in rope diameters. Common practice, no source.
pub const THIMBLE_GROOVE: RangeInclusive<f64> = 1.0..=1.15;

/// What a thimble does for a rope: it guides, it never holds. That it "grips" means here that the rope fits.
///
/// Will not enter if the groove is under 1.0 rope diameter, marginal if it is over 1.15 or either may be
/// so within the tolerances, else it fits.
///
/// ```
/// use fittingcards::grip::{HeldConductor, Thimble, Verdict, thimble};
/// use fittingcards::units::Length;
/// let eye = Thimble { groove: Some(Length::from_mm(9.0)), ..Thimble::default() };
/// assert_eq!(thimble(&eye, &HeldConductor::solid(Length::from_mm(8.0))).verdict, Verdict::Grips);
/// assert_eq!(thimble(&eye, &HeldConductor::solid(Length::from_mm(10.0))).verdict, Verdict::WillNotEnter);
/// ```
#[must_use]
pub fn thimble(thimble: &Thimble, held: &HeldConductor) -> Outcome {
    let Some(groove) = thimble.groove else {
        return Outcome::unknown(vec!["geometry.thimble.groove_mm"]);
    };
    let made = Range::around(groove, thimble.groove_tolerance.unwrap_or_default());
    let rope = Range::around(held.overall_diameter, held.diameter_tolerance);
    let verdict = if less(made.most(), rope.least() * *THIMBLE_GROOVE.start()) {
        Verdict::WillNotEnter
    } else if less(made.least(), rope.most() * *THIMBLE_GROOVE.start())
        || more(made.most(), rope.least() * *THIMBLE_GROOVE.end())
    {
        Verdict::Marginal
    } else {
        Verdict::Grips
    };
    Outcome { clearance: Some(groove - held.overall_diameter), ..Outcome::of(verdict) }
}

/// What a screwed grip does on a rope.
///
/// Closes without gripping on a rope thinner than it is made for, stands proud on a thicker one;
/// marginal where either holds within the tolerance of the rope, and on anything of a single strand,
/// which its bow crushes (EN 13411-5 is for ropes of several strands); else grips.
///
/// ```
/// use fittingcards::grip::{HeldConductor, HeldConstruction, RopeGrip, Verdict, rope_grip};
/// use fittingcards::units::{Length, Range};
/// let rope = Some(Range::between(Length::from_mm(7.5), Length::from_mm(8.5)));
/// let grip = RopeGrip { rope, ..RopeGrip::default() };
/// let rope = HeldConductor { construction: HeldConstruction::StrandedRope, ..HeldConductor::solid(Length::from_mm(8.0)) };
/// assert_eq!(rope_grip(&grip, &rope).verdict, Verdict::Grips);
/// ```
#[must_use]
pub fn rope_grip(grip: &RopeGrip, held: &HeldConductor) -> Outcome {
    let Some(range) = grip.rope else {
        return Outcome::unknown(vec!["geometry.rope_grip.rope_mm"]);
    };
    let rope = Range::around(held.overall_diameter, held.diameter_tolerance);
    let inside = !less(rope.least(), range.least()) && !more(rope.most(), range.most());
    Outcome::of(if less(rope.most(), range.least()) {
        Verdict::ClosesWithoutGripping
    } else if more(rope.least(), range.most()) {
        Verdict::StandsProud
    } else if inside && held.construction == HeldConstruction::StrandedRope {
        Verdict::Grips
    } else {
        Verdict::Marginal
    })
}

//! Ropes round a thimble and under screwed grips.

use super::compare::{less, more};
use super::{HeldConductor, Make, Outcome, RopeGrip, Thimble, Verdict};
use std::ops::RangeInclusive;

/// Groove of a thimble in rope diameters. Common practice, no source.
pub const THIMBLE_GROOVE: RangeInclusive<f64> = 1.0..=1.15;

/// What a thimble does for a rope: it guides, it never holds.
///
/// Will not enter if the groove is under 1.0 rope diameter, marginal if it is over 1.15, else it fits.
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
    let verdict = if less(groove, held.overall_diameter * *THIMBLE_GROOVE.start()) {
        Verdict::WillNotEnter
    } else if more(groove, held.overall_diameter * *THIMBLE_GROOVE.end()) {
        Verdict::Marginal
    } else {
        Verdict::Grips
    };
    Outcome { clearance: Some(groove - held.overall_diameter), ..Outcome::of(verdict) }
}

/// What a screwed grip does on a rope.
///
/// Closes without gripping on a rope thinner than it is made for, stands proud on a thicker one;
/// marginal on anything of a single strand, which its bow crushes (EN 13411-5 is for ropes of several
/// strands); else grips.
///
/// ```
/// use fittingcards::grip::{HeldConductor, Make, RopeGrip, Verdict, rope_grip};
/// use fittingcards::units::{Length, Range};
/// let grip = RopeGrip { rope: Some(Range::between(Length::from_mm(7.5), Length::from_mm(8.5))), spacing: None };
/// let rope = HeldConductor { make: Make::StrandedRope, ..HeldConductor::solid(Length::from_mm(8.0)) };
/// assert_eq!(rope_grip(&grip, &rope).verdict, Verdict::Grips);
/// ```
#[must_use]
pub fn rope_grip(grip: &RopeGrip, held: &HeldConductor) -> Outcome {
    let Some(range) = grip.rope else {
        return Outcome::unknown(vec!["geometry.rope_grip.rope_mm"]);
    };
    Outcome::of(if less(held.overall_diameter, range.least()) {
        Verdict::ClosesWithoutGripping
    } else if more(held.overall_diameter, range.most()) {
        Verdict::StandsProud
    } else if held.make == Make::StrandedRope {
        Verdict::Grips
    } else {
        Verdict::Marginal
    })
}

//! Sleeves and ferrules that are pressed on a conductor.

use super::compare::{less, more};
use super::outcome::missing;
use super::{Bore, Ferrule, HeldConductor, Outcome, Verdict};
use crate::units::Length;

/// How much wider than each leg a bore may be before pressing. Common practice, no source.
pub const PRESSED_CLEARANCE: Length = Length::from_mm(0.8);

/// What a pressed ferrule does on a rope or conductor.
///
/// Will not enter if the bore is under the conductor; closes without gripping if it is more than
/// 0.8 mm over; marginal where either holds for some sizes within the tolerances; unknown without die
/// and pressed size, by which alone a press is checked; else grips. A ferrule for two legs says so: the
/// width of its oval goes against one diameter, its height against two with 0.8 mm a leg; a round bore
/// goes against two diameters.
///
/// ```
/// use fittingcards::grip::{Bore, Ferrule, HeldConductor, Verdict, ferrule};
/// use fittingcards::units::{Length, Range};
/// let mm = Length::from_mm;
/// let part = Ferrule {
///     bore: Some(Bore::Oval { width: mm(8.4), height: mm(17.0) }),
///     legs: Some(2),
///     die: Some("8".into()),
///     pressed: Some(Range::between(mm(15.8), mm(16.2))),
///     ..Ferrule::default()
/// };
/// assert_eq!(ferrule(&part, &HeldConductor::solid(mm(8.0))).verdict, Verdict::Grips);
/// assert_eq!(ferrule(&part, &HeldConductor::solid(mm(7.5))).verdict, Verdict::ClosesWithoutGripping);
/// assert_eq!(ferrule(&part, &HeldConductor::solid(mm(8.45))).verdict, Verdict::WillNotEnter);
/// ```
#[must_use]
pub fn ferrule(ferrule: &Ferrule, held: &HeldConductor) -> Outcome {
    pressed(
        ferrule,
        held,
        ["geometry.ferrule.bore_mm", "geometry.ferrule.die", "geometry.ferrule.pressed_mm"],
    )
}

/// What a pressed sleeve does on a conductor: the rules of [`ferrule()`].
///
/// ```
/// use fittingcards::grip::{Bore, Ferrule, HeldConductor, Verdict, sleeve};
/// use fittingcards::units::Length;
/// let bare = Ferrule { bore: Some(Bore::Round(Length::from_mm(9.5))), ..Ferrule::default() };
/// let outcome = sleeve(&bare, &HeldConductor::solid(Length::from_mm(9.0)));
/// assert_eq!(outcome.missing, ["geometry.sleeve.die", "geometry.sleeve.pressed_mm"]);
/// ```
#[must_use]
pub fn sleeve(sleeve: &Ferrule, held: &HeldConductor) -> Outcome {
    pressed(sleeve, held, ["geometry.sleeve.bore_mm", "geometry.sleeve.die", "geometry.sleeve.pressed_mm"])
}

/// Bore less conductor, in one direction.
#[derive(Debug, Clone, Copy)]
struct Fit {
    clearance: Length,
    tolerance: Length,
    most: Length,
}

fn fits(part: &Ferrule, bore: Bore, held: &HeldConductor) -> Vec<Fit> {
    let made = part.bore_tolerance.unwrap_or_default();
    let fit = |across: Length, legs: f64| Fit {
        clearance: across - held.overall_diameter * legs,
        tolerance: made + held.diameter_tolerance * legs,
        most: PRESSED_CLEARANCE * legs,
    };
    let legs = f64::from(part.legs.unwrap_or(1));
    match bore {
        Bore::Round(across) => vec![fit(across, legs)],
        Bore::Oval { width, height } => vec![fit(width, 1.0), fit(height, legs)],
    }
}

fn pressed(
    part: &Ferrule,
    held: &HeldConductor,
    [bore_key, die_key, pressed_key]: [&'static str; 3],
) -> Outcome {
    let Some(bore) = part.bore else { return Outcome::unknown(vec![bore_key]) };
    let fits = fits(part, bore, held);
    let missing = missing(&[(part.die.is_some(), die_key), (part.pressed.is_some(), pressed_key)]);
    let ruled = if fits.iter().any(|fit| less(fit.clearance + fit.tolerance, Length::ZERO)) {
        Outcome::of(Verdict::WillNotEnter)
    } else if fits.iter().any(|fit| more(fit.clearance - fit.tolerance, fit.most)) {
        Outcome::of(Verdict::ClosesWithoutGripping)
    } else if !missing.is_empty() {
        Outcome::unknown(missing)
    } else if fits.iter().all(|fit| surely(*fit)) {
        Outcome::of(Verdict::Grips)
    } else {
        Outcome::of(Verdict::Marginal)
    };
    Outcome { clearance: fits.first().map(|fit| fit.clearance), ..ruled }
}

fn surely(fit: Fit) -> bool {
    !less(fit.clearance - fit.tolerance, Length::ZERO) && !more(fit.clearance + fit.tolerance, fit.most)
}

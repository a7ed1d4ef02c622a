//! Sleeves and ferrules that are pressed on a conductor.

use super::compare::{less, more};
use super::outcome::missing;
use super::{Ferrule, HeldConductor, Outcome, Verdict};
use crate::units::Length;

/// How much wider than the conductor a bore may be before pressing. Common practice, no source.
pub const PRESSED_CLEARANCE: Length = Length::from_mm(0.8);

/// What a pressed ferrule does on a rope or conductor.
///
/// Will not enter if the bore is under the conductor; closes without gripping if it is more than
/// 0.8 mm over; unknown without die and pressed size, by which alone a press is checked; else grips.
///
/// ```
/// use fittingcards::grip::{Ferrule, HeldConductor, Verdict, ferrule};
/// use fittingcards::units::{Length, Range};
/// let mm = Length::from_mm;
/// let part = Ferrule {
///     bore: Some(mm(18.4)),
///     die: Some("8".into()),
///     pressed: Some(Range::between(mm(15.8), mm(16.2))),
///     ..Ferrule::default()
/// };
/// assert_eq!(ferrule(&part, &HeldConductor::solid(mm(18.0))).verdict, Verdict::Grips);
/// assert_eq!(ferrule(&part, &HeldConductor::solid(mm(17.5))).verdict, Verdict::ClosesWithoutGripping);
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
/// use fittingcards::grip::{Ferrule, HeldConductor, Verdict, sleeve};
/// use fittingcards::units::Length;
/// let bare = Ferrule { bore: Some(Length::from_mm(9.5)), ..Ferrule::default() };
/// let outcome = sleeve(&bare, &HeldConductor::solid(Length::from_mm(9.0)));
/// assert_eq!(outcome.missing, ["geometry.sleeve.die", "geometry.sleeve.pressed_mm"]);
/// ```
#[must_use]
pub fn sleeve(sleeve: &Ferrule, held: &HeldConductor) -> Outcome {
    pressed(sleeve, held, ["geometry.sleeve.bore_mm", "geometry.sleeve.die", "geometry.sleeve.pressed_mm"])
}

fn pressed(
    part: &Ferrule,
    held: &HeldConductor,
    [bore_key, die_key, pressed_key]: [&'static str; 3],
) -> Outcome {
    let Some(bore) = part.bore else { return Outcome::unknown(vec![bore_key]) };
    let clearance = bore - held.overall_diameter;
    let ruled = if less(clearance, Length::ZERO) {
        Outcome::of(Verdict::WillNotEnter)
    } else if more(clearance, PRESSED_CLEARANCE) {
        Outcome::of(Verdict::ClosesWithoutGripping)
    } else {
        let missing = missing(&[(part.die.is_some(), die_key), (part.pressed.is_some(), pressed_key)]);
        if missing.is_empty() { Outcome::of(Verdict::Grips) } else { Outcome::unknown(missing) }
    };
    Outcome { clearance: Some(clearance), ..ruled }
}

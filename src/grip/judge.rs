//! Which rules a gripping part comes under.

use super::{
    Geometry, GripLimits, HeldConductor, Outcome, collet, ferrule, rope_grip, sleeve, spreading_cone,
    thimble, wedge,
};

/// What a gripping part does on a conductor, with the other parts of its fitting: the likeliest outcome.
///
/// The first of `mating` that the part works in counts: a body for a collet, a socket for a spreading
/// cone, a wedge body for a wedge. Without geometry of its own the part is unknown.
///
/// ```
/// use fittingcards::grip::{Collet, Geometry, GripLimits, HeldConductor, Verdict, judge};
/// use fittingcards::units::Length;
/// let held = HeldConductor::solid(Length::from_mm(14.0));
/// let bore = Some(Length::from_mm(12.5));
/// let cone = Geometry::Collet(Collet { bore, slits: Some(0), ..Collet::default() });
/// assert_eq!(judge(Some(&cone), &[], &held, GripLimits::default()).verdict, Verdict::WillNotEnter);
/// assert_eq!(judge(None, &[], &held, GripLimits::default()).missing, ["geometry"]);
/// ```
#[must_use]
pub fn judge(
    gripping: Option<&Geometry>,
    mating: &[&Geometry],
    held: &HeldConductor,
    limits: GripLimits,
) -> Outcome {
    possible_outcomes(gripping, mating, held, limits).swap_remove(0)
}

/// Everything that a gripping part can do on a conductor, the likeliest first; there is always one.
///
/// More than one comes of a spreading cone, whose hole can take several sets of inner wires.
#[must_use]
pub fn possible_outcomes(
    gripping: Option<&Geometry>,
    mating: &[&Geometry],
    held: &HeldConductor,
    limits: GripLimits,
) -> Vec<Outcome> {
    let only = match gripping {
        Some(Geometry::Collet(cone)) => {
            let body = mating
                .iter()
                .find_map(|part| if let Geometry::Body(body) = part { Some(body) } else { None });
            collet(cone, body, held, limits)
        }
        Some(Geometry::SpreadingCone(cone)) => {
            let socket = mating
                .iter()
                .find_map(|part| if let Geometry::Socket(socket) = part { Some(socket) } else { None });
            return spreading_cone(cone, socket, held);
        }
        Some(Geometry::Wedge(part)) => {
            let body = mating
                .iter()
                .find_map(|part| if let Geometry::WedgeBody(body) = part { Some(body) } else { None });
            wedge(part, body, held)
        }
        Some(Geometry::Ferrule(part)) => ferrule(part, held),
        Some(Geometry::Sleeve(part)) => sleeve(part, held),
        Some(Geometry::RopeGrip(part)) => rope_grip(part, held),
        Some(Geometry::Thimble(part)) => thimble(part, held),
        Some(Geometry::Body(_) | Geometry::Socket(_) | Geometry::WedgeBody(_)) | None => {
            Outcome::unknown(vec!["geometry"])
        }
    };
    vec![only]
}

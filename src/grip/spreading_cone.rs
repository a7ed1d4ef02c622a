//! A gripping cone driven between the wires, pressing the outer ones on a socket.

use super::compare::{less, more, tapers_differ};
use super::outcome::missing;
use super::{HeldConductor, Outcome, Socket, SpreadingCone, Verdict};
use crate::section::Layer;
use crate::units::{Angle, Length, Range};
use std::f64::consts::PI;

/// What a spreading cone does on a conductor in a socket.
///
/// The inner wires are the largest whole set of inner layers that goes through the cone's hole; g is
/// the sum of the wire diameters of the layers left outside. Depth of the cone's large face below the
/// socket's: z = (r_s − r_c − g/cos α)/tan α. In this order: will not enter if the conductor exceeds
/// the throat or not even its centre goes through the hole; tip contact if the half-angles differ by
/// more than 0.25°; closes without gripping if all wires go through or z > travel; stands proud if
/// z < 0; core not held if slits are stated and hole − inner wires > n·w/π; else grips.
/// Stand-out = −min(z, travel), over the tolerance of the wires outside. First principles.
///
/// A rope, a grooved wire or a profile has no layers to part: unknown.
///
/// ```
/// use fittingcards::grip::{HeldConductor, Socket, SpreadingCone, Verdict, spreading_cone};
/// use fittingcards::units::{Angle, Length};
/// let mm = Length::from_mm;
/// let cone = SpreadingCone { hole_diameter: Some(mm(8.6)), ..SpreadingCone::default() };
/// let socket = Socket { throat_diameter: Some(mm(14.5)), ..Socket::default() };
/// // A solid wire is its own centre, and 14 mm do not go through a hole of 8.6 mm.
/// let outcome = spreading_cone(&cone, Some(&socket), &HeldConductor::solid(mm(14.0)));
/// assert_eq!(outcome.verdict, Verdict::WillNotEnter);
/// ```
#[must_use]
pub fn spreading_cone(cone: &SpreadingCone, socket: Option<&Socket>, held: &HeldConductor) -> Outcome {
    let Some(layers) = held.layers() else { return Outcome::of(Verdict::Unknown) };
    let nothing = Socket::default();
    let socket = socket.unwrap_or(&nothing);
    let inside = cone.hole_diameter.map(|hole| inner_wires(layers, hole));
    if let Some(entering) = entering(cone, socket, held, inside) {
        return Outcome { wires_through_hole: through(layers, inside), ..entering };
    }
    let inside = inside.unwrap_or(0);
    let place = Place::of(cone, socket, held, &layers[inside..]);
    let ruled = rule(cone, socket, layers, inside, place);
    ruled.with_lengths_of(place.lengths(socket, through(layers, Some(inside))))
}

/// How many of the layers, from the centre out, go through a hole as a whole set.
#[must_use]
pub fn inner_wires(layers: &[Layer], hole: Length) -> usize {
    layers.iter().take_while(|layer| !more(outside(layer), hole)).count()
}

/// Diameter of the small end of a taper: large end less what the flanks take off over its length.
///
/// ```
/// use fittingcards::grip::small_end_diameter;
/// use fittingcards::units::{Angle, Length};
/// let end = small_end_diameter(Length::from_mm(17.0), Angle::from_degrees(8.0), Length::from_mm(24.0));
/// assert!((end.mm() - 10.254).abs() < 0.001);
/// ```
#[must_use]
pub fn small_end_diameter(large: Length, half_angle: Angle, length: Length) -> Length {
    large - length * (2.0 * half_angle.tan())
}

/// Rule 1: `None` where the conductor and its centre are known to go in.
fn entering(
    cone: &SpreadingCone,
    socket: &Socket,
    held: &HeldConductor,
    inside: Option<usize>,
) -> Option<Outcome> {
    let too_thick = socket.throat_diameter.is_some_and(|throat| more(held.overall_diameter, throat));
    if too_thick || inside == Some(0) {
        return Some(Outcome::of(Verdict::WillNotEnter));
    }
    let missing = missing(&[
        (cone.hole_diameter.is_some(), "geometry.spreading_cone.hole_diameter_mm"),
        (socket.throat_diameter.is_some(), "geometry.socket.throat_diameter_mm"),
    ]);
    (!missing.is_empty()).then(|| Outcome::unknown(missing))
}

/// Rules 2 to 6.
fn rule(cone: &SpreadingCone, socket: &Socket, layers: &[Layer], inside: usize, place: Place) -> Outcome {
    let (Some(cone_angle), Some(socket_angle)) = (cone.half_angle, socket.half_angle) else {
        return Outcome::unknown(missing(&[
            (cone.half_angle.is_some(), "geometry.spreading_cone.half_angle_deg"),
            (socket.half_angle.is_some(), "geometry.socket.half_angle_deg"),
        ]));
    };
    if tapers_differ(cone_angle, socket_angle) {
        return Outcome::of(Verdict::TipContact);
    }
    if inside == layers.len() {
        return Outcome::of(Verdict::ClosesWithoutGripping);
    }
    let (Some(depth), Some(travel)) = (place.depth, socket.travel) else {
        return Outcome::unknown(missing(&[
            (cone.large_diameter.is_some(), "geometry.spreading_cone.large_diameter_mm"),
            (socket.large_diameter.is_some(), "geometry.socket.large_diameter_mm"),
            (socket.travel.is_some(), "geometry.socket.travel_mm"),
        ]));
    };
    if more(depth, travel) {
        Outcome::of(Verdict::ClosesWithoutGripping)
    } else if less(depth, Length::ZERO) {
        Outcome::of(Verdict::StandsProud)
    } else {
        core(cone, &layers[inside - 1])
    }
}

/// Rules 5 and 6: whether the hole can close on the inner wires, whose outermost layer is given.
fn core(cone: &SpreadingCone, inner: &Layer) -> Outcome {
    let (Some(slits), Some(hole)) = (cone.slits, cone.hole_diameter) else {
        return Outcome::of(Verdict::Grips);
    };
    let Some(width) = cone.slit_width else {
        return Outcome::unknown(vec!["geometry.spreading_cone.slit_width_mm"]);
    };
    if more(hole - outside(inner), width * f64::from(slits) / PI) {
        Outcome::of(Verdict::CoreNotHeld)
    } else {
        Outcome::of(Verdict::Grips)
    }
}

/// How deep the cone's large face lies below the socket's, and what the wires' tolerance makes of it.
#[derive(Debug, Clone, Copy, Default)]
struct Place {
    depth: Option<Length>,
    give: Length,
}

impl Place {
    fn of(cone: &SpreadingCone, socket: &Socket, held: &HeldConductor, outer: &[Layer]) -> Self {
        let (Some(cone_end), Some(socket_end), Some(half_angle)) =
            (cone.large_diameter, socket.large_diameter, cone.half_angle)
        else {
            return Self::default();
        };
        let wires: Length = outer.iter().map(|layer| layer.wire_diameter).sum();
        let tolerance: Length = outer.iter().map(|_| held.wire_diameter_tolerance).sum();
        let gap = (socket_end - cone_end) / 2.0 - wires / half_angle.cos();
        Self { depth: Some(gap / half_angle.tan()), give: tolerance / half_angle.sin() }
    }

    fn lengths(self, socket: &Socket, through: Option<u32>) -> Outcome {
        let at = |depth: Length| socket.travel.map(|travel| -depth.min(travel));
        let ends = |depth: Length| Some(Range::between(at(depth + self.give)?, at(depth - self.give)?));
        Outcome {
            depth: self.depth,
            stand_out: self.depth.and_then(at),
            stand_out_interval: self.depth.and_then(ends),
            wires_through_hole: through,
            ..Outcome::of(Verdict::Unknown)
        }
    }
}

fn through(layers: &[Layer], inside: Option<usize>) -> Option<u32> {
    inside.map(|inside| layers[..inside].iter().map(|layer| layer.wires).sum())
}

fn outside(layer: &Layer) -> Length {
    layer.pitch_radius * 2.0 + layer.wire_diameter
}

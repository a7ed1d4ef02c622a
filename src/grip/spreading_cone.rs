//! A gripping cone driven between the wires, pressing the outer ones on a socket.

use super::closure::Closure;
use super::compare::{less, more, tapers_differ};
use super::depth::{Depth, Travel};
use super::inner_wires::{Inner, across, inner_sets};
use super::outcome::missing;
use super::{HeldConductor, Outcome, Socket, SpreadingCone, Verdict};
use crate::section::Layer;
use crate::units::{Angle, Length};

/// What a spreading cone does on a conductor in a socket, for every set of inner wires that can be in
/// its hole: the set taken first, then larger ones that pass within the tolerances or by force.
///
/// The set taken is the largest whole set of inner layers that goes through the hole; g is the sum of
/// the wire diameters of the layers left outside. Depth of the cone's large face below the socket's:
/// z = (r_s − r_c − g/cos α)/tan α, ± Δz = (half the tolerances of both large diameters + Σ wire
/// tolerances outside/cos α)/tan α. In this order: will not enter if the conductor exceeds the throat or
/// not even its centre goes through the hole; tip contact if the half-angles differ by more than 0.25°;
/// closes without gripping if all wires go through or z − Δz > travel; stands proud if z + Δz < 0;
/// marginal if z − Δz < 0 or z + Δz > travel, each with the travel's tolerance; where slits are stated core
/// not held if the hole can't shut on the inner wires, hole − inner − τ > n·w/π, and marginal if
/// hole − inner + τ is, τ the tolerances of hole and inner wires; else grips. Where the inner wires go
/// through the hole, or the conductor through the throat, for some sizes within the tolerances alone, it
/// grips marginally at best.
/// Stand-out = −min(z, travel). First principles.
///
/// A rope, a grooved wire or a profile has no layers to part: unknown. There is always one outcome.
///
/// ```
/// use fittingcards::grip::{HeldConductor, Socket, SpreadingCone, Verdict, spreading_cone};
/// use fittingcards::units::{Angle, Length};
/// let mm = Length::from_mm;
/// let cone = SpreadingCone { hole_diameter: Some(mm(8.6)), ..SpreadingCone::default() };
/// let socket = Socket { throat_diameter: Some(mm(14.5)), ..Socket::default() };
/// // A solid wire is its own centre, and 14 mm do not go through a hole of 8.6 mm.
/// let outcomes = spreading_cone(&cone, Some(&socket), &HeldConductor::solid(mm(14.0)));
/// assert_eq!(outcomes[0].verdict, Verdict::WillNotEnter);
/// ```
#[must_use]
pub fn spreading_cone(cone: &SpreadingCone, socket: Option<&Socket>, held: &HeldConductor) -> Vec<Outcome> {
    let Some(layers) = held.layers() else { return vec![Outcome::of(Verdict::Unknown)] };
    let nothing = Socket::default();
    let pair = Pair { cone, socket: socket.unwrap_or(&nothing), held, layers };
    let Some(hole) = cone.hole_diameter else { return vec![pair.without_hole()] };
    let sets = inner_sets(cone, hole, held, layers);
    if let [Inner { layers: 0, .. }] = sets[..]
        && !pair.too_thick()
        && cone.slits.is_some_and(|slits| slits > 0)
        && cone.slit_width.is_none()
    {
        return vec![Outcome::unknown(vec!["geometry.spreading_cone.slit_width_mm"])];
    }
    sets.iter().map(|inner| pair.with(*inner, hole)).collect()
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

/// A cone in a socket, on a conductor.
#[derive(Clone, Copy)]
struct Pair<'a> {
    cone: &'a SpreadingCone,
    socket: &'a Socket,
    held: &'a HeldConductor,
    layers: &'a [Layer],
}

impl Pair<'_> {
    fn too_thick(self) -> bool {
        let loose = self.socket.throat_diameter_tolerance.unwrap_or_default();
        let thinnest = self.held.overall_diameter - self.held.diameter_tolerance;
        self.socket.throat_diameter.is_some_and(|throat| more(thinnest, throat + loose))
    }

    /// Whether it goes through the throat for some sizes within the tolerances only.
    fn barely_enters(self) -> bool {
        let tight = self.socket.throat_diameter_tolerance.unwrap_or_default();
        let thickest = self.held.overall_diameter + self.held.diameter_tolerance;
        self.socket.throat_diameter.is_some_and(|throat| more(thickest, throat - tight))
    }

    fn without_hole(self) -> Outcome {
        if self.too_thick() {
            return Outcome::of(Verdict::WillNotEnter);
        }
        Outcome::unknown(missing(&[
            (false, "geometry.spreading_cone.hole_diameter_mm"),
            (self.socket.throat_diameter.is_some(), "geometry.socket.throat_diameter_mm"),
        ]))
    }

    fn with(self, inner: Inner, hole: Length) -> Outcome {
        let through = Some(self.layers[..inner.layers].iter().map(|layer| layer.wires).sum());
        if inner.layers == 0 || self.too_thick() {
            return Outcome { wires_through_hole: through, ..Outcome::of(Verdict::WillNotEnter) };
        }
        if self.socket.throat_diameter.is_none() {
            let unknown = Outcome::unknown(vec!["geometry.socket.throat_diameter_mm"]);
            return Outcome { wires_through_hole: through, forced: inner.forced, ..unknown };
        }
        let depth = self.depth(&self.layers[inner.layers..]);
        let travel = Travel::of(self.socket.travel, self.socket.travel_tolerance);
        let ruled = self.rule(inner, hole, depth, travel);
        let unsure = inner.unsure || self.barely_enters();
        let verdict =
            if unsure && ruled.verdict == Verdict::Grips { Verdict::Marginal } else { ruled.verdict };
        let mut lengths = Outcome { wires_through_hole: through, ..Depth::lengths(depth, travel) };
        if inner.layers == self.layers.len() {
            lengths.gap = Some(hole - self.held.overall_diameter).filter(|gap| *gap > Length::ZERO);
        }
        Outcome { verdict, forced: inner.forced, ..ruled }.with_lengths_of(lengths)
    }

    fn depth(self, outer: &[Layer]) -> Option<Depth> {
        let (cone, socket) = (self.cone, self.socket);
        // Where one of the tapers is not known, nor is how they lie on each other.
        socket.half_angle?;
        let (cone_end, socket_end, half_angle) =
            (cone.large_diameter?, socket.large_diameter?, cone.half_angle?);
        let wires: Length = outer.iter().map(|layer| layer.wire_diameter).sum();
        let wires_off: Length = outer.iter().map(|_| self.held.wire_diameter_tolerance).sum();
        let ends_off = cone.large_diameter_tolerance.unwrap_or_default()
            + socket.large_diameter_tolerance.unwrap_or_default();
        let gap = (socket_end - cone_end) / 2.0 - wires / half_angle.cos();
        let off = ends_off / 2.0 + wires_off / half_angle.cos();
        let slope = half_angle.tan();
        Some(Depth { stated: gap / slope, tolerance: off / slope, slope })
    }

    /// What tapers, depth and, where those are good, the hole come to.
    fn rule(self, inner: Inner, hole: Length, depth: Option<Depth>, travel: Option<Travel>) -> Outcome {
        let (cone, socket) = (self.cone, self.socket);
        let (Some(cone_angle), Some(socket_angle)) = (cone.half_angle, socket.half_angle) else {
            return Outcome::unknown(missing(&[
                (cone.half_angle.is_some(), "geometry.spreading_cone.half_angle_deg"),
                (socket.half_angle.is_some(), "geometry.socket.half_angle_deg"),
            ]));
        };
        if tapers_differ(cone_angle, socket_angle) {
            return Outcome::of(Verdict::TipContact);
        }
        if inner.layers == self.layers.len() {
            return Outcome::of(Verdict::ClosesWithoutGripping);
        }
        let (Some(depth), Some(travel)) = (depth, travel) else {
            return Outcome::unknown(missing(&[
                (cone.large_diameter.is_some(), "geometry.spreading_cone.large_diameter_mm"),
                (socket.large_diameter.is_some(), "geometry.socket.large_diameter_mm"),
                (socket.travel.is_some(), "geometry.socket.travel_mm"),
            ]));
        };
        match depth.verdict(travel) {
            Verdict::Grips => self.core(inner, hole),
            verdict => Outcome::of(verdict),
        }
    }

    /// Whether the hole can close on the inner wires.
    fn core(self, inner: Inner, hole: Length) -> Outcome {
        let cone = self.cone;
        if cone.slits.is_none() {
            return Outcome::of(Verdict::Grips);
        }
        let Some(closure) = Closure::of(cone.slits, cone.slit_width, cone.slit_width_tolerance) else {
            return Outcome::unknown(vec!["geometry.spreading_cone.slit_width_mm"]);
        };
        let gap = hole - across(&self.layers[inner.layers - 1]);
        let off = inner.tolerance(cone, self.held);
        Outcome::of(if more(gap - off, closure.most()) {
            Verdict::CoreNotHeld
        } else if less(closure.least(), gap + off) {
            Verdict::Marginal
        } else {
            Verdict::Grips
        })
    }
}

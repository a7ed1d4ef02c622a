//! A spreading cone driven between wires, looked at closely: the socket's wall, the wires on its flank, those in its hole.

use super::Pose;
use super::scaled_draft::wire_tone;
use super::setup::Setup;
use super::spreading::{SpreadingSeat, spreading_cone};
use super::surfaces::{Contact, LEAST_GAP, Surface};
use crate::grip::{Outcome, SpreadingCone, Verdict};
use crate::sketch::appearance::{Shade, Tone};
use crate::sketch::plane::{Affine, Point, at};
use std::f64::consts::PI;

/// A right cone and a wrong one that leaves the wires in its hole loose, both looked at where they differ: at the small end,
/// where the wires part on the right one.
pub(super) fn loose_inside(right: &Setup, wrong: &Setup) -> Option<(Contact, Contact)> {
    let (own, other) = (Driven::of(right)?, Driven::of(wrong)?);
    let loose = wrong.outcome.as_ref().is_some_and(|outcome| outcome.verdict == Verdict::CoreNotHeld);
    if !loose && !other.seat.spread.is_empty() {
        return None;
    }
    let x = own.seat.flank[0].0.max(other.seat.flank[0].0) + BEHIND_THE_TIP;
    // The right cone closes on the wires in its hole.
    let closed = own.contact(right, x, own.seat.inner);
    let hole = other.hole_once_seated(wrong);
    Some((closed, other.contact(wrong, x, hole)))
}

/// A cone's flank, the wires on it, the socket's wall, and the gap between the two.
pub(super) fn on_the_flank(setup: &Setup) -> Option<Contact> {
    let driven = Driven::of(setup)?;
    Some(driven.contact(setup, driven.beside_the_end(), driven.seat.inner))
}

/// How far behind the small end of a cone its hole is looked at, in millimetres.
const BEHIND_THE_TIP: f64 = 2.0;

struct Driven<'a> {
    seat: SpreadingSeat,
    cone: &'a SpreadingCone,
    tone: Tone,
    /// The height that the wires on the flank take, across the axis.
    layers: f64,
}

impl<'a> Driven<'a> {
    fn of(setup: &Setup<'a>) -> Option<Self> {
        let seat = SpreadingSeat::of(setup, Pose::default())?;
        let (look, cone) = spreading_cone(setup)?;
        let layers = seat.spread.iter().map(|layer| layer.1).sum::<f64>() / seat.taper.1.atan().cos();
        Some(Self { seat, cone, tone: look.tone, layers })
    }

    fn beside_the_end(&self) -> f64 {
        let [small, large] = self.seat.flank;
        large.0 - 0.35 * (0.8 * (large.0 - small.0)).min(12.0)
    }

    fn wall(&self, x: f64) -> Point {
        let (mouth, slope) = self.seat.taper;
        at(x, -(mouth + x * slope))
    }

    /// Height of the outermost wires on the flank.
    fn top(&self, x: f64) -> f64 {
        let ([_, large], slope) = (self.seat.flank, self.seat.taper.1);
        -(large.1 - (large.0 - x) * slope) - self.layers
    }

    /// Radius of the hole as it is once the cone sits: where its slits can't shut on the wires, they are shut.
    fn hole_once_seated(&self, setup: &Setup) -> f64 {
        let not_held = |outcome: &&Outcome| outcome.verdict == Verdict::CoreNotHeld;
        let closes = setup.outcome.as_ref().filter(not_held).and_then(|_| {
            let width = self.cone.slit_width?.mm();
            Some(f64::from(self.cone.slits?) * width / (2.0 * PI))
        });
        (self.seat.hole - closes.unwrap_or(0.0)).max(self.seat.inner)
    }

    /// All that is there, looked at beside a place of the axis, with a hole of that radius. Wires that are loose in it lie
    /// on its lower side, so that the whole gap is above them.
    fn contact(&self, setup: &Setup, x: f64, hole: f64) -> Contact {
        let seat = &self.seat;
        let ([small, large], inner) = (seat.flank, seat.inner);
        let outside = self.top(x) - self.wall(x).y;
        let inside = 2.0 * (hole - inner);
        let mut surfaces = self.outside(setup, outside > LEAST_GAP);
        let cone = vec![at(small.0, -small.1), at(large.0, -large.1), at(large.0, -hole), at(small.0, -hole)];
        surfaces.push(Surface::gripping(cone.clone(), self.tone));
        if inside > LEAST_GAP {
            surfaces.push(Surface::plain(level_band(-hole, hole, (small.0, large.0)), Tone::Ink));
        }
        surfaces.extend(self.in_the_hole(setup, inside / 2.0));
        let gap = if inside > LEAST_GAP {
            Some((-hole, -hole + inside, "gap"))
        } else {
            (outside > LEAST_GAP).then(|| (self.wall(x).y, self.top(x), "gap"))
        };
        // With no wire on its flank a cone lies on the wall, and that is what differs.
        let from = if seat.spread.is_empty() { self.wall(x).y } else { gap.map_or(self.top(x), |gap| gap.0) };
        let to = gap.map_or(self.top(x), |gap| gap.1);
        let reach =
            if inside > LEAST_GAP { 1.6 * (to - from) + 1.2 } else { 2.0 * (self.layers + to - from) };
        Contact {
            surfaces,
            focus: at(x, f64::midpoint(from, to)),
            reach,
            gap,
            edge: cone,
            unsound: seat.proportions.unsound || ![outside, inside, x].into_iter().all(f64::is_finite),
        }
    }

    /// The socket's wall and the wires on the flank, with the gap between them.
    fn outside(&self, setup: &Setup, loose: bool) -> Vec<Surface> {
        let (seat, [small, large]) = (&self.seat, self.seat.flank);
        let (left, roof) = (small.0 - 4.0, -2.0 * seat.taper.0);
        let mut surfaces =
            vec![Surface::seat(vec![self.wall(left), self.wall(0.0), at(0.0, roof), at(left, roof)])];
        if loose {
            let (from, to) = (small.0, large.0.min(0.0));
            let ring = vec![self.wall(from), self.wall(to), at(to, self.top(to)), at(from, self.top(from))];
            surfaces.push(Surface::plain(ring, Tone::Ink));
        }
        for (band, tone) in seat.bands().iter().zip(tones(setup)) {
            let ring = band.mapped(Affine::FLIP_Y).rings().next().unwrap_or_default();
            surfaces.push(Surface::plain(ring, tone));
        }
        surfaces
    }

    /// The wires that go through the hole, layer by layer, so much below the axis.
    fn in_the_hole(&self, setup: &Setup, below: f64) -> Vec<Surface> {
        let reach = (self.seat.flank[0].0 - 8.0, self.seat.flank[1].0 + 8.0);
        let inside = setup.conductor.section.layers.len().saturating_sub(self.seat.spread.len());
        let layers = setup.conductor.section.layers.iter().take(inside);
        if inside == 0 {
            let all = level_band(below - self.seat.inner, below + self.seat.inner, reach);
            return tones(setup).take(1).map(|tone| Surface::plain(all.clone(), tone)).collect();
        }
        let bands = layers.zip(tones(setup)).flat_map(|(layer, tone)| {
            let (middle, half) = (layer.pitch_radius.mm(), layer.wire_diameter.mm() / 2.0);
            [-middle, middle]
                .map(|of| Surface::plain(level_band(below + of - half, below + of + half, reach), tone))
        });
        bands.collect()
    }
}

/// Tones of the layers of a conductor, told apart.
fn tones(setup: &Setup) -> impl Iterator<Item = Tone> {
    let group = setup.conductor.material.group;
    [Shade::Plain, Shade::Pale, Shade::Deep].into_iter().cycle().map(move |shade| wire_tone(group, shade))
}

fn level_band(top: f64, foot: f64, (from, to): (f64, f64)) -> Vec<Point> {
    vec![at(from, top), at(to, top), at(to, foot), at(from, foot)]
}

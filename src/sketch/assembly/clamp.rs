//! A parallel-groove clamp, cut across its conductors.

use super::dead_end::Measures;
use super::scaled_draft::{Look, ScaledDraft};
use super::setup::{Proportions, Setup};
use super::{Figure, Pose};
use crate::catalogue::{Conductor, Role};
use crate::sketch::conductor::{Subject, add_cut_surfaces, cut_surfaces};
use crate::sketch::outline::{Outline, arc};
use crate::sketch::plane::{Affine, Point, at};
use std::f64::consts::PI;

/// The sizes of a clamp, in millimetres: the halves part at y = 0, the bolt stands at x = 0.
#[derive(Debug, Clone)]
pub(crate) struct Clamp {
    lower: Look,
    upper: Look,
    bolt: Option<Look>,
    shank: f64,
    /// Radii of the two conductors, and x of their middles.
    pub grooves: [(f64, f64); 2],
    gap: f64,
    wall: f64,
}

impl Clamp {
    /// Records have no geometry of clamps: everything but the conductors is proportion.
    pub fn of(setup: &Setup) -> Option<Self> {
        let (lower, _) = setup.first(&[Role::Body])?;
        let (upper, _) = setup.first(&[Role::Keeper]).unwrap_or((lower, setup.parts[lower.item]));
        let bolt = setup.first(&[Role::Bolt, Role::Screw]).map(|found| found.0);
        let radii = [setup.fitting.conductors.first(), setup.fitting.conductors.last()].map(|conductor| {
            conductor.map_or(5.0, |conductor| conductor.section.overall_diameter.mm() / 2.0)
        });
        let shank = setup.thread().map_or(0.5 * radii[0].max(radii[1]), |thread| thread / 2.0);
        let wall = 0.55 * radii[0].max(radii[1]) + 1.5;
        let away = |radius: f64| shank + radius + 0.7 * wall;
        Some(Self {
            lower,
            upper,
            bolt,
            shank,
            grooves: [(-away(radii[0]), radii[0]), (away(radii[1]), radii[1])],
            gap: 0.22 * radii[0].min(radii[1]),
            wall,
        })
    }

    /// One half: below (+1) or above (−1) the parting plane.
    pub fn half(&self, side: f64) -> Outline {
        let [(left, a), (right, b)] = self.grooves;
        let (face, back) = (self.gap / 2.0, a.max(b) + self.wall);
        let (start, end) = (left - a - self.wall, right + b + self.wall);
        let mut points = vec![at(start, face)];
        for (x, radius) in self.grooves {
            let lift = (face / radius).asin();
            points.extend(arc(at(x, 0.0), radius, PI - lift, lift, 0.02));
        }
        points.extend([
            at(end, face),
            at(end, 0.7 * back),
            at(end - 0.3 * back, back),
            at(start + 0.3 * back, back),
            at(start, 0.7 * back),
        ]);
        Outline::new(points.into_iter().map(|point| at(point.x, side * point.y)).collect())
    }

    fn back(&self) -> f64 {
        self.grooves[0].1.max(self.grooves[1].1) + self.wall
    }

    fn draw_bolt(&self, scaled: &mut ScaledDraft, setup: &Setup, pose: Pose) {
        let (shank, back) = (self.shank, self.back());
        let bar = |half: f64, top: f64, bottom: f64| {
            let lift = pose.conductor + pose.closing;
            Outline::of(&[(-half, top), (half, top), (half, bottom), (-half, bottom)])
                .mapped(Affine::translate((0.0, lift)))
        };
        let Some(look) = self.bolt else { return };
        let nut = setup.first(&[Role::Nut]).map_or(look, |found| found.0);
        scaled.view(look, &bar(shank, -back - 2.1 * shank, back));
        scaled.view(look, &bar(1.75 * shank, back, back + 1.3 * shank));
        scaled.view(nut, &bar(1.75 * shank, -back - 1.6 * shank, -back));
    }
}

impl Figure for Clamp {
    fn draw(&self, scaled: &mut ScaledDraft, setup: &Setup, pose: Pose) {
        let lifted = |side: f64, by: f64| self.half(side).mapped(Affine::translate((0.0, side * by)));
        scaled.cut(self.lower, &lifted(1.0, pose.conductor));
        scaled.cut(self.upper, &lifted(-1.0, pose.cone));
        self.draw_bolt(scaled, setup, pose);
        let conductors = [setup.fitting.conductors.first(), setup.fitting.conductors.last()];
        for (conductor, (x, _)) in conductors.into_iter().flatten().zip(self.grooves) {
            draw_conductor(scaled, conductor, at(x, 0.0));
        }
        let reach = self.back() + 2.3 * self.shank;
        scaled.axis(at(0.0, -reach), at(0.0, reach - 0.8 * self.shank));
    }

    fn measures(&self, _: &Setup) -> Option<Measures> {
        None
    }

    fn proportions(&self) -> Proportions {
        Proportions { assumed: true, unsound: false }
    }

    fn rear(&self, _: &Setup) -> f64 {
        self.grooves[1].0 + self.grooves[1].1
    }

    fn gripping_length(&self) -> f64 {
        self.shank
    }
}

fn draw_conductor(scaled: &mut ScaledDraft, conductor: &Conductor, middle: Point) {
    let surfaces = cut_surfaces(&Subject::of(conductor));
    let scale = scaled.scale().0;
    add_cut_surfaces(
        &mut scaled.draft,
        &surfaces,
        Affine::scale(scale) * Affine::translate(middle.to_vec2()),
        scale,
    );
}

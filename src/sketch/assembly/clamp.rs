//! A clamp of two halves, cut across its conductors: two side by side with bolts between them, or one between bolts.

use super::dead_end::Measures;
use super::scaled_draft::{Look, ScaledDraft};
use super::setup::{Proportions, Setup};
use super::{Figure, Pose};
use crate::catalogue::{Conductor, Family, Role};
use crate::sketch::conductor::{Subject, add_cut_surfaces, cut_surfaces};
use crate::sketch::outline::{Outline, arc};
use crate::sketch::plane::{Affine, Point, at};
use std::f64::consts::PI;

/// The sizes of a clamp, in millimetres: the halves part at y = 0, its middle is at x = 0.
#[derive(Debug, Clone)]
pub(crate) struct Clamp {
    lower: Look,
    upper: Look,
    bolt: Option<Look>,
    shank: f64,
    /// x of the conductors' middles, and their radii.
    pub grooves: Vec<(f64, f64)>,
    /// x of the bolts that are seen.
    bolts: Vec<f64>,
    gap: f64,
    wall: f64,
}

impl Clamp {
    /// Records have no geometry of clamps: everything but the conductors is proportion.
    pub fn of(setup: &Setup) -> Option<Self> {
        let (lower, _) = setup.first(&[Role::Body])?;
        let (upper, _) = setup.first(&[Role::Keeper]).unwrap_or((lower, setup.parts[lower.item]));
        let bolt = setup.first(&[Role::Bolt, Role::Screw]).map(|found| found.0);
        let radius = |conductor: &Conductor| conductor.section.overall_diameter.mm() / 2.0;
        let radii: Vec<f64> = held(setup).iter().map(|held| radius(held)).collect();
        let most = radii.iter().copied().fold(0.0, f64::max);
        let least = radii.iter().copied().fold(f64::INFINITY, f64::min);
        let shank = setup.thread().map_or(0.5 * most, |thread| thread / 2.0);
        let wall = 0.55 * most + 1.5;
        let away = |radius: f64| shank + radius + 0.7 * wall;
        let (grooves, bolts) = match radii[..] {
            [left, right] => (vec![(-away(left), left), (away(right), right)], vec![0.0]),
            [only] => (vec![(0.0, only)], vec![-away(only), away(only)]),
            _ => return None,
        };
        Some(Self { lower, upper, bolt, shank, grooves, bolts, gap: 0.22 * least, wall })
    }

    /// One half: below (+1) or above (−1) the parting plane.
    pub fn half(&self, side: f64) -> Outline {
        let (face, back) = (self.gap / 2.0, self.back());
        let (start, end) = self.ends();
        let mut points = vec![at(start, face)];
        for &(x, radius) in &self.grooves {
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
        self.grooves.iter().map(|groove| groove.1).fold(0.0, f64::max) + self.wall
    }

    /// x of its left and right ends.
    fn ends(&self) -> (f64, f64) {
        let wide = |(x, radius): &(f64, f64)| (x - radius - self.wall, x + radius + self.wall);
        let bolts = self
            .bolts
            .iter()
            .map(|x| (x - 1.75 * self.shank - 0.5 * self.wall, x + 1.75 * self.shank + 0.5 * self.wall));
        let all = self.grooves.iter().map(wide).chain(bolts);
        all.fold((0.0, 0.0), |sum: (f64, f64), (left, right)| (sum.0.min(left), sum.1.max(right)))
    }

    fn draw_bolt(&self, scaled: &mut ScaledDraft, setup: &Setup, pose: Pose) {
        let (shank, back) = (self.shank, self.back());
        let Some(look) = self.bolt else { return };
        let nut = setup.first(&[Role::Nut]).map_or(look, |found| found.0);
        for &x in &self.bolts {
            let bar = |half: f64, top: f64, bottom: f64| {
                let lift = pose.conductor + pose.closing;
                Outline::of(&[(-half, top), (half, top), (half, bottom), (-half, bottom)])
                    .mapped(Affine::translate((x, lift)))
            };
            scaled.view(look, &bar(shank, -back - 2.1 * shank, back));
            scaled.view(look, &bar(1.75 * shank, back, back + 1.3 * shank));
            scaled.view(nut, &bar(1.75 * shank, -back - 1.6 * shank, -back));
        }
    }
}

impl Figure for Clamp {
    fn draw(&self, scaled: &mut ScaledDraft, setup: &Setup, pose: Pose) {
        let lifted = |side: f64, by: f64| self.half(side).mapped(Affine::translate((0.0, side * by)));
        scaled.cut(self.lower, &lifted(1.0, pose.conductor));
        scaled.cut(self.upper, &lifted(-1.0, pose.cone));
        self.draw_bolt(scaled, setup, pose);
        for (conductor, &(x, _)) in held(setup).into_iter().zip(&self.grooves) {
            draw_conductor(scaled, conductor, at(x, 0.0));
        }
        let reach = self.back() + 2.3 * self.shank;
        for &x in &self.bolts {
            scaled.axis(at(x, -reach), at(x, reach - 0.8 * self.shank));
        }
    }

    fn measures(&self, _: &Setup) -> Option<Measures> {
        None
    }

    fn proportions(&self) -> Proportions {
        Proportions { assumed: true, unsound: false }
    }

    fn rear(&self, _: &Setup) -> f64 {
        self.ends().1
    }

    fn gripping_length(&self) -> f64 {
        self.shank
    }
}

/// What lies in the grooves: in one of two, the same twice where the record names one conductor.
fn held<'a>(setup: &Setup<'a>) -> Vec<&'a Conductor> {
    let conductors = &setup.fitting.conductors;
    let second = match setup.fitting.family {
        Family::ParallelGroove => conductors.last(),
        _ => conductors.get(1),
    };
    conductors.first().into_iter().chain(second).map(|conductor| &**conductor).collect()
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

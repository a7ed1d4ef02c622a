//! A rope laid round a thimble, its two legs held by a ferrule or by rope grips.

use super::band::{band, beside};
use super::dead_end::{self, Measures};
use super::scaled_draft::{Look, ScaledDraft};
use super::setup::{Proportions, Setup};
use super::{Figure, Pose, strand};
use crate::catalogue::Role;
use crate::grip::{Geometry, RopeGrip};
use crate::sketch::outline::{Outline, arc};
use crate::sketch::plane::{Affine, Point, at, unit};
use crate::units::Length;
use std::cmp::Ordering;

/// The sizes of a rope eye, in millimetres. The bow's middle is the origin; the line lies to the left.
#[derive(Debug, Clone)]
pub(crate) struct RopeEye {
    proportions: Proportions,
    thimble: Look,
    /// Diameter of the rope.
    pub rope: f64,
    /// Clear radius of the eye.
    inside: f64,
    /// Thickness of the thimble under the rope.
    pub shell: f64,
    /// x where the two legs come together.
    pub throat: f64,
    holder: Option<Holder>,
    /// x of the tail's end.
    tail_end: f64,
    /// x from which the tail is measured.
    tail_from: f64,
}

/// What holds the two legs together.
#[derive(Debug, Clone)]
enum Holder {
    /// A pressed ferrule: x of its ends, half its height.
    Ferrule { look: Look, from: f64, to: f64, half: f64 },
    /// Rope grips at these places.
    Grips { look: Look, places: Vec<f64> },
}

impl RopeEye {
    /// From the records' geometry.
    pub fn of(setup: &Setup) -> Option<Self> {
        let (look, _) = setup.first(&[Role::Thimble])?;
        let recorded =
            setup.geometry(
                |geometry| if let Geometry::Thimble(thimble) = geometry { Some(thimble) } else { None },
            );
        let recorded = recorded.map(|found| found.1);
        let mut known = Proportions::default();
        let rope = setup.diameter();
        let inside = known.length(recorded.and_then(|thimble| thimble.inside_width), 3.0 * rope) / 2.0;
        let length = known.length(recorded.and_then(|thimble| thimble.inside_length), 5.4 * rope);
        let shell = 0.28 * rope;
        let throat = (inside - length - 0.9 * rope).min(-1.3 * inside);
        let holder = holder(setup, &mut known, rope, throat);
        let (near, far) = match &holder {
            Some(Holder::Ferrule { from, .. }) => (*from, *from),
            Some(Holder::Grips { places, .. }) => {
                (throat, places.last().map_or(throat, |last| last - 0.9 * rope))
            }
            None => (throat, throat),
        };
        let tail = setup.fitting.tail.map_or(1.2 * rope, Length::mm);
        let from = if near - tail < far { near } else { far };
        Some(Self {
            proportions: known,
            thimble: look,
            rope,
            inside,
            shell,
            throat,
            holder,
            tail_end: from - tail,
            tail_from: from,
        })
    }

    /// The middle of the rope from the throat round the bow and back, tangent to the bow.
    pub fn path(&self) -> Vec<Point> {
        let radius = self.inside + self.shell + self.rope / 2.0;
        let leg = at(self.throat, -self.rope / 2.0);
        // The tangent from the leg's end touches the bow this far round from the leg's direction.
        let towards = leg.to_vec2().angle();
        let touch = towards + (radius / leg.to_vec2().length()).min(1.0).acos();
        let bow = arc(at(0.0, 0.0), radius, touch, -touch, super::axial::SAG);
        let mut path = vec![leg];
        path.extend(bow);
        path.push(at(leg.x, -leg.y));
        path
    }

    /// The thimble under the rope, between the legs.
    pub fn thimble(&self) -> Outline {
        let middle = self.rope / 2.0 + self.shell / 2.0;
        let path = self.path();
        let inner = &path[1..path.len() - 1];
        let ends = (path[0].lerp(path[1], 0.38), path[path.len() - 1].lerp(path[path.len() - 2], 0.38));
        let mut line = vec![ends.0];
        line.extend(inner);
        line.push(ends.1);
        band(&beside(&line, middle), self.shell / 2.0)
    }
}

fn holder(setup: &Setup, known: &mut Proportions, rope: f64, throat: f64) -> Option<Holder> {
    let near = throat - 0.35 * rope;
    if let Some((look, _)) = setup.first(&[Role::Ferrule, Role::Sleeve]) {
        let ferrule = setup.geometry(|geometry| match geometry {
            Geometry::Ferrule(ferrule) | Geometry::Sleeve(ferrule) => Some(ferrule),
            _ => None,
        });
        let ferrule = ferrule.map(|found| found.1);
        let length = known.length(ferrule.and_then(|ferrule| ferrule.length), 4.2 * rope);
        let pressed = ferrule
            .and_then(|ferrule| ferrule.pressed)
            .map_or(0.0, |range| (range.least() + range.most()).mm() / 4.0);
        return Some(Holder::Ferrule { look, from: near - length, to: near, half: pressed.max(1.25 * rope) });
    }
    let (look, _) = setup.first(&[Role::RopeGrip])?;
    let grip =
        setup.geometry(|geometry| if let Geometry::RopeGrip(grip) = geometry { Some(grip) } else { None });
    let grip: Option<&RopeGrip> = grip.map(|found| found.1);
    let spacing = known.length(grip.and_then(|grip| grip.spacing), 6.0 * rope);
    let quantity = setup.fitting.items.get(look.item).map_or(1, |item| item.quantity).clamp(1, 12);
    let first = throat - 0.9 * rope;
    let places = (0..quantity).map(|index| first - f64::from(index) * spacing).collect();
    Some(Holder::Grips { look, places })
}

impl Figure for RopeEye {
    fn draw(&self, scaled: &mut ScaledDraft, setup: &Setup, pose: Pose) {
        let (rope, half) = (self.rope, self.rope / 2.0);
        let away = Affine::translate((pose.cone, 0.0));
        scaled.view(self.thimble, &self.thimble().mapped(away));
        let line = self.tail_end.min(self.tail_from) - dead_end::stub_length(scaled) - rope;
        let path = self.path();
        scaled.wire(&band(&path, half), strand::tone(setup.conductor));
        scaled.fine(lay_along(&path, half, scaled.object(0.9).max(0.5 * rope)));
        strand::stub_at(scaled, setup.conductor, (half, -half), (line, self.throat), strand::Sides::Both);
        strand::along_axis_at(
            scaled,
            setup.conductor,
            (half, half),
            (self.tail_end, self.throat),
            strand::Sides::Both,
        );
        match &self.holder {
            Some(Holder::Ferrule { look, from, to, half }) => {
                draw_ferrule(scaled, *look, (from - pose.closing, to - pose.closing), *half, rope);
            }
            Some(Holder::Grips { look, places }) => {
                let down = if pose.closing > 0.0 { 3.4 * rope } else { 0.0 };
                places.iter().for_each(|&x| draw_grip(scaled, *look, at(x, -down), rope));
            }
            None => {}
        }
        let pin = setup.first(&[Role::Pin, Role::Bolt]);
        if let Some((pin, _)) = pin {
            scaled.disc(pin, at(0.0, 0.0), 0.72 * self.inside);
        }
        scaled.axis(at(line, 0.0), at(self.inside + self.shell + rope, 0.0));
    }

    fn measures(&self, _: &Setup) -> Option<Measures> {
        let reach = self.inside + self.shell + self.rope;
        let reach = match &self.holder {
            Some(Holder::Grips { .. }) => reach.max(2.0 * self.rope),
            _ => reach,
        };
        Some(Measures {
            faces: None,
            insertion: None,
            tail: Some((self.tail_from, self.tail_end)),
            gap: None,
            edges: (-reach, reach),
        })
    }

    fn proportions(&self) -> Proportions {
        self.proportions
    }

    fn rear(&self, _: &Setup) -> f64 {
        self.inside + self.shell + self.rope
    }

    fn gripping_length(&self) -> f64 {
        2.0 * self.inside
    }
}

/// Above the axis cut open, so that the loaded leg is seen in it; below it seen from outside.
fn draw_ferrule(scaled: &mut ScaledDraft, look: Look, (from, to): (f64, f64), half: f64, rope: f64) {
    scaled.cut(look, &Outline::of(&[(from, -rope), (from, -half), (to, -half), (to, -rope)]));
    scaled.view(look, &Outline::of(&[(from, 0.0), (from, half), (to, half), (to, 0.0)]));
}

/// The saddle on the loaded leg, the bow on the tail, nuts on the saddle.
fn draw_grip(scaled: &mut ScaledDraft, look: Look, place: Point, rope: f64) {
    let bar = |left: f64, right: f64, top: f64, bottom: f64| {
        Outline::of(
            &[(left, top), (right, top), (right, bottom), (left, bottom)]
                .map(|(x, y)| (place.x + x, place.y + y * rope)),
        )
    };
    let r = rope;
    scaled.view(look, &bar(-0.22 * r, 0.22 * r, -2.0, 1.3));
    scaled.view(look, &bar(-0.75 * r, 0.75 * r, -1.35, -0.55));
    scaled.view(look, &bar(-0.5 * r, 0.5 * r, -1.85, -1.35));
}

/// Lay lines across a bent rope; one longer than any paper has none.
fn lay_along(path: &[Point], half: f64, pitch: f64) -> Vec<Vec<Point>> {
    let mut lines = Vec::new();
    let whole: f64 = path.windows(2).map(|pair| pair[0].distance(pair[1])).sum();
    // What is not finite is not less either.
    if !matches!((whole / pitch).partial_cmp(&strand::MOST_LAY_LINES), Some(Ordering::Less)) {
        return lines;
    }
    let mut left = pitch;
    for pair in path.windows(2) {
        let (way, long) = (unit(pair[1] - pair[0]), pair[0].distance(pair[1]));
        while left < long {
            let middle = pair[0] + way * left;
            let lean = way * (0.55 * half) + way.turn_90() * (0.96 * half);
            lines.push(vec![middle - lean, middle + lean]);
            left += pitch;
        }
        left -= long;
    }
    lines
}

//! A wedge dead-end: the wire along the straight wall, the wedge between it and the sloping one.

use super::dead_end::{self, Measures};
use super::scaled_draft::{Look, ScaledDraft};
use super::setup::{Proportions, Setup};
use super::strand::{Sides, along_axis_at, stub_at};
use super::{Figure, Pose};
use crate::catalogue::{Role, StampPlace};
use crate::grip::{BearsOn, Geometry, HeldConstruction, Wedge, WedgeBody};
use crate::sketch::outline::{Outline, arc};
use crate::sketch::plane::{Point, at};
use std::f64::consts::FRAC_PI_2;

/// The sizes of a wedge in its body, in millimetres. The mouth is at x = 0, the straight wall at y = 0
/// with the wire above it (negative y).
#[derive(Debug, Clone)]
pub(crate) struct WedgeSeat {
    proportions: Proportions,
    body: Look,
    wedge: Look,
    /// Thickness of the wire across the wedge.
    pub wire: f64,
    /// Which side of it is looked at.
    lies: Sides,
    pub mouth: f64,
    pub slope: f64,
    length: f64,
    wall: f64,
    /// x of the seated wedge's large face.
    seat: f64,
    /// Corners of the wedge: x of its small and large face, thickness there.
    pub small: (f64, f64),
    pub large: (f64, f64),
    end: f64,
    drawn_back: f64,
}

/// The wedge of a fitting, where it has one.
pub(crate) fn wedge<'a>(setup: &Setup<'a>) -> Option<(Look, &'a Wedge)> {
    setup.geometry(|geometry| if let Geometry::Wedge(wedge) = geometry { Some(wedge) } else { None })
}

impl WedgeSeat {
    /// From the records' geometry and the computed seat.
    pub fn of(setup: &Setup, pose: Pose) -> Option<Self> {
        let (look, wedge) = wedge(setup)?;
        let (body, _) = dead_end::body_of(setup)?;
        let found = setup
            .geometry(|geometry| if let Geometry::WedgeBody(body) = geometry { Some(body) } else { None });
        let recorded: Option<&WedgeBody> = found.map(|found| found.1);
        let mut known = Proportions::default();
        let wire = wire_thickness(setup, recorded);
        let taper = recorded.and_then(|body| body.taper).or(wedge.taper);
        let slope = known.slope(taper, 0.1);
        let length = known.length(wedge.length, 7.0 * wire);
        let thickness = known.length(wedge.thickness, wire + length * slope).max(length * slope + 0.5);
        let body_length =
            known.length(recorded.and_then(|body| body.length), 1.18 * length).max(0.5 * length);
        let mouth =
            known.length(recorded.and_then(|body| body.mouth), wire + thickness + 0.06 * length * slope);
        let travel = known.recorded(recorded.and_then(|body| body.travel)).unwrap_or(f64::INFINITY);
        let depth = ((mouth - thickness - wire) / slope).min(travel).max(-0.9 * length);
        let small_gap = mouth - body_length * slope;
        known.assumed |= small_gap < 0.2 * wire;
        let face = -depth + pose.cone;
        Some(Self {
            proportions: known,
            body,
            wedge: look,
            wire,
            lies: if recorded.and_then(|body| body.bears_on) == Some(BearsOn::Width) {
                Sides::Turned
            } else {
                Sides::Both
            },
            mouth,
            slope,
            length: body_length,
            wall: (0.22 * mouth).max(3.5),
            seat: -depth,
            small: (face - length, thickness - length * slope),
            large: (face, thickness),
            end: dead_end::conductor_end(setup, -body_length, -depth),
            drawn_back: pose.closing,
        })
    }

    /// Height of the sloping wall above the straight one.
    pub fn wall_at(&self, x: f64) -> f64 {
        (self.mouth + x * self.slope).max(0.15 * self.wire)
    }

    fn draw_body(&self, scaled: &mut ScaledDraft, setup: &Setup) {
        let (left, top, bottom) = (-self.length, -self.mouth - self.wall, self.wall);
        let inside = Outline::of(&[(left, 0.0), (left, -self.wall_at(left)), (0.0, -self.mouth), (0.0, 0.0)]);
        scaled.empty(&inside);
        scaled.cut(self.body, &Outline::of(&[(left, 0.0), (0.0, 0.0), (0.0, bottom), (left, bottom)]));
        let roof = [(left, -self.wall_at(left)), (0.0, -self.mouth)];
        let mut points = roof.to_vec();
        if self.bolt(setup).is_some() {
            let (near, far, foot) = self.lug();
            points.extend([(near, -self.mouth), (near, foot), (far, foot), (far, top)]);
        } else {
            points.push((0.0, top));
        }
        points.push((left, top));
        scaled.cut(self.body, &Outline::of(&points));
    }

    /// The lug that a closing bolt goes through: x of its faces, y of its foot.
    fn lug(&self) -> (f64, f64, f64) {
        let near = 0.12 * self.mouth + self.seat.max(0.0);
        (near, near + 0.42 * self.mouth, -self.wire - 0.06 * self.mouth)
    }

    fn bolt(&self, setup: &Setup) -> Option<Look> {
        setup.first(&[Role::Bolt, Role::Screw, Role::Nut]).map(|found| found.0)
    }

    fn bolt_radius(&self, setup: &Setup) -> f64 {
        setup.thread().map_or(0.25 * self.large.1, |thread| thread / 2.0).min(0.38 * self.large.1)
    }

    fn draw_bolt(&self, scaled: &mut ScaledDraft, setup: &Setup) {
        let Some(look) = self.bolt(setup) else { return };
        let (_, far, _) = self.lug();
        let (y, radius) = (-self.wire - self.large.1 / 2.0, self.bolt_radius(setup));
        let tip = self.seat.min(far - 1.0) + self.drawn_back;
        let head = far + 0.08 * self.mouth + self.drawn_back;
        let bar = |from: f64, to: f64, half: f64| {
            Outline::of(&[(from, y - half), (to, y - half), (to, y + half), (from, y + half)])
        };
        scaled.view(look, &bar(tip, head, radius));
        scaled.view(look, &bar(head, head + 1.1 * radius, 1.7 * radius));
    }

    /// x of the eye's middle, radius of its hole, half-width of its arm.
    fn eye(&self, setup: &Setup) -> (f64, f64, f64) {
        let hole = 0.24 * self.mouth;
        let arm = 0.5 * (self.mouth + 2.0 * self.wall) * 0.62;
        let behind = if self.bolt(setup).is_some() { self.lug().1 + 0.3 * self.mouth } else { self.seat };
        (behind.max(self.end).max(0.0) + hole + 0.3 * self.mouth, hole, arm)
    }

    /// The arm behind the wire's tail, with its eye on the line of pull.
    fn draw_arm(&self, scaled: &mut ScaledDraft, setup: &Setup) {
        let ((x, hole, arm), y) = (self.eye(setup), -self.wire / 2.0);
        let mut points = vec![at(-1.0, y + arm), at(-1.0, y - arm)];
        points.extend(arc(at(x, y), arm, -FRAC_PI_2, FRAC_PI_2, super::axial::SAG));
        scaled.view(self.body, &Outline::new(points));
        match setup.parts.iter().filter(|part| part.role == Role::Pin).count() {
            0 => scaled.hole(at(x, y), hole),
            _ => self.draw_eye_pin(scaled, setup, x, y, hole),
        }
    }

    /// A pin is the eye's, unless nothing else keeps the wedge: then it lies behind the wedge.
    fn draw_eye_pin(&self, scaled: &mut ScaledDraft, setup: &Setup, x: f64, y: f64, hole: f64) {
        match setup.first(&[Role::Pin]) {
            Some((pin, _)) if self.bolt(setup).is_some() => scaled.disc(pin, at(x, y), hole),
            _ => scaled.hole(at(x, y), hole),
        }
    }

    fn draw_keeping_pin(&self, scaled: &mut ScaledDraft, setup: &Setup) {
        if let Some((pin, _)) = setup.first(&[Role::Pin])
            && self.bolt(setup).is_none()
        {
            let radius = 0.16 * self.large.1;
            let x = self.seat + radius + 0.3 + self.drawn_back;
            scaled.disc(pin, at(x, -self.wire - 0.45 * self.large.1), radius);
        }
    }
}

impl Figure for WedgeSeat {
    fn draw(&self, scaled: &mut ScaledDraft, setup: &Setup, pose: Pose) {
        let radius = self.wire / 2.0;
        let apart = pose.conductor > 0.0;
        let line = -self.length - dead_end::stub_length(scaled) - if apart { 8.0 } else { 0.0 };
        self.draw_arm(scaled, setup);
        self.draw_body(scaled, setup);
        let end = self.end - pose.conductor;
        stub_at(scaled, setup.conductor, (radius, -radius), (line, end.min(-self.length)), self.lies);
        if end > -self.length {
            along_axis_at(scaled, setup.conductor, (radius, -radius), (-self.length, end), self.lies);
        }
        let (small, large, foot) = (self.small, self.large, -self.wire);
        scaled.cut(
            self.wedge,
            &Outline::of(&[
                (small.0, foot),
                (small.0, foot - small.1),
                (large.0, foot - large.1),
                (large.0, foot),
            ]),
        );
        let wide = scaled.paint_width();
        let top = foot - large.1 + wide * self.slope;
        scaled.paint(
            self.wedge,
            &Outline::of(&[
                (large.0 - wide, foot),
                (large.0 - wide, top),
                (large.0, foot - large.1),
                (large.0, foot),
            ]),
        );
        self.draw_bolt(scaled, setup);
        self.draw_keeping_pin(scaled, setup);
        if pose == Pose::default() && setup.fitting.slip_mark == Some(true) {
            dead_end::slip_mark_at(scaled, -self.length, (radius, -radius));
        }
    }

    fn measures(&self, setup: &Setup) -> Option<Measures> {
        let (_, _, arm) = self.eye(setup);
        let y = -self.wire / 2.0;
        Some(Measures {
            faces: Some((at(0.0, -self.mouth), at(self.large.0, -self.wire - self.large.1))),
            insertion: Some((-self.length, self.end)),
            tail: Measures::tail_before(setup, self.end),
            gap: None,
            edges: ((-self.mouth - self.wall).min(y - arm), self.wall.max(y + arm)),
        })
    }

    fn proportions(&self) -> Proportions {
        self.proportions
    }

    fn stamped(&self, on: StampPlace) -> Option<Point> {
        let y = -self.wire - self.large.1 / 2.0;
        (on == StampPlace::ThickEnd).then(|| at(self.large.0, y))
    }

    fn rear(&self, setup: &Setup) -> f64 {
        let (x, _, arm) = self.eye(setup);
        x + arm
    }

    fn gripping_length(&self) -> f64 {
        self.large.0 - self.small.0
    }
}

/// How thick the conductor is across the wedge.
fn wire_thickness(setup: &Setup, body: Option<&WedgeBody>) -> f64 {
    match (setup.held().construction, body.and_then(|body| body.bears_on)) {
        (HeldConstruction::Grooved { width, .. }, Some(BearsOn::Width)) => width.mm(),
        (HeldConstruction::Grooved { height, .. }, _) => height.mm(),
        _ => setup.diameter(),
    }
}

//! A wedge dead-end: the wire along the straight wall, the wedge between it and the sloping one.

use super::dead_end::{self, Measures};
use super::scaled_draft::{Look, ScaledDraft};
use super::setup::{Proportions, Setup};
use super::strand::{Sides, along_axis_at, stub_at};
use super::{Figure, Pose};
use crate::catalogue::{Role, StampPlace};
use crate::grip::{BearsOn, Geometry, HeldConstruction, Wedge, WedgeBody};
use crate::sketch::outline::{Outline, arc};
use crate::sketch::plane::{Line, at, within};
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
        let roof = [(left, -self.wall_at(left)), (0.0, -self.mouth)];
        scaled.empty(&Outline::of(&[(left, 0.0), roof[0], roof[1], (0.0, 0.0)]));
        scaled.cut(self.body, &Outline::of(&[(left, 0.0), (0.0, 0.0), (0.0, bottom), (left, bottom)]));
        // Both walls end at the face: a rule that is laid on the drawing finds it as on the fitting.
        scaled.cut(self.body, &Outline::of(&[roof[0], roof[1], (0.0, top), (left, top)]));
        if let Some(bolt) = Bolt::of(self, setup) {
            self.draw_bridge(scaled, &bolt);
        }
    }

    /// The bridge between the body's arms that a closing bolt is screwed through.
    fn draw_bridge(&self, scaled: &mut ScaledDraft, bolt: &Bolt) {
        let ((near, far), foot) = (bolt.bridge, -self.wire - 0.06 * self.mouth);
        let top = -self.mouth - self.wall;
        scaled.cut(self.body, &Outline::of(&[(near, top), (far, top), (far, foot), (near, foot)]));
        scaled.empty(&Outline::of(&bolt.bar(near, far, bolt.shank)));
        for side in [-bolt.shank, bolt.shank] {
            scaled.edge(&[at(near, bolt.y + side), at(far, bolt.y + side)]);
        }
    }

    fn draw_bolt(&self, scaled: &mut ScaledDraft, bolt: &Bolt) {
        let (tip, head) = (bolt.tip + self.drawn_back, bolt.head.0 + self.drawn_back);
        scaled.view(bolt.look, &Outline::of(&bolt.bar(tip, head, bolt.shank)));
        let end = bolt.head.1 + self.drawn_back;
        scaled.view(bolt.look, &Outline::of(&bolt.bar(head, end, bolt.head_reach)));
    }

    /// x of the eye's middle, radius of its hole, half-width of its arm.
    fn eye(&self, setup: &Setup) -> (f64, f64, f64) {
        let hole = 0.24 * self.mouth;
        let arm = 0.5 * (self.mouth + 2.0 * self.wall) * 0.62;
        let behind = Bolt::of(self, setup).map_or(self.seat, |bolt| bolt.head.1);
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
            Some((pin, _)) if bolt_of(setup).is_some() => scaled.disc(pin, at(x, y), hole),
            _ => scaled.hole(at(x, y), hole),
        }
    }

    fn draw_keeping_pin(&self, scaled: &mut ScaledDraft, setup: &Setup) {
        if let Some((pin, _)) = setup.first(&[Role::Pin])
            && bolt_of(setup).is_none()
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
        if let Some(bolt) = Bolt::of(self, setup) {
            self.draw_bolt(scaled, &bolt);
        }
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

    fn stamped(&self, on: StampPlace) -> Vec<Line> {
        let (x, foot) = (self.large.0, -self.wire);
        let face = Line::new(at(x, foot), at(x, foot - self.large.1));
        (on == StampPlace::ThickEnd).then_some(face).into_iter().collect()
    }

    fn rear(&self, setup: &Setup) -> f64 {
        let (x, _, arm) = self.eye(setup);
        x + arm
    }

    fn gripping_length(&self) -> f64 {
        self.large.0 - self.small.0
    }
}

/// The bolt that keeps a wedge, seated.
struct Bolt {
    look: Look,
    /// Height of its axis: the middle of the wedge's large face.
    y: f64,
    /// Radius of its shank.
    shank: f64,
    /// Half of its head across the flats.
    head_reach: f64,
    /// x of its tip, on the wedge.
    tip: f64,
    /// x of the faces of the bridge that it goes through.
    bridge: (f64, f64),
    /// x where its head starts and ends.
    head: (f64, f64),
}

impl Bolt {
    fn of(seat: &WedgeSeat, setup: &Setup) -> Option<Self> {
        let look = bolt_of(setup)?;
        let thickness = seat.large.1;
        let y = -seat.wire - thickness / 2.0;
        let shank = setup.thread().map_or(0.25 * thickness, |thread| thread / 2.0).min(0.46 * thickness);
        let spanner = setup.spanner().map_or(1.7 * shank, |size| size / 2.0);
        let head_reach = within(spanner, 1.3 * shank, 2.2 * shank);
        // A clear gap: nobody takes the bridge for the face that a wedge's depth is measured from.
        let near = 0.45 * seat.mouth + seat.seat.max(0.0);
        let far = near + 0.42 * seat.mouth;
        let behind_bridge = far + 0.08 * seat.mouth;
        let is_clear = y + head_reach <= -seat.wire - 0.02 * seat.mouth;
        // A head that is wider than the wedge has room behind the wire's end alone.
        let head = if is_clear { behind_bridge } else { behind_bridge.max(seat.end + 0.04 * seat.mouth) };
        Some(Self {
            look,
            y,
            shank,
            head_reach,
            tip: seat.seat,
            bridge: (near, far),
            head: (head, head + 1.1 * shank),
        })
    }

    /// The corners of a length of it.
    fn bar(&self, from: f64, to: f64, half: f64) -> [(f64, f64); 4] {
        [(from, self.y - half), (to, self.y - half), (to, self.y + half), (from, self.y + half)]
    }
}

/// The part that keeps the wedge where one closes the body.
fn bolt_of(setup: &Setup) -> Option<Look> {
    setup.first(&[Role::Bolt, Role::Screw, Role::Nut]).map(|found| found.0)
}

/// How thick the conductor is across the wedge.
fn wire_thickness(setup: &Setup, body: Option<&WedgeBody>) -> f64 {
    match (setup.held().construction, body.and_then(|body| body.bears_on)) {
        (HeldConstruction::Grooved { width, .. }, Some(BearsOn::Width)) => width.mm(),
        (HeldConstruction::Grooved { height, .. }, _) => height.mm(),
        _ => setup.diameter(),
    }
}

//! A cone dead-end whose cone is driven between the wires.

use super::axial::Axial;
use super::band::band;
use super::dead_end::{self, Measures};
use super::named::thick_end;
use super::scaled_draft::{Look, ScaledDraft, upper, wire_tone};
use super::setup::{Proportions, Setup};
use super::strand::{Sides, along_axis, stub};
use super::{Figure, Pose};
use crate::catalogue::{StampPlace, StandOutFrom};
use crate::grip::{Body, Geometry, Socket, SpreadingCone};
use crate::section::Layer;
use crate::sketch::appearance::Shade;
use crate::sketch::outline::Outline;
use crate::sketch::plane::{Affine, Line, Vec2, at, within};
use crate::units::Length;

/// The sizes of a spreading cone in its socket, in millimetres.
#[derive(Debug, Clone)]
pub(crate) struct SpreadingSeat {
    pub axial: Axial,
    pub proportions: Proportions,
    body: Look,
    socket: Option<OwnSocket>,
    cone: Look,
    radius: f64,
    /// Radius of the hole that the inner wires go through.
    pub hole: f64,
    /// Corners of the cone's flank: small end, large end, as (x, radius).
    pub flank: [(f64, f64); 2],
    /// Radius of the socket's taper at x = 0, and its slope.
    pub taper: (f64, f64),
    /// Radius of the wires that go through the cone.
    pub inner: f64,
    /// Layers that lie round the cone, from inside out: pitch radius, wire diameter.
    pub spread: Vec<(f64, f64)>,
}

/// A socket that is a part of its own.
#[derive(Debug, Clone)]
struct OwnSocket {
    look: Look,
    taper: Vec<(f64, f64)>,
    outside: f64,
}

/// The spreading cone of a fitting, where it has one.
pub(crate) fn spreading_cone<'a>(setup: &Setup<'a>) -> Option<(Look, &'a SpreadingCone)> {
    setup.geometry(|geometry| if let Geometry::SpreadingCone(cone) = geometry { Some(cone) } else { None })
}

impl SpreadingSeat {
    /// From the records' geometry and the computed seat.
    pub fn of(setup: &Setup, pose: Pose) -> Option<Self> {
        let (cone, geometry) = spreading_cone(setup)?;
        let (body, _) = dead_end::body_of(setup)?;
        let found = setup
            .geometry(|geometry| if let Geometry::Socket(socket) = geometry { Some(socket) } else { None });
        let socket: Option<&Socket> = found.map(|found| found.1);
        let mut known = Proportions::default();
        let radius = setup.diameter() / 2.0;
        let angle = socket.and_then(|socket| socket.half_angle).or(geometry.half_angle);
        let slope = known.slope(angle, 0.14);
        let (inner, spread) = split(setup, geometry.hole_diameter);
        let hole = known.length(geometry.hole_diameter, 2.0 * inner + 0.3) / 2.0;
        let length = known.length(geometry.length, 3.2 * radius);
        let large = known.length(geometry.large_diameter, 2.0 * (hole + 1.0 + length * slope)) / 2.0;
        let large = large.max(hole + 0.3 + 0.2 * length * slope);
        let length = length.min((large - hole - 0.15) / slope);
        let layers: f64 = spread.iter().map(|layer| layer.1).sum();
        let fits = large + layers / slope.atan().cos() + 0.08 * length * slope;
        let mouth = known.length(socket.and_then(|socket| socket.large_diameter), 2.0 * fits) / 2.0;
        let depth_of_taper = known.length(socket.and_then(|socket| socket.length), 1.5 * length);
        let depth = depth(setup, socket, (mouth, large, layers), slope);
        let face = -depth + pose.cone;
        let throat = known.recorded(socket.and_then(|socket| socket.throat_diameter)).unwrap_or(0.0) / 2.0;
        let throat = throat.max(radius + 0.1);
        let (entry, face_of_body) =
            ends_of_body(setup, found.map(|found| found.0), &mut known, depth_of_taper);
        let small = (mouth - depth_of_taper * slope).max(throat);
        let taper = vec![(-depth_of_taper, small), (0.0, mouth)];
        let own = found.filter(|(look, _)| look.item != body.item);
        let shell = mouth + (0.14 * mouth).max(2.2);
        let bore = match own {
            Some(_) => vec![
                (entry, throat + 0.4),
                (-depth_of_taper, throat + 0.4),
                (-depth_of_taper, shell),
                (face_of_body, shell),
            ],
            None => [vec![(entry, throat)], taper.clone()].concat(),
        };
        let inside = if own.is_some() { shell } else { mouth };
        let axial = Axial {
            entry,
            face: face_of_body,
            bore,
            outer: outer(setup, inside),
            push: (-depth, 0.92 * large),
            hole: inner + 0.5,
            free: inside + 0.8,
            end: end(setup, entry, depth),
            drawn_back: pose.closing,
        };
        let socket = own.map(|(look, _)| OwnSocket { look, taper, outside: shell });
        let flank = [(face - length, large - length * slope), (face, large)];
        Some(Self {
            axial,
            proportions: known,
            body,
            socket,
            cone,
            radius,
            hole,
            flank,
            taper: (mouth, slope),
            inner,
            spread,
        })
    }

    /// Inner wires through the cone, outer ones bent along its flank.
    fn draw_wires(&self, scaled: &mut ScaledDraft, setup: &Setup) {
        let group = setup.conductor.material.group;
        along_axis(scaled, setup.conductor, self.inner, (self.axial.entry, self.axial.end), Sides::Upper);
        for (index, band) in self.bands().iter().enumerate() {
            let shade = [Shade::Plain, Shade::Pale, Shade::Deep][index % 3];
            scaled.wire(&band.mapped(Affine::FLIP_Y), wire_tone(group, shade));
        }
    }

    /// The outer wires from inside out, above the axis with y upward.
    pub fn bands(&self) -> Vec<Outline> {
        let (slope, [small, large]) = (self.taper.1.atan(), self.flank);
        let (along, normal) = (Vec2::from_angle(slope), Vec2::from_angle(slope).turn_90());
        let mut lift = 0.0;
        let mut bands = Vec::new();
        for &(pitch, diameter) in &self.spread {
            let off = lift + diameter / 2.0;
            lift += diameter;
            let foot = at(large.0, large.1) + normal * off;
            let back = (foot.y - pitch) / slope.sin();
            let bend =
                within((foot - along * back).x, self.axial.entry + 1.0, small.0 + 0.9 * (large.0 - small.0));
            let tail = foot + along * 1.2;
            bands.push(band(&[at(self.axial.entry, pitch), at(bend, pitch), tail], diameter / 2.0));
        }
        bands
    }
}

impl Figure for SpreadingSeat {
    fn draw(&self, scaled: &mut ScaledDraft, setup: &Setup, pose: Pose) {
        let apart = pose.conductor > 0.0;
        let line = self.axial.entry - dead_end::stub_length(scaled) - if apart { 8.0 } else { 0.0 };
        self.axial.draw_behind(scaled, setup, self.body);
        if let Some(OwnSocket { look, taper, outside }) = &self.socket {
            let mut points = vec![(taper[0].0, *outside)];
            points.extend(taper);
            points.push((0.0, *outside));
            scaled.cut(*look, &upper(&points));
        }
        self.axial.draw_closing(scaled, setup);
        if !apart {
            self.draw_wires(scaled, setup);
        }
        let [small, large] = self.flank;
        scaled.cut(self.cone, &upper(&[(small.0, self.hole), small, large, (large.0, self.hole)]));
        let wide = scaled.paint_width().min(0.3 * (large.0 - small.0));
        let foot = (large.0 - wide, large.1 - wide * (large.1 - small.1) / (large.0 - small.0));
        scaled.paint(self.cone, &upper(&[(foot.0, self.hole), foot, large, (large.0, self.hole)]));
        let end = (self.axial.end - pose.conductor).min(self.axial.entry);
        stub(scaled, setup.conductor, self.radius, (line, end));
        self.axial.draw_body_outside(scaled, setup, self.body);
        if large.0 > self.axial.face + 0.5 {
            let from = small.0.max(self.axial.face);
            let radius = small.1.max(large.1 - (large.0 - from) * self.taper.1);
            scaled.outside(self.cone, &[(from, 0.0), (from, radius), large, (large.0, 0.0)]);
        }
        self.axial.draw_ring_outside(scaled, setup, self.body);
        self.axial.draw_in_front(scaled, setup, self.body);
        if pose == Pose::default() && setup.fitting.slip_mark == Some(true) {
            dead_end::slip_mark(scaled, self.axial.entry, self.radius);
        }
        scaled.axis(at(line, 0.0), at(self.axial.rear(setup), 0.0));
    }

    fn measures(&self, setup: &Setup) -> Option<Measures> {
        Some(self.axial.measures(setup, self.flank[1]))
    }

    fn proportions(&self) -> Proportions {
        self.proportions
    }

    /// The face of the half that is cut; its flank lies in the body.
    fn stamped(&self, on: StampPlace) -> Vec<Line> {
        thick_end(on, self.flank[1], self.hole)
    }

    fn rear(&self, setup: &Setup) -> f64 {
        self.axial.rear(setup)
    }

    fn gripping_length(&self) -> f64 {
        self.flank[1].0 - self.flank[0].0
    }
}

/// Radius of the wires that go through the cone, and the layers that stay outside.
fn split(setup: &Setup, hole: Option<Length>) -> (f64, Vec<(f64, f64)>) {
    let layers = &setup.conductor.section.layers;
    let outer = |layer: &Layer| layer.pitch_radius.mm() + layer.wire_diameter.mm() / 2.0;
    let through = setup.outcome.as_ref().and_then(|outcome| outcome.wires_through_hole);
    let mut counted = 0;
    let inside = |layer: &&Layer| {
        counted += layer.wires;
        match (through, hole) {
            (Some(through), _) => counted <= through,
            (None, Some(hole)) => 2.0 * outer(layer) <= hole.mm() + 1e-6,
            (None, None) => counted <= 7,
        }
    };
    let inner = layers.iter().take_while(inside).count().max(1);
    let radius = layers.get(inner - 1).map_or(setup.diameter() / 4.0, outer);
    let spread = layers.iter().skip(inner).map(|layer| (layer.pitch_radius.mm(), layer.wire_diameter.mm()));
    (radius, spread.collect())
}

/// Depth of the cone's large face below the socket's: as computed, but no deeper than the travel.
fn depth(setup: &Setup, socket: Option<&Socket>, (mouth, large, layers): (f64, f64, f64), slope: f64) -> f64 {
    let computed = setup.outcome.as_ref().and_then(|outcome| outcome.depth).map(Length::mm);
    let depth = computed.unwrap_or((mouth - large - layers / slope.atan().cos()) / slope);
    let travel = socket.and_then(|socket| socket.travel).map_or(f64::INFINITY, Length::mm);
    depth.min(travel)
}

/// x of the face that the conductor comes in at and of the body's rear face: as far apart as the body is long, where that
/// is recorded.
///
/// Records say how long a body is and how far the conductor goes in, not where the socket lies. It lies so that the
/// conductor's end shows behind it; the rest of the body is behind it, too.
fn ends_of_body(setup: &Setup, socket: Option<Look>, known: &mut Proportions, taper: f64) -> (f64, f64) {
    let length = known.recorded(body_round(setup, socket).and_then(|body| body.length));
    let nearest = -taper - 6.0;
    let Some(length) = length else { return (entry(setup, taper).min(nearest), 0.0) };
    // A body that is shorter than its socket can't be drawn as it is recorded.
    known.assumed |= length < taper + 1.0;
    let longest = -length.max(taper + 1.0);
    let measured = setup.fitting.stand_out.as_ref().is_some_and(|out| out.from == StandOutFrom::ConeFace);
    if measured || setup.fitting.insertion.is_none() {
        return (longest, 0.0);
    }
    let entry = entry(setup, taper).min(nearest).max(longest);
    (entry, entry - longest)
}

/// x of the face that the conductor comes in at: so that its end shows behind the socket.
fn entry(setup: &Setup, taper: f64) -> f64 {
    let recorded = setup.fitting.insertion.map(|insertion| 9.0 - insertion.mm());
    recorded.unwrap_or(-1.45 * taper)
}

/// Where the conductor ends: where its insertion says, else behind the cone.
fn end(setup: &Setup, entry: f64, depth: f64) -> f64 {
    let end = dead_end::conductor_end(setup, entry, 0.0);
    if setup.fitting.insertion.is_some() { end } else { end.max(2.0 - depth) }
}

/// The record of a body that has a socket of its own in it, as a part; a collet's body has its seat in itself.
fn body_round<'a>(setup: &Setup<'a>, socket: Option<Look>) -> Option<&'a Body> {
    let (look, body) =
        setup.geometry(|geometry| if let Geometry::Body(body) = geometry { Some(body) } else { None })?;
    let apart = socket.is_some_and(|socket| socket.item != look.item);
    (apart && body.half_angle.is_none()).then_some(body)
}

/// Radius of the body: as recorded where it has no taper of its own, else round what is inside.
fn outer(setup: &Setup, inside: f64) -> f64 {
    let recorded =
        setup.geometry(|geometry| if let Geometry::Body(body) = geometry { Some(body) } else { None });
    let plain = recorded.map(|found| found.1).filter(|body| body.half_angle.is_none());
    let around = inside + (0.2 * inside).max(3.5);
    plain
        .and_then(|body| body.large_diameter)
        .map_or(around, |diameter| (diameter.mm() / 2.0).max(inside + 2.0))
}

//! A cone dead-end whose cone closes round the conductor.

use super::axial::Axial;
use super::dead_end::{self, Measures};
use super::named::thick_end;
use super::scaled_draft::{Look, ScaledDraft, upper};
use super::setup::{Proportions, Setup};
use super::strand::{Sides, along_axis, stub};
use super::{Figure, Pose};
use crate::catalogue::StampPlace;
use crate::grip::{Collet, Geometry, collet_closure};
use crate::sketch::outline::Outline;
use crate::sketch::plane::{Line, at};
use crate::units::Length;

/// The sizes of a collet in its body, in millimetres.
#[derive(Debug, Clone)]
pub(crate) struct ColletSeat {
    pub axial: Axial,
    pub proportions: Proportions,
    body: Look,
    cone: Look,
    radius: f64,
    /// Half the bore as the cone sits.
    pub bore: f64,
    /// Corners of the cone's flank: small end, large end, as (x, radius).
    pub flank: [(f64, f64); 2],
    slit: f64,
}

/// The collet of a fitting, where it has one.
pub(crate) fn collet<'a>(setup: &Setup<'a>) -> Option<(Look, &'a Collet)> {
    setup.geometry(|geometry| if let Geometry::Collet(collet) = geometry { Some(collet) } else { None })
}

impl ColletSeat {
    /// From the records' geometry and the computed seat.
    pub fn of(setup: &Setup, pose: Pose) -> Option<Self> {
        let (cone, collet) = collet(setup)?;
        let (body, _) = dead_end::body_of(setup)?;
        let recorded =
            setup.geometry(|geometry| if let Geometry::Body(body) = geometry { Some(body) } else { None });
        let recorded = recorded.map(|found| found.1);
        let mut known = Proportions::default();
        let radius = setup.diameter() / 2.0;
        let length = known.length(collet.length, 8.0 * radius);
        let cone_angle = collet.half_angle.or(recorded.and_then(|body| body.half_angle));
        let slope = known.slope(cone_angle, 0.1);
        let seat_slope = recorded.and_then(|body| body.half_angle).map_or(slope, |angle| angle.tan());
        let bore = bore(known.recorded(collet.bore), collet, radius, pose);
        let seated = known.length(stand_out(setup, collet), 0.08 * length);
        let least = bore + 0.25 * radius + (length - seated).max(0.0) * slope;
        let large = known.length(recorded.and_then(|body| body.large_diameter), 2.0 * least) / 2.0;
        known.assumed |= large < least - 0.25 * radius;
        let large = large.max(least - 0.2 * radius);
        let depth =
            known.length(recorded.and_then(|body| body.length), 1.12 * length).max(length - seated + 1.0);
        let shift = seated + pose.cone;
        // Cone and seat touch along the flank where their angles agree, else at one end.
        let at_face =
            if slope < seat_slope { large + (seat_slope - slope) * (seated - length) } else { large };
        let flank_at = |x: f64| at_face + (x - pose.cone) * slope;
        let flank = [shift - length, shift].map(|x| (x, flank_at(x)));
        let hole = radius + 0.08 * radius + 0.4;
        let axial = Axial {
            entry: -depth,
            face: 0.0,
            bore: seat_profile(depth, large, seat_slope, hole),
            outer: large + (0.22 * large).max(3.5),
            push: (seated, 0.86 * flank[1].1),
            hole,
            free: flank[1].1 + 1.2,
            end: dead_end::conductor_end(setup, -depth, seated),
            drawn_back: pose.closing,
        };
        let slit = collet.slit_width.map_or(1.0, |width| width.mm());
        Some(Self { axial, proportions: known, body, cone, radius, bore, flank, slit })
    }

    fn draw_cone(&self, scaled: &mut ScaledDraft) {
        let [small, large] = self.flank;
        scaled.cut(self.cone, &upper(&[(small.0, self.bore), small, large, (large.0, self.bore)]));
        let slope = (large.1 - small.1) / (large.0 - small.0);
        let wide = scaled.paint_width();
        let foot = (large.0 - wide, large.1 - wide * slope);
        scaled.paint(self.cone, &upper(&[(foot.0, self.bore), foot, large, (large.0, self.bore)]));
    }

    /// What stands out of the body's face, seen from outside, with the slit on the near side.
    fn draw_cone_outside(&self, scaled: &mut ScaledDraft) {
        let [small, large] = self.flank;
        let from = small.0.max(0.0);
        if large.0 <= from + 0.01 {
            return;
        }
        let slope = (large.1 - small.1) / (large.0 - small.0);
        let radius = large.1 - (large.0 - from) * slope;
        scaled.outside(self.cone, &[(from, 0.0), (from, radius), large, (large.0, 0.0)]);
        let wide = scaled.paint_width().min(0.8 * (large.0 - from));
        let foot = (large.0 - wide, large.1 - wide * slope);
        scaled.paint(self.cone, &Outline::of(&[(foot.0, 0.0), foot, large, (large.0, 0.0)]));
        let slit = self.slit / 2.0;
        let y = 0.5 * small.1;
        if small.0 > 0.0 {
            scaled.empty(&Outline::of(&[
                (from, y - slit),
                (large.0, y - slit),
                (large.0, y + slit),
                (from, y + slit),
            ]));
        }
    }
}

impl Figure for ColletSeat {
    fn draw(&self, scaled: &mut ScaledDraft, setup: &Setup, pose: Pose) {
        let line =
            self.axial.entry - dead_end::stub_length(scaled) - if pose.conductor > 0.0 { 8.0 } else { 0.0 };
        self.axial.draw_behind(scaled, setup, self.body);
        self.draw_cone(scaled);
        self.axial.draw_closing(scaled, setup);
        let end = self.axial.end - pose.conductor;
        stub(scaled, setup.conductor, self.radius, (line, end.min(self.axial.entry)));
        if end > self.axial.entry {
            along_axis(scaled, setup.conductor, self.radius, (self.axial.entry, end), Sides::Upper);
        }
        self.axial.draw_body_outside(scaled, setup, self.body);
        self.draw_cone_outside(scaled);
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
        thick_end(on, self.flank[1], self.bore)
    }

    fn rear(&self, setup: &Setup) -> f64 {
        self.axial.rear(setup)
    }

    fn gripping_length(&self) -> f64 {
        self.flank[1].0 - self.flank[0].0
    }
}

/// Half the bore: as made while the cone is drawn back, else closed on the conductor, or as far as the
/// slits let it.
fn bore(bore: Option<f64>, collet: &Collet, radius: f64, pose: Pose) -> f64 {
    let Some(bore) = bore.map(|bore| bore / 2.0) else { return radius };
    if pose.cone > 0.0 {
        return bore;
    }
    let closure = collet_closure(collet).map_or(f64::INFINITY, |closure| closure.mm() / 2.0);
    (bore - closure).max(radius)
}

/// Stand-out: as computed, else the middle of the window that the record states.
fn stand_out(setup: &Setup, collet: &Collet) -> Option<Length> {
    let computed = setup.outcome.as_ref().and_then(|outcome| outcome.stand_out);
    let stated = setup.fitting.stand_out.as_ref().and_then(|out| out.seated);
    let middle = stated.map(|window| (window.least() + window.most()) / 2.0);
    computed.or(middle).or(collet.stand_out_at_bore)
}

/// The seat from the entry to the face, as wide as the conductor's hole where the taper would be narrower.
fn seat_profile(depth: f64, large: f64, slope: f64, hole: f64) -> Vec<(f64, f64)> {
    let narrow = large - depth * slope;
    if narrow >= hole || slope <= 0.0 {
        return vec![(-depth, narrow.max(hole)), (0.0, large)];
    }
    let throat = (hole - large) / slope;
    vec![(-depth, hole), (throat, hole), (0.0, large)]
}

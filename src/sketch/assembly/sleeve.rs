//! A sleeve pressed on conductors that meet in its middle.

use super::dead_end::{self, Measures};
use super::scaled_draft::{Look, ScaledDraft, upper};
use super::setup::{Proportions, Setup};
use super::strand::{self, Sides};
use super::{Figure, Pose};
use crate::catalogue::{Role, StampPlace};
use crate::grip::{Ferrule, Geometry};
use crate::sketch::outline::Outline;
use crate::sketch::plane::{Line, Point, at};
use crate::units::Length;

/// The sizes of a pressed sleeve, in millimetres, its middle at x = 0.
#[derive(Debug, Clone)]
pub(crate) struct Sleeve {
    proportions: Proportions,
    look: Look,
    half: f64,
    /// Outside radius after pressing.
    outer: f64,
    /// How far each conductor goes in.
    insertion: f64,
    /// Radii of the conductors from the left and from the right.
    radii: (f64, f64),
}

impl Sleeve {
    /// From the records' geometry.
    pub fn of(setup: &Setup) -> Option<Self> {
        let (look, _) = setup.first(&[Role::Sleeve])?;
        let recorded = setup
            .geometry(|geometry| if let Geometry::Sleeve(sleeve) = geometry { Some(sleeve) } else { None });
        let recorded: Option<&Ferrule> = recorded.map(|found| found.1);
        let mut known = Proportions::default();
        let left = setup.diameter() / 2.0;
        let right =
            setup.fitting.conductors.last().map_or(left, |other| other.section.overall_diameter.mm() / 2.0);
        let widest = left.max(right);
        let half = known.length(recorded.and_then(|sleeve| sleeve.length), 26.0 * widest) / 2.0;
        let pressed =
            recorded.and_then(|sleeve| sleeve.pressed).map(|range| (range.least() + range.most()) / 2.0);
        let outer = known.length(pressed, 2.6 * widest) / 2.0;
        let outer = outer.max(1.12 * widest);
        let insertion = setup.fitting.insertion.map_or(0.985 * half, Length::mm).min(half - 0.2);
        Some(Self { proportions: known, look, half, outer, insertion, radii: (left, right) })
    }
}

impl Figure for Sleeve {
    fn draw(&self, scaled: &mut ScaledDraft, setup: &Setup, pose: Pose) {
        let (half, outer, (left, right)) = (self.half, self.outer, self.radii);
        let reach = half + dead_end::stub_length(scaled);
        let other = setup.fitting.conductors.last().map_or(setup.conductor, |other| other);
        let (shift, end) = (pose.conductor, self.insertion - half);
        scaled.empty(&upper(&[(-half, 0.0), (-half, left), (half, right), (half, 0.0)]));
        let start = reach + if shift > 0.0 { 8.0 } else { 0.0 };
        strand::stub(scaled, setup.conductor, left, (-start, (end - shift).min(-half)));
        strand::stub(scaled, other, right, (start, (shift - end).max(half)));
        if shift < self.insertion {
            strand::along_axis(scaled, setup.conductor, left, (-half, end - shift), Sides::Upper);
            strand::along_axis(scaled, other, right, (shift - end, half), Sides::Upper);
        }
        scaled.cut(self.look, &upper(&[(-half, left), (-half, outer), (0.0, outer), (0.0, left)]));
        scaled.cut(self.look, &upper(&[(0.0, right), (0.0, outer), (half, outer), (half, right)]));
        scaled.outside(self.look, &[(-half, 0.0), (-half, outer), (half, outer), (half, 0.0)]);
        scaled.fine(self.bites());
        if shift == 0.0 && setup.fitting.slip_mark == Some(true) {
            dead_end::slip_mark(scaled, -half, left);
            let wide = scaled.object(0.45 * scaled.draft.size());
            let near = half + scaled.object(0.35);
            scaled.slip_mark(&Outline::of(&[
                (near, -right),
                (near + wide, -right),
                (near + wide, right),
                (near, right),
            ]));
        }
        scaled.axis(at(-start, 0.0), at(start, 0.0));
    }

    fn measures(&self, _: &Setup) -> Option<Measures> {
        let edges = (-self.outer, self.outer);
        Some(Measures {
            faces: None,
            insertion: Some((-self.half, self.insertion - self.half)),
            tail: None,
            gap: None,
            edges,
        })
    }

    fn proportions(&self) -> Proportions {
        self.proportions
    }

    fn stamped(&self, on: StampPlace) -> Vec<Line> {
        let (on_it, reach) = (on == StampPlace::Outside, 0.3 * self.half);
        let edges = [-self.outer, self.outer].map(|y| Line::new(at(-reach, y), at(reach, y)));
        edges.into_iter().filter(|_| on_it).collect()
    }

    fn rear(&self, _: &Setup) -> f64 {
        self.half
    }

    fn gripping_length(&self) -> f64 {
        2.0 * self.half
    }
}

impl Sleeve {
    /// The edges of the presses, seen from outside.
    fn bites(&self) -> Vec<Vec<Point>> {
        let count = (self.half / (1.3 * self.outer)).floor().clamp(2.0, 9.0) as usize;
        let step = 0.92 * self.half / count as f64;
        let edges = (0..count).flat_map(|index| [(index as f64 + 0.25) * step, (index as f64 + 0.85) * step]);
        edges
            .flat_map(|x| [-x, x])
            .map(|x| vec![at(x, 0.08 * self.outer), at(x, 0.94 * self.outer)])
            .collect()
    }
}

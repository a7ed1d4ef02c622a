//! A plain outline for fittings that no family's section fits: parts in item order along the conductor.

use super::dead_end::{self, Measures};
use super::scaled_draft::{Look, ScaledDraft};
use super::setup::{Proportions, Setup};
use super::{Figure, Pose, strand};
use crate::sketch::outline::Outline;
use crate::sketch::plane::{Affine, at};

/// Blocks in item order on the conductor, in millimetres.
#[derive(Debug, Clone)]
pub(crate) struct Plain {
    radius: f64,
    count: usize,
    /// Whether it stands for a figure with a size that is not finite.
    unsound: bool,
}

impl Plain {
    pub fn of(setup: &Setup, unsound: bool) -> Self {
        Self { radius: setup.diameter() / 2.0, count: setup.parts.len(), unsound }
    }

    fn block(&self, index: usize) -> Outline {
        let (wide, half) = (4.4 * self.radius, 2.2 * self.radius);
        let left = index as f64 * wide;
        Outline::of(&[(left, -half), (left + 0.9 * wide, -half), (left + 0.9 * wide, half), (left, half)])
    }

    fn length(&self) -> f64 {
        self.count as f64 * 4.4 * self.radius
    }
}

impl Figure for Plain {
    fn draw(&self, scaled: &mut ScaledDraft, setup: &Setup, pose: Pose) {
        let reach = dead_end::stub_length(scaled);
        strand::stub(scaled, setup.conductor, self.radius, (-reach, 0.0));
        strand::stub(scaled, setup.conductor, self.radius, (self.length() + reach, 0.0));
        for (index, part) in setup.parts.iter().enumerate() {
            let away = Affine::translate((0.0, -pose.cone * (1 + index % 2) as f64 / 2.0));
            scaled.view(Look::of(index, part), &self.block(index).mapped(away));
        }
        scaled.axis(at(-reach, 0.0), at(self.length() + reach, 0.0));
    }

    fn measures(&self, _: &Setup) -> Option<Measures> {
        None
    }

    fn proportions(&self) -> Proportions {
        Proportions { assumed: true, unsound: self.unsound }
    }

    fn rear(&self, _: &Setup) -> f64 {
        self.length()
    }

    fn gripping_length(&self) -> f64 {
        4.0 * self.radius
    }
}

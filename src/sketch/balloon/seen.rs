//! What is seen of a drawing's parts, and where leaders to them may end.

use super::band::Band;
use super::cells::Cells;
use super::targets::{Aims, Target, aims};
use crate::sketch::scene::Scene;

/// The object of a drawing as leaders meet it. Dimensions, texts and balloons change nothing in it.
pub(super) struct Seen {
    pub cells: Cells,
    /// Of every part.
    pub aims: Vec<Aims>,
}

impl Seen {
    /// For so many parts and dots of this radius, with so many places of each part towards each side at most.
    pub fn of(scene: &Scene, parts: usize, dot: f64, most: usize) -> Self {
        let cells = Cells::of(scene);
        Self { aims: aims(scene, &cells, parts, dot, most), cells }
    }

    /// Where a leader from a band to a part may end, the cheapest places first.
    pub fn targets(&self, part: usize, band: Band) -> &[Target] {
        &self.aims[part].towards[band as usize]
    }

    /// How far a straight way from a band to a part goes over others at least, beyond the least from any side, in
    /// millimetres.
    pub fn needless(&self, part: usize, band: Band) -> f64 {
        self.aims[part].over_towards[band as usize] - self.aims[part].least_over
    }
}

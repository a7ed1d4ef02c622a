//! What every figure of a fitting can do, and how far apart it is drawn.

use super::dead_end::Measures;
use super::scaled_draft::ScaledDraft;
use super::setup::{Proportions, Setup};
use crate::catalogue::StampPlace;
use crate::sketch::plane::Line;

/// How far parts are drawn away from where they belong, in millimetres along the axis.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(crate) struct Pose {
    /// The gripping part, away from the line.
    pub cone: f64,
    /// The closing part, away from the line.
    pub closing: f64,
    /// The conductor, towards the line.
    pub conductor: f64,
}

/// What a family is drawn as: shapes with their sizes, before they come to paper.
pub(crate) trait Figure {
    /// Draws everything but dimensions and balloons.
    fn draw(&self, scaled: &mut ScaledDraft, setup: &Setup, pose: Pose);
    /// Where the lengths lie that are measured on it; nothing where none is.
    fn measures(&self, setup: &Setup) -> Option<Measures>;
    /// How far the sizes of the seat come from the records.
    fn proportions(&self) -> Proportions;
    /// The edges on which a stamp on that place of the gripping part stands; none where the family has no such place.
    fn stamped(&self, _on: StampPlace) -> Vec<Line> {
        Vec::new()
    }
    /// x of its rear end, in millimetres.
    fn rear(&self, setup: &Setup) -> f64;
    /// Length of its gripping part, in millimetres.
    fn gripping_length(&self) -> f64;
}

//! Hatching: slanted lines cut to an outline by geometry, so that no clip path is needed.

use super::outline::Outline;
use super::plane::{Line, Vec2};
use kurbo::ParamCurve as _;

/// An A0 sheet hatched at half a millimetre takes fewer lines.
const MOST_LINES: f64 = 5_000.0;

/// One way to hatch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Hatch {
    /// From the x axis, in radians.
    angle: f64,
    /// Distance between neighbouring lines.
    pitch: f64,
}

impl Hatch {
    /// Hatches that differ from their neighbours in the row by direction or pitch: 45° (ISO 128-50).
    pub fn of(index: usize, pitch: f64) -> Self {
        let angle = if index.is_multiple_of(2) { -45.0_f64 } else { 45.0 };
        let spread = [1.0, 1.6, 0.65][index / 2 % 3];
        Self { angle: angle.to_radians(), pitch: pitch * spread }
    }

    /// The lines inside an outline. All lines lie on one grid through the origin, so that the surfaces of
    /// one part read as one. An outline has none that is not finite, or larger than any paper.
    pub fn lines(&self, outline: &Outline) -> Vec<Line> {
        if !outline.is_finite() {
            return Vec::new();
        }
        let along = Vec2::from_angle(self.angle);
        let across = along.turn_90();
        let offsets: Vec<f64> = outline.sides().map(|side| side.p0.to_vec2().dot(across)).collect();
        let least = offsets.iter().copied().fold(f64::INFINITY, f64::min);
        let most = offsets.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let (first, last) = ((least / self.pitch).ceil(), (most / self.pitch).floor());
        if last - first > MOST_LINES {
            return Vec::new();
        }
        let (first, last) = (first as i64, last as i64);
        (first..=last).flat_map(|index| clipped(outline, along, across, index as f64 * self.pitch)).collect()
    }
}

/// What of the line at `offset` lies inside.
fn clipped(outline: &Outline, along: Vec2, across: Vec2, offset: f64) -> Vec<Line> {
    let mut crossings: Vec<f64> = outline
        .sides()
        .filter_map(|side| {
            let [a, b] = [side.p0, side.p1].map(|point| point.to_vec2().dot(across) - offset);
            ((a > 0.0) != (b > 0.0)).then(|| side.eval(a / (a - b)).to_vec2().dot(along))
        })
        .collect();
    crossings.sort_by(f64::total_cmp);
    let place = |position: f64| (along * position + across * offset).to_point();
    crossings
        .chunks_exact(2)
        .filter(|ends| ends[1] - ends[0] > 0.05)
        .map(|ends| Line::new(place(ends[0]), place(ends[1])))
        .collect()
}

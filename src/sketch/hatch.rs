//! Hatching: slanted lines cut to an outline by geometry, so that no clip path is needed.

use super::outline::Outline;
use super::point::Point;

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

    /// The lines inside an outline. All lines lie on one grid through the origin, so that the pieces of
    /// one part read as one.
    pub fn lines(&self, outline: &Outline) -> Vec<(Point, Point)> {
        let along = Point::polar(1.0, self.angle);
        let across = along.normal();
        let offsets: Vec<f64> = outline.rings.iter().flatten().map(|point| point.dot(across)).collect();
        let least = offsets.iter().copied().fold(f64::INFINITY, f64::min);
        let most = offsets.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let (first, last) = ((least / self.pitch).ceil() as i64, (most / self.pitch).floor() as i64);
        (first..=last).flat_map(|index| cut(outline, along, across, index as f64 * self.pitch)).collect()
    }
}

/// The pieces of the line at `offset` that lie inside.
fn cut(outline: &Outline, along: Point, across: Point, offset: f64) -> Vec<(Point, Point)> {
    let mut crossings: Vec<f64> = outline
        .sides()
        .filter_map(|(from, to)| {
            let (a, b) = (from.dot(across) - offset, to.dot(across) - offset);
            ((a > 0.0) != (b > 0.0)).then(|| from.towards(to, a / (a - b)).dot(along))
        })
        .collect();
    crossings.sort_by(f64::total_cmp);
    let place = |position: f64| along * position + across * offset;
    crossings
        .chunks_exact(2)
        .filter(|pair| pair[1] - pair[0] > 0.05)
        .map(|pair| (place(pair[0]), place(pair[1])))
        .collect()
}

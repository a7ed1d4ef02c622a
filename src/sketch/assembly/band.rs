//! Bands of even width along bent lines: wires, ropes, thimbles.

use crate::sketch::outline::Outline;
use crate::sketch::plane::{Point, unit};

/// The band of half-width `half` along a path, mitred at its bends.
pub(crate) fn band(path: &[Point], half: f64) -> Outline {
    let mut points = beside(path, half);
    points.extend(beside(path, -half).into_iter().rev());
    Outline::new(points)
}

/// The path moved sideways, to the right hand where y runs down.
pub(crate) fn beside(path: &[Point], by: f64) -> Vec<Point> {
    let last = path.len().saturating_sub(1);
    let normal = |from: usize| unit(path[from + 1] - path[from]).turn_90();
    (0..path.len())
        .map(|index| {
            let before = normal(index.saturating_sub(1).min(last - 1));
            let after = normal(index.min(last - 1));
            let mitre = unit(before + after);
            path[index] + mitre * (by / mitre.dot(after).max(0.3))
        })
        .collect()
}

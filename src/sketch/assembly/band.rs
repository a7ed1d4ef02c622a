//! Bands of even width along bent lines: wires, ropes, thimbles.

use crate::sketch::outline::Outline;
use crate::sketch::point::Point;

/// The band of half-width `half` along a path, mitred at its bends.
pub(crate) fn band(path: &[Point], half: f64) -> Outline {
    let mut points = beside(path, half);
    points.extend(beside(path, -half).into_iter().rev());
    Outline::new(points)
}

/// The path moved sideways, to the right hand where y runs down.
pub(crate) fn beside(path: &[Point], by: f64) -> Vec<Point> {
    let last = path.len().saturating_sub(1);
    let normal = |from: usize| (path[from + 1] - path[from]).unit().normal();
    (0..path.len())
        .map(|index| {
            let before = normal(index.saturating_sub(1).min(last - 1));
            let after = normal(index.min(last - 1));
            let mitre = (before + after).unit();
            path[index] + mitre * (by / mitre.dot(after).max(0.3))
        })
        .collect()
}

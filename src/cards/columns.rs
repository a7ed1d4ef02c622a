//! Widths of two columns that share a face.

use super::description::{Content, Node};

/// From one width of the first column to the next that is tried, as a part of the whole width.
const STEP: f64 = 0.02;
/// The same where it is only seen where to look closer.
const COARSE_STEP: f64 = 3.0 * STEP;

/// What the layout leaves open of the width of the first of two columns.
pub(super) fn shares(children: &[&Node]) -> Option<(f64, f64)> {
    let of = |node: &&Node| match node.content {
        Content::Columns { share } => Some(share),
        _ => shares(&node.children.iter().collect::<Vec<_>>()),
    };
    children.iter().find_map(of)
}

/// Widths from the least on, which is left out, to the most.
pub(super) fn far_apart(least: f64, most: f64) -> impl Iterator<Item = f64> {
    between(least + COARSE_STEP, most, COARSE_STEP)
}

/// Widths round one of those, which is left out.
pub(super) fn near(share: f64, least: f64, most: f64) -> impl Iterator<Item = f64> {
    let beyond = COARSE_STEP - STEP;
    let all = between((share - beyond).max(least), (share + beyond).min(most), STEP);
    all.filter(move |other| (other - share).abs() > 1e-9)
}

fn between(from: f64, to: f64, step: f64) -> impl Iterator<Item = f64> {
    std::iter::successors(Some(from), move |share| Some(share + step))
        .take_while(move |share| *share <= to + 1e-9)
}

//! What has moved from one stage to the next, and the arrows that show it.

use super::Pose;
use super::setup::Setup;
use crate::catalogue::Role;
use crate::sketch::appearance::{Appearance, Tone};
use crate::sketch::draft::Draft;
use crate::sketch::letters::Anchor;
use crate::sketch::outline::Outline;
use crate::sketch::plane::{EMPTY, Point, Rect, Vec2, at, unit};
use crate::sketch::scene::Purpose;

/// Something that moves into its place, on paper.
#[derive(Debug, Clone)]
pub(super) struct Moved {
    /// Index of the item; none for the conductor.
    part: Option<usize>,
    /// Where the arrow has its tip.
    tip: Point,
    /// Which way it goes.
    way: Vec2,
}

/// Less than this is no move, in millimetres on paper.
const LEAST: f64 = 0.3;

/// What moves between two stages that are drawn at one scale.
pub(super) fn between(setup: &Setup, drafts: [&Draft; 2], poses: [Pose; 2]) -> Vec<Moved> {
    let size = drafts[1].size();
    let row = drafts[1].scene.bounds().y1 + 1.1 * size;
    let parts = (0..setup.parts.len()).filter_map(|part| {
        let [from, to] = drafts.map(|draft| bounds_of(draft, part));
        let way = along_the_page(to.center() - from.center());
        let tip = at(to.center().x, row) + unit(way) * (LENGTH * size / 2.0);
        (way.length() >= LEAST).then_some(Moved { part: Some(part), tip, way })
    });
    let mut moved: Vec<Moved> = parts.collect();
    let body = setup.parts.iter().position(|part| part.role == Role::Body).unwrap_or(0);
    if poses[0].conductor > poses[1].conductor {
        let tip = at(bounds_of(drafts[1], body).x0 - 0.4 * size, row);
        moved.push(Moved { part: None, tip, way: Vec2::new(1.0, 0.0) });
    }
    spread(&mut moved, size);
    moved
}

/// A part moves along the page or across it: how much of it is seen changes its middle a little.
fn along_the_page(way: Vec2) -> Vec2 {
    if way.x.abs() >= way.y.abs() { Vec2::new(way.x, 0.0) } else { Vec2::new(0.0, way.y) }
}

fn bounds_of(draft: &Draft, part: usize) -> Rect {
    draft.scene.areas_of(part).fold(EMPTY, |sum, area| sum.union(area.bounds()))
}

/// Length of an arrow in type sizes.
const LENGTH: f64 = 3.0;

/// Moves arrows apart that would lie on each other.
fn spread(moved: &mut [Moved], size: f64) {
    moved.sort_by(|a, b| a.tip.x.total_cmp(&b.tip.x));
    for index in 1..moved.len() {
        let least = moved[index - 1].tip.x + (LENGTH + 1.6) * size;
        moved[index].tip.x = moved[index].tip.x.max(least);
    }
}

/// A solid arrow for each, with the number of its item behind it.
pub(super) fn draw(draft: &mut Draft, moved: &[Moved]) {
    let size = draft.size();
    for Moved { part, tip, way } in moved {
        let along = unit(*way);
        let across = along.turn_90();
        let (neck, end) = (*tip - along * (1.1 * size), *tip - along * (LENGTH * size));
        let (head, shaft) = (across * (0.55 * size), across * (0.2 * size));
        let ring = vec![*tip, neck + head, neck + shaft, end + shaft, end - shaft, neck - shaft, neck - head];
        draft.area(Purpose::Dimension, Outline::new(ring), Appearance::solid(Tone::Ink));
        if let Some(part) = part {
            let number = draft.level(end - along * (0.7 * size), Anchor::Middle, &(part + 1).to_string());
            draft.scene.text(number);
        }
    }
}

/// The same for those who do not see it.
pub(super) fn words(moved: &[Moved]) -> String {
    if moved.is_empty() {
        return String::new();
    }
    let said = moved.iter().map(|moved| match moved.part {
        Some(part) => format!("item {}", part + 1),
        None => "the conductor".to_owned(),
    });
    format!(" Moving: {}.", said.collect::<Vec<_>>().join(", "))
}

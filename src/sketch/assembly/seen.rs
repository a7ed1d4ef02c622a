//! What is seen where in a drawing: what an arrow to a place would go over.

use crate::sketch::draft::Draft;
use crate::sketch::plane::{Line, Point, Rect, Vec2};
use crate::sketch::scene::{Primitive, Purpose};
use std::f64::consts::FRAC_PI_8;

/// How far apart an arrow is looked at, and how near its tip that begins, in millimetres. What lies across it is mostly
/// wide: a first look with wide steps is enough to see it.
const WIDE_STEP: f64 = 0.8;
const STEP: f64 = 0.05;
const TIP: f64 = 0.15;
/// How far off a place must be open at least, in millimetres.
const NEAR: f64 = 0.6;

/// What an area shows: a part, or the conductor.
type Shown = Option<usize>;

/// Areas front to back with their boxes, and what they show; nothing where they are empty.
pub(super) struct Seen<'s>(Vec<(Rect, &'s Primitive, Option<Shown>)>);

impl<'s> Seen<'s> {
    pub fn of(draft: &'s Draft) -> Self {
        let areas = draft.scene.elements.iter().rev().filter_map(|element| {
            let shown = match element.purpose {
                Purpose::Cut(part) | Purpose::View(part) => Some(Some(part)),
                Purpose::Wire => Some(None),
                Purpose::Empty => None,
                _ => return None,
            };
            Some((element.primitive.bounds(), &element.primitive, shown))
        });
        Self(areas.collect())
    }

    /// Whether an arrow that ends on this part or on the conductor goes over nothing else.
    pub fn is_open(&self, on: Shown, arrow: Line) -> bool {
        [WIDE_STEP, STEP].into_iter().all(|apart| self.is_open_at(on, arrow, apart))
    }

    fn is_open_at(&self, on: Shown, arrow: Line, apart: f64) -> bool {
        let length = arrow.p0.distance(arrow.p1);
        let steps = ((length - TIP) / apart).max(0.0) as usize;
        (0..=steps).all(|step| {
            let off = TIP + step as f64 * apart;
            self.at(arrow.p1.lerp(arrow.p0, (off / length).min(1.0))).is_none_or(|shown| shown == on)
        })
    }

    /// Whether a place on this part or on the conductor is open to an arrow from any side.
    pub fn is_seen(&self, on: Shown, place: Point) -> bool {
        let mut ways = (0..16).map(|way| Vec2::from_angle(f64::from(way) * FRAC_PI_8) * NEAR);
        ways.any(|way| self.is_open(on, Line::new(place + way, place)))
    }

    fn at(&self, place: Point) -> Option<Shown> {
        let mut there = self.0.iter().filter(|(bounds, ..)| bounds.contains(place));
        there.find(|(_, area, _)| area.contains(place)).and_then(|(.., shown)| *shown)
    }
}

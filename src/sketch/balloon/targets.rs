//! Where the dot of a leader may lie: well inside what is seen of its part.

use super::band::Band;
use crate::sketch::plane::{Point, Rect, Vec2, at, grown};
use crate::sketch::scene::{Primitive, Purpose, Scene};

/// Where a dot may lie, and what the place costs.
pub(super) type Target = (Point, f64);

/// A part that ends nearer than this to a dot is a scrap that nobody makes out, in millimetres (own rule).
const SCRAP: f64 = 0.1;
/// How far apart a leader's way is looked at, in millimetres.
const STEP: f64 = 0.8;
/// What a millimetre costs that a leader goes over another part: as much as two that it is longer.
const OVER_OTHERS: f64 = 2.0;

/// Areas back to front with their boxes, to look up what is seen at a point.
pub(super) struct Seen<'s> {
    areas: Vec<(Purpose, Rect, &'s Primitive)>,
    bounds: Rect,
    texts: Vec<Rect>,
}

impl<'s> Seen<'s> {
    pub fn of(scene: &'s Scene) -> Self {
        let areas = scene
            .elements
            .iter()
            .filter(|element| matches!(element.purpose, Purpose::Cut(_) | Purpose::View(_) | Purpose::Wire))
            .map(|element| (element.purpose, element.primitive.bounds(), &element.primitive))
            .collect();
        let bounds = scene.object_bounds();
        Self { areas, bounds, texts: scene.texts().map(|text| grown(text.bounds(), 0.4)).collect() }
    }

    fn shows(&self, part: usize, point: Point) -> bool {
        matches!(self.at(point), Some(Purpose::Cut(p) | Purpose::View(p)) if p == part)
    }

    /// What is seen at a point.
    fn at(&self, point: Point) -> Option<Purpose> {
        let areas = self.areas.iter().rev();
        let mut found = areas.filter(|(_, bounds, area)| bounds.contains(point) && area.contains(point));
        found.next().map(|(purpose, ..)| *purpose)
    }

    /// How far a leader from the band goes over other parts and the conductor, in millimetres.
    fn over_others(&self, part: usize, target: Point, band: Band) -> f64 {
        let step = if band == Band::Above { Vec2::new(0.0, -STEP) } else { Vec2::new(STEP, 0.0) };
        let way = (1..).map(|index| target + step * f64::from(index));
        let inside = way.take_while(|point| self.bounds.contains(*point));
        let others = inside.filter(|point| match self.at(*point) {
            Some(Purpose::Cut(of) | Purpose::View(of)) => of != part,
            Some(_) => true,
            None => false,
        });
        others.count() as f64 * STEP
    }

    /// Points well inside what is seen of a part, the cheapest first: near its middle, cut rather than
    /// in view, close to the band; so many at most.
    pub fn places(&self, part: usize, margin: f64, band: Band, most: usize) -> Vec<Target> {
        let mut places = Vec::new();
        for (purpose, bounds, _) in &self.areas {
            let (Purpose::Cut(p) | Purpose::View(p)) = purpose else { continue };
            if *p != part {
                continue;
            }
            let view = if matches!(purpose, Purpose::View(_)) { 2.0 } else { 0.0 };
            for point in grid(*bounds) {
                let around = [(margin, 0.0), (-margin, 0.0), (0.0, margin), (0.0, -margin)];
                let inside = self.shows(part, point)
                    && around.iter().all(|&by| self.shows(part, point + Vec2::from(by)));
                if inside && !self.texts.iter().any(|text| text.contains(point)) {
                    places.push((point, view + 0.25 * off_centre(point, *bounds, band)));
                }
            }
        }
        if places.is_empty() && margin > 1.5 * SCRAP {
            return self.places(part, margin / 2.0, band, most);
        }
        places.sort_by(|a, b| a.1.total_cmp(&b.1));
        // The cheapest, and some of the rest from all over the part.
        let cheapest = most * 2 / 5;
        let rest = places.split_off(places.len().min(cheapest));
        let stride = rest.len().div_ceil(most - cheapest).max(1);
        places.extend(rest.into_iter().step_by(stride));
        for (target, cost) in &mut places {
            *cost += OVER_OTHERS * self.over_others(part, *target, band);
        }
        places.sort_by(|a, b| a.1.total_cmp(&b.1));
        places
    }
}

fn off_centre(point: Point, bounds: Rect, band: Band) -> f64 {
    let by = point - bounds.center();
    if band == Band::Above { by.x.abs() * 0.5 + by.y.abs() } else { by.x.abs() + by.y.abs() * 0.5 }
}

fn grid(bounds: Rect) -> Vec<Point> {
    let columns = (bounds.width() / 1.5).clamp(5.0, 13.0) as usize;
    let rows = (bounds.height() / 1.5).clamp(5.0, 9.0) as usize;
    let mut points = Vec::with_capacity(columns * rows);
    for row in 0..rows {
        for column in 0..columns {
            let share = |index: usize, count: usize| (index as f64 + 0.5) / count as f64;
            points.push(at(
                bounds.x0 + share(column, columns) * bounds.width(),
                bounds.y0 + share(row, rows) * bounds.height(),
            ));
        }
    }
    points
}

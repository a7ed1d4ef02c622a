//! Balloons in a row or column, with leaders that end in a dot inside their part (ISO 6433).

use super::draft::Draft;
use super::ink::{Ink, Pen, Tone};
use super::letters::Anchor;
use super::options::Detail;
use super::point::{Point, Rect, at, segments_meet};
use super::scene::{Purpose, Scene, Shape};

/// The side of the drawing that balloons stand on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Band {
    /// A row above it.
    Above,
    /// A column to its right.
    Right,
}

/// A balloon to be placed: the part that it points at, and the number in it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Item {
    pub part: usize,
    pub number: usize,
}

/// Where the dot of an item may lie, and what each place costs.
struct Targets {
    item: Item,
    places: Vec<(Point, f64)>,
}

/// What turns the band's own coordinates into the page's.
#[derive(Clone, Copy)]
struct Frame {
    band: Band,
    /// Where the balloons' centres lie across the band.
    level: f64,
}

impl Frame {
    fn along(self, point: Point) -> f64 {
        if self.band == Band::Above { point.x } else { point.y }
    }

    fn place(self, along: f64) -> Point {
        if self.band == Band::Above { at(along, self.level) } else { at(self.level, along) }
    }
}

impl Draft<'_> {
    /// Radius of a balloon: two figures fit in it.
    pub fn balloon_radius(&self) -> f64 {
        0.86 * self.size()
    }

    /// Places balloons for items in the order of their numbers: in that order along the band wherever
    /// leaders then stay clear of each other.
    pub fn balloons(&mut self, items: &[Item], band: Band) {
        let dot = 0.17 * self.size();
        let seen = Seen::of(&self.scene);
        let targets: Vec<Targets> = items
            .iter()
            .map(|&item| Targets { item, places: seen.places(item.part, 2.2 * dot, band) })
            .filter(|targets| !targets.places.is_empty())
            .collect();
        self.complete &= targets.len() == items.len();
        let radius = self.balloon_radius();
        let object = self.balloon_base();
        let off = 0.55 * self.size() + radius;
        let level = if band == Band::Above { object.top - off } else { object.right + off };
        let frame = Frame { band, level };
        let slots = self.slots(frame, object, targets.len());
        let layout = Layout { targets: &targets, slots: &slots, frame, radius, scene: &self.scene };
        let Some((chosen, places)) = layout.solve() else {
            self.complete = false;
            return;
        };
        self.complete &= layout.conflicts(&chosen, &places) == 0;
        for (index, target) in targets.iter().enumerate() {
            self.balloon(target.item, places[index], target.places[chosen[index]].0, dot);
        }
    }

    /// What the band stands off from: the object, and in full drawings its dimensions, too.
    fn balloon_base(&self) -> Rect {
        let object = self.scene.object_bounds();
        if self.options.detail == Detail::Full {
            let all = self.scene.bounds();
            return Rect { top: all.top, right: all.right, ..object };
        }
        object
    }

    /// Whether the drawing still fits its room once it has balloons.
    pub fn has_room_for_balloons(&self, band: Band) -> bool {
        let (base, all) = (self.balloon_base(), self.bounds());
        let deep = 2.0 * self.balloon_radius() + 0.55 * self.size();
        let with = match band {
            Band::Above => Rect { top: all.top.min(base.top - deep), ..all },
            Band::Right => Rect { right: all.right.max(base.right + deep), ..all },
        };
        with.width() <= self.options.width.mm() && with.height() <= self.options.height.mm()
    }

    /// Positions along the band where a balloon would lie clear, in rising order.
    fn slots(&self, frame: Frame, object: Rect, count: usize) -> Vec<f64> {
        let radius = self.balloon_radius();
        let need = count as f64 * self.balloon_pitch();
        let (from, to) = match frame.band {
            Band::Above => (object.left, object.right),
            Band::Right => (object.top, object.bottom),
        };
        let spare = ((need - (to - from)) / 2.0).max(0.0);
        let room = match frame.band {
            Band::Above => self.options.width.mm() - self.bounds().width(),
            Band::Right => self.options.height.mm() - self.bounds().height(),
        };
        let (from, to) = (from - spare + radius, to + spare.max(room) - radius);
        let step = radius / 3.0;
        let steps = ((to - from) / step).floor().max(0.0) as usize;
        let all = (0..=steps).map(|index| from + index as f64 * step);
        all.filter(|&along| {
            let reach = Rect::around([frame.place(along)]).grown(radius + 0.3);
            self.scene.elements.iter().all(|element| match &element.shape {
                Shape::Text(text) => !text.bounds().touches(reach),
                shape => element.purpose != Purpose::Dimension || !shape.strokes_meet(reach),
            })
        })
        .collect()
    }

    /// Distance between centres of neighbouring balloons.
    pub fn balloon_pitch(&self) -> f64 {
        2.0 * self.balloon_radius() + 0.2 * self.size()
    }

    fn balloon(&mut self, item: Item, place: Point, target: Point, dot: f64) {
        let radius = self.balloon_radius();
        let from = place + (target - place).unit() * radius;
        self.thin(Purpose::Leader(item.part), &[from, target]);
        self.scene.circle(Purpose::Leader(item.part), target, dot, Ink::solid(Tone::Ink));
        self.scene.circle(Purpose::Balloon(item.part), place, radius, Ink::area(Tone::Paper, Pen::Thin));
        let number = self.level(place, Anchor::Middle, &item.number.to_string());
        self.scene.text(number);
    }
}

/// Areas back to front with their boxes, to look up what is seen at a point.
struct Seen<'s> {
    areas: Vec<(Purpose, Rect, &'s Shape)>,
    texts: Vec<Rect>,
}

impl<'s> Seen<'s> {
    fn of(scene: &'s Scene) -> Self {
        let areas = scene
            .elements
            .iter()
            .filter(|element| matches!(element.purpose, Purpose::Cut(_) | Purpose::View(_) | Purpose::Wire))
            .map(|element| (element.purpose, element.shape.bounds(), &element.shape))
            .collect();
        Self { areas, texts: scene.texts().map(|text| text.bounds().grown(0.4)).collect() }
    }

    fn shows(&self, part: usize, point: Point) -> bool {
        let seen = self.areas.iter().rev().find(|(_, bounds, shape)| {
            bounds.contains(point)
                && match shape {
                    Shape::Area(outline) => outline.contains(point),
                    Shape::Circle(centre, radius) => centre.distance(point) <= *radius,
                    _ => false,
                }
        });
        matches!(seen, Some((Purpose::Cut(p) | Purpose::View(p), ..)) if *p == part)
    }

    /// Points well inside what is seen of a part, the cheapest first: near its middle, cut rather than
    /// in view, close to the band.
    fn places(&self, part: usize, margin: f64, band: Band) -> Vec<(Point, f64)> {
        let mut places = Vec::new();
        for (purpose, bounds, _) in &self.areas {
            let (Purpose::Cut(p) | Purpose::View(p)) = purpose else { continue };
            if *p != part {
                continue;
            }
            let view = if matches!(purpose, Purpose::View(_)) { 2.0 } else { 0.0 };
            for point in grid(*bounds) {
                let around = [at(margin, 0.0), at(-margin, 0.0), at(0.0, margin), at(0.0, -margin)];
                let inside = self.shows(part, point) && around.iter().all(|&by| self.shows(part, point + by));
                if inside && !self.texts.iter().any(|text| text.contains(point)) {
                    places.push((point, view + 0.25 * off_centre(point, *bounds, band)));
                }
            }
        }
        if places.is_empty() && margin > 0.15 {
            return self.places(part, margin / 2.0, band);
        }
        places.sort_by(|a, b| a.1.total_cmp(&b.1));
        // The cheapest, and some of the rest from all over the part.
        let rest = places.split_off(places.len().min(10));
        let stride = rest.len().div_ceil(14).max(1);
        places.extend(rest.into_iter().step_by(stride));
        places
    }
}

fn off_centre(point: Point, bounds: Rect, band: Band) -> f64 {
    let by = point - bounds.centre();
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
                bounds.left + share(column, columns) * bounds.width(),
                bounds.top + share(row, rows) * bounds.height(),
            ));
        }
    }
    points
}

/// The choice of a target and a slot for every item.
struct Layout<'l> {
    targets: &'l [Targets],
    slots: &'l [f64],
    frame: Frame,
    radius: f64,
    scene: &'l Scene,
}

impl Layout<'_> {
    /// Chosen target and balloon place of each item: descends from several starts, changing one item
    /// at a time, and keeps the best.
    fn solve(&self) -> Option<(Vec<usize>, Vec<Point>)> {
        let mut best: Option<(f64, Vec<usize>, Vec<Point>)> = None;
        for start in [self.cheapest(), self.rising()] {
            let (cost, chosen, places) = self.descend(start)?;
            if best.as_ref().is_none_or(|(least, ..)| cost < *least) {
                best = Some((cost, chosen, places));
            }
        }
        best.map(|(_, chosen, places)| (chosen, places))
    }

    fn cheapest(&self) -> Vec<usize> {
        vec![0; self.targets.len()]
    }

    /// Targets that rise along the band with the item numbers, as far as the parts allow.
    fn rising(&self) -> Vec<usize> {
        let mut least = f64::NEG_INFINITY;
        let mut chosen = Vec::new();
        for targets in self.targets {
            let ahead = |index: &usize| self.frame.along(targets.places[*index].0) > least;
            let along = |index: &usize| self.frame.along(targets.places[*index].0);
            let next = (0..targets.places.len()).filter(ahead).min_by(|a, b| along(a).total_cmp(&along(b)));
            least = next.map_or(least, |index| along(&index) + 1.0);
            chosen.push(next.unwrap_or(0));
        }
        chosen
    }

    fn descend(&self, mut chosen: Vec<usize>) -> Option<(f64, Vec<usize>, Vec<Point>)> {
        let (mut cost, mut places) = self.cost(&chosen)?;
        for _ in 0..4 {
            let before = cost;
            for item in 0..self.targets.len() {
                for index in 0..self.targets[item].places.len() {
                    let kept = std::mem::replace(&mut chosen[item], index);
                    match self.cost(&chosen) {
                        Some((tried, moved)) if tried < cost - 1e-9 => (cost, places) = (tried, moved),
                        _ => chosen[item] = kept,
                    }
                }
            }
            if cost >= before - 1e-9 {
                break;
            }
        }
        Some((cost, chosen, places))
    }

    fn cost(&self, chosen: &[usize]) -> Option<(f64, Vec<Point>)> {
        let places = self.seat(chosen)?;
        let own: f64 = chosen.iter().zip(self.targets).map(|(&index, targets)| targets.places[index].1).sum();
        let slant: f64 = (0..places.len())
            .map(|item| {
                let target = self.target(chosen, item);
                (self.frame.along(places[item]) - self.frame.along(target)).abs()
                    + 0.3 * places[item].distance(target)
            })
            .sum();
        let disorder = (1..places.len())
            .filter(|&item| self.frame.along(places[item]) < self.frame.along(places[item - 1]))
            .count();
        let conflicts = self.conflicts(chosen, &places);
        Some((own + slant + 12.0 * disorder as f64 + 200.0 * conflicts as f64, places))
    }

    fn target(&self, chosen: &[usize], item: usize) -> Point {
        self.targets[item].places[chosen[item]].0
    }

    /// Balloons in the order of their targets, each as near to its own as their pitch allows.
    fn seat(&self, chosen: &[usize]) -> Option<Vec<Point>> {
        let mut order: Vec<usize> = (0..chosen.len()).collect();
        let wish = |item: usize| self.frame.along(self.target(chosen, item));
        order.sort_by(|&a, &b| wish(a).total_cmp(&wish(b)));
        let wishes: Vec<f64> = order.iter().map(|&item| wish(item)).collect();
        let seats = seats(&wishes, self.slots, 2.0 * self.radius + 0.3)?;
        let mut places = vec![at(0.0, 0.0); chosen.len()];
        for (rank, &item) in order.iter().enumerate() {
            places[item] = self.frame.place(seats[rank]);
        }
        Some(places)
    }

    /// How many leaders meet each other, a foreign dot or balloon, or a text.
    fn conflicts(&self, chosen: &[usize], places: &[Point]) -> usize {
        let lines: Vec<(Point, Point)> =
            (0..places.len()).map(|item| (places[item], self.target(chosen, item))).collect();
        let mut count = 0;
        for (index, &(from, to)) in lines.iter().enumerate() {
            count +=
                self.scene.texts().filter(|text| text.bounds().grown(0.2).meets_segment(from, to)).count();
            for (other, &(balloon, dot)) in lines.iter().enumerate() {
                if other == index {
                    continue;
                }
                let crossed = other > index && segments_meet((from, to), (balloon, dot));
                let covered =
                    dot.distance_from(from, to) < 0.8 || balloon.distance_from(from, to) < self.radius + 0.2;
                count += usize::from(crossed) + usize::from(covered);
            }
        }
        count
    }
}

/// Positions out of rising `slots`, at least `pitch` apart, in order, with the least sum of distances
/// from rising `wishes`.
fn seats(wishes: &[f64], slots: &[f64], pitch: f64) -> Option<Vec<f64>> {
    // best[k][s]: least cost with item k at slot s or before it, and the slot that gives it.
    let mut best: Vec<Vec<(f64, usize)>> = Vec::with_capacity(wishes.len());
    for (rank, wish) in wishes.iter().enumerate() {
        let mut row: Vec<(f64, usize)> = Vec::with_capacity(slots.len());
        let mut behind = 0;
        for (index, slot) in slots.iter().enumerate() {
            while behind < index && slots[behind] <= slot - pitch {
                behind += 1;
            }
            let before = match rank {
                0 => 0.0,
                _ if behind == 0 => f64::INFINITY,
                _ => best[rank - 1][behind - 1].0,
            };
            let here = (before + (slot - wish).abs(), index);
            let least = row.last().copied().filter(|last: &(f64, usize)| last.0 <= here.0).unwrap_or(here);
            row.push(least);
        }
        best.push(row);
    }
    let mut end = slots.len();
    let mut seats = vec![0.0; wishes.len()];
    for rank in (0..wishes.len()).rev() {
        let (cost, slot) = *best[rank].get(end.checked_sub(1)?)?;
        if !cost.is_finite() {
            return None;
        }
        seats[rank] = slots[slot];
        end = slots[..slot].iter().take_while(|other| **other <= slots[slot] - pitch).count();
    }
    Some(seats)
}

#[cfg(test)]
mod tests {
    use super::seats;

    #[test]
    fn seats_keep_order_and_pitch_and_stay_near_their_wishes() {
        let slots: Vec<f64> = (0..=20).map(f64::from).collect();
        assert_eq!(seats(&[5.0, 12.0], &slots, 4.0), Some(vec![5.0, 12.0]));
        let crowded = seats(&[5.0, 5.0, 6.0], &slots, 4.0).unwrap();
        assert!(crowded.windows(2).all(|pair| pair[1] - pair[0] >= 4.0), "{crowded:?}");
        assert_eq!(seats(&[1.0, 1.0], &[0.0, 1.0], 4.0), None);
    }
}

//! Balloons in a row or column, with leaders that end in a dot inside their part (ISO 6433).

mod band;
mod cells;
mod leaders;
mod nearest_slots;
mod placement;
mod room;
mod seen;
mod targets;

use super::appearance::{Appearance, Pen, Tone};
use super::draft::Draft;
use super::letters::Anchor;
use super::plane::{Point, Rect, grown, unit};
use super::scene::{Element, Primitive, Purpose};
use band::Band;
use leaders::{Leaders, View};
use placement::{Placement, Solution};
use room::Room;
use seen::Seen;

/// A balloon to be placed: the part that it points at, and the letters in it.
#[derive(Debug, Clone)]
pub(crate) struct Balloon {
    pub part: usize,
    pub label: String,
    /// Whether it points at a gripping part: then it is black.
    pub grips: bool,
}

impl Draft<'_> {
    /// Radius of a balloon: two figures fit in it.
    pub fn balloon_radius(&self) -> f64 {
        0.86 * self.size()
    }

    /// Places balloons in the order of their numbers: in that order along a band wherever leaders then stay clear of each
    /// other. They stand above the drawing or beside it; below it or on its left only where no leader meets anything or
    /// goes over another part without need there. Where no side takes them all, or a leader goes far over others on it, one of
    /// them stands on another side and the others above; where that does not do either, the drawing isn't complete.
    pub fn balloons(&mut self, balloons: &[Balloon]) {
        let alone = std::slice::from_mut(self);
        let rooms = Room::all(alone);
        if rooms.is_empty() {
            self.complete &= balloons.is_empty();
            return;
        }
        let seen = seen(alone, balloons);
        let found = along_a_band(alone, &seen, balloons, &rooms);
        let turned = match &found {
            None => (0..balloons.len()).find_map(|aside| round_the_corner(alone, &seen, balloons, aside)),
            Some(found) if found.solution.needless > WORTH_A_CORNER => {
                round_the_corner(alone, &seen, balloons, found.solution.worst)
                    .filter(|(cost, _)| cost + CORNER < found.cost)
            }
            Some(_) => None,
        };
        match (turned, found) {
            (Some((_, mut turned)), _) => alone.swap_with_slice(&mut turned),
            (None, Some(found)) => found.put(alone, balloons),
            (None, None) => self.complete = false,
        }
    }

    /// What leaders keep clear of, and where they may end.
    fn view<'s>(&self, seen: &'s Seen, balloons: &[Balloon]) -> View<'s> {
        View {
            seen,
            parts: balloons.iter().map(|balloon| balloon.part).collect(),
            kept_out: self.scene.texts().map(|text| grown(text.bounds(), 0.2)).chain(self.placed()).collect(),
            lines: self.scene.dimension_lines().into_iter().chain(self.scene.leaders()).collect(),
        }
    }

    /// Radius of the dot that a leader ends in.
    fn dot(&self) -> f64 {
        0.17 * self.size()
    }

    /// Boxes round the dots and balloons that have their place.
    fn placed(&self) -> impl Iterator<Item = Rect> {
        let of_balloons =
            |element: &&Element| matches!(element.purpose, Purpose::Leader(_) | Purpose::Balloon(_));
        self.scene.elements.iter().filter(of_balloons).filter_map(|element| match element.primitive {
            Primitive::Circle(..) => Some(grown(element.primitive.bounds(), 0.3)),
            _ => None,
        })
    }

    /// Whether a balloon would lie on no text and no dimension.
    fn leaves_free(&self, reach: Rect) -> bool {
        self.scene.elements.iter().all(|element| match &element.primitive {
            Primitive::Text(text) => !text.bounds().overlaps(reach),
            primitive => {
                !matches!(element.purpose, Purpose::Dimension | Purpose::Leader(_) | Purpose::Balloon(_))
                    || !primitive.strokes_meet(reach)
            }
        })
    }

    /// Distance between centres of neighbouring balloons.
    pub fn balloon_pitch(&self) -> f64 {
        2.0 * self.balloon_radius() + 0.2 * self.size()
    }

    fn balloon(&mut self, balloon: &Balloon, place: Point, target: Point) {
        let (radius, dot) = (self.balloon_radius(), self.dot());
        let from = place + unit(target - place) * radius;
        self.thin(Purpose::Leader(balloon.part), &[from, target]);
        self.scene.circle(Purpose::Leader(balloon.part), target, dot, Appearance::solid(Tone::Ink));
        self.scene.circle(
            Purpose::Balloon(balloon.part),
            place,
            radius,
            Appearance::area(if balloon.grips { Tone::Ink } else { Tone::Paper }, Pen::Thin),
        );
        let number = self.level(place, Anchor::Middle, &balloon.label);
        if balloon.grips { self.scene.toned_text(number, Tone::Paper) } else { self.scene.text(number) }
    }
}

/// Places balloons as [`Draft::balloons`] does, at the same places in each of several drawings of one object.
pub(crate) fn balloons_alike(drafts: &mut [Draft], balloons: &[Balloon]) {
    let rooms = Room::all(drafts);
    if rooms.is_empty() {
        drafts.iter_mut().for_each(|draft| draft.complete &= balloons.is_empty());
        return;
    }
    let seen = seen(drafts, balloons);
    if let Some(found) = along_a_band(drafts, &seen, balloons, &rooms) {
        return found.put(drafts, balloons);
    }
    let turned = (0..balloons.len()).find_map(|aside| round_the_corner(drafts, &seen, balloons, aside));
    match turned {
        Some((_, mut turned)) => drafts.swap_with_slice(&mut turned),
        None => drafts.iter_mut().for_each(|draft| draft.complete = false),
    }
}

/// What is seen of each drawing.
fn seen(drafts: &[Draft], balloons: &[Balloon]) -> Vec<Seen> {
    let parts = balloons.iter().map(|balloon| balloon.part + 1).max().unwrap_or(0);
    // Each place of each drawing is tried with all others.
    let most = if drafts.len() > 1 { 9 } else { 20 };
    drafts.iter().map(|draft| Seen::of(&draft.scene, parts, draft.dot(), most)).collect()
}

/// Leaders that go over others by no more than this without need are as good as any, in millimetres (own rule).
const ENOUGH: f64 = 0.5;

/// So much less must leaders cost, in millimetres of them, for another side than that above (own rule).
fn worth(band: Band) -> f64 {
    match band {
        Band::Above => 0.0,
        Band::Right => 3.0,
        Band::Below | Band::Left => 10.0,
    }
}

/// From here on it is worth trying whether one balloon stands better on a side of its own, in millimetres that leaders go
/// over others without need, and what such a side costs, in millimetres of leader (own rules).
const WORTH_A_CORNER: f64 = 1.5;
const CORNER: f64 = 15.0;

/// Places of all balloons along a band.
struct Found {
    /// What leaders cost, and their side.
    cost: f64,
    solution: Solution,
}

impl Found {
    fn put(self, drafts: &mut [Draft], balloons: &[Balloon]) {
        for (draft, placed) in drafts.iter_mut().zip(self.solution.placed) {
            for (balloon, (place, target)) in balloons.iter().zip(placed) {
                draft.balloon(balloon, place, target);
            }
        }
    }
}

/// Places along the first of some bands that takes all balloons with no leader over what it need not go over; where
/// there is none, along that where leaders cost least.
fn along_a_band(drafts: &[Draft], seen: &[Seen], balloons: &[Balloon], rooms: &[Room]) -> Option<Found> {
    let radius = drafts.first()?.balloon_radius();
    let views: Vec<View> = drafts.iter().zip(seen).map(|(draft, seen)| draft.view(seen, balloons)).collect();
    let mut best: Option<Found> = None;
    for room in rooms {
        let band = room.frame.band;
        let Some(needless) = needless(&views, band) else { continue };
        if best.as_ref().is_some_and(|best| best.solution.needless <= needless + ENOUGH) {
            continue;
        }
        let slots = room.slots(drafts, balloons.len());
        let leaders = Leaders::new(&views, &slots, room.frame, radius);
        let Some(solution) = Placement(leaders).solve() else { continue };
        // A row or column longer than the drawing may take it out of its room.
        if !Room::holds(drafts, solution.placed.iter().flatten().map(|(place, _)| *place)) {
            continue;
        }
        let cost = solution.cost + worth(band);
        if best.as_ref().is_none_or(|best| cost < best.cost) {
            best = Some(Found { cost, solution });
        }
    }
    best
}

/// How far leaders from a band go over others at least, beyond what they must; nothing where a part has no place for a
/// dot.
fn needless(views: &[View], band: Band) -> Option<f64> {
    let all = views.iter().flat_map(|view| view.parts.iter().map(|part| (view.seen, *part)));
    let of = |(seen, part): (&Seen, usize)| {
        (!seen.targets(part, band).is_empty()).then(|| (seen.needless(part, band) - ENOUGH).max(0.0))
    };
    all.map(of).sum()
}

/// One balloon on a side of its own and all others above the drawings, where that keeps them clear of each other, with what
/// leaders cost.
fn round_the_corner<'a>(
    drafts: &[Draft<'a>],
    seen: &[Seen],
    balloons: &[Balloon],
    aside: usize,
) -> Option<(f64, Vec<Draft<'a>>)> {
    let mut above = balloons.to_vec();
    let beside = [above.remove(aside)];
    let mut tried = drafts.to_vec();
    let (row, _) = rooms(&tried);
    let row = along_a_band(&tried, seen, &above, &row)?;
    let cost = row.cost;
    row.put(&mut tried, &above);
    let (_, others) = rooms(&tried);
    let found = along_a_band(&tried, seen, &beside, &others)?;
    let cost = cost + found.cost;
    found.put(&mut tried, &beside);
    Some((cost, tried))
}

/// The rows above the drawings that there is room for, and what there is on other sides.
fn rooms(drafts: &[Draft]) -> (Vec<Room>, Vec<Room>) {
    Room::all(drafts).into_iter().partition(|room| room.frame.band == Band::Above)
}

//! A free place of its own for one balloon, where no row or column leaves it a good way to its part.

use super::leaders::{CONFLICT, View};
use super::room::Room;
use crate::sketch::draft::Draft;
use crate::sketch::plane::{Line, Point, Rect, around, at, grown};
use crate::sketch::scene::{Element, Primitive};

/// How far free places lie apart, and how far beyond the drawing they reach, in radii of a balloon.
const APART: f64 = 1.0;
const BEYOND: f64 = 4.0;
/// What stays free round a balloon, in millimetres.
const FREE: f64 = 0.5;

/// Where a balloon stands, where its leader ends in each drawing, and what these leaders cost.
pub(super) struct Aside {
    pub cost: f64,
    pub place: Point,
    pub targets: Vec<Point>,
}

/// The free place whose leaders cost least; `views` are for this balloon alone, one of each drawing.
pub(super) fn free_place(drafts: &[Draft], views: &[View]) -> Option<Aside> {
    let radius = drafts.first()?.balloon_radius();
    let room = Room::left(drafts, BEYOND * radius);
    let least = |place: &Point| views.iter().map(|view| view.at_least(0, *place)).sum();
    let mut places: Vec<(f64, Point)> =
        places(room, APART * radius).map(|place| (least(&place), place)).collect();
    places.sort_by(|one, other| one.0.total_cmp(&other.0));
    let elements = drafts.iter().flat_map(|draft| &draft.scene.elements);
    let obstacles: Vec<(Rect, &Element)> = elements.map(|of| (of.primitive.bounds(), of)).collect();
    let mut best: Option<Aside> = None;
    for (least, place) in places {
        let bound = best.as_ref().map_or(CONFLICT, |best| best.cost);
        if least >= bound {
            break;
        }
        let reach = grown(around([place]), radius + FREE);
        let is_open = || views.iter().all(|view| view.seen.cells.is_open(place));
        if obstacles.iter().all(|(bounds, of)| !bounds.overlaps(reach) || is_clear_of(of, reach)) && is_open()
        {
            best = leaders_to(views, place, bound).or(best);
        }
    }
    best
}

/// The leaders from a place that cost least, where that is less than `bound`.
fn leaders_to(views: &[View], place: Point, bound: f64) -> Option<Aside> {
    let mut found = Aside { cost: 0.0, place, targets: Vec::with_capacity(views.len()) };
    for view in views {
        let (mut least, mut end) = (bound - found.cost, None);
        for target in view.places_of(0) {
            let cost = view.cost(0, target, Line::new(place, target.place), least);
            if cost < least {
                (least, end) = (cost, Some(target.place));
            }
        }
        found.cost += least;
        found.targets.push(end?);
    }
    Some(found)
}

/// Places all over a box.
fn places(room: Rect, step: f64) -> impl Iterator<Item = Point> {
    let count = move |length: f64| (length / step).max(0.0) as usize;
    let rows = 0..=count(room.height());
    let all = rows.flat_map(move |row| (0..=count(room.width())).map(move |column| (column, row)));
    all.map(move |(column, row)| room.origin() + at(column as f64, row as f64).to_vec2() * step)
}

/// Whether an element leaves a box free.
fn is_clear_of(element: &Element, reach: Rect) -> bool {
    match &element.primitive {
        Primitive::Text(_) => false,
        primitive => !primitive.strokes_meet(reach) && !primitive.contains(reach.center()),
    }
}

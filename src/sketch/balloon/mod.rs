//! Balloons in a row or column, with leaders that end in a dot inside their part (ISO 6433).

mod aside;
mod band;
mod cells;
mod leaders;
mod placement;
mod room;
mod seen;
mod slots;
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
use slots::Slots;

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
    /// goes over another part without need there. Where no side takes them all, or a leader goes over others without need
    /// on it, one or two stand elsewhere; where that does not do either, the drawing isn't complete.
    pub fn balloons(&mut self, balloons: &[Balloon]) {
        balloons_alike(std::slice::from_mut(self), balloons);
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
                !matches!(
                    element.purpose,
                    Purpose::Dimension | Purpose::Pointer | Purpose::Leader(_) | Purpose::Balloon(_)
                ) || !primitive.strokes_meet(reach)
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
    // What has no room as it is has none for balloons.
    let fit = drafts.iter().all(Draft::fits);
    let placed = fit.then(|| placed(drafts, &seen(drafts, balloons), balloons, MOST_ASIDE)).flatten();
    match placed {
        Some((_, mut placed)) => drafts.swap_with_slice(&mut placed),
        None => drafts.iter_mut().for_each(|draft| draft.complete &= balloons.is_empty()),
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

/// The least room between two balloons in a row, in millimetres (own rule).
const BETWEEN: f64 = 0.3;

/// What it costs that a balloon stands elsewhere, in millimetres of leader, and how many do at most (own rules).
const ELSEWHERE: f64 = 9.0;
const MOST_ASIDE: usize = 2;

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

/// Places along the first of the bands that takes all balloons with no leader over what it need not go over; where there is
/// none, along that where leaders cost least.
fn along_a_band(drafts: &[Draft], seen: &[Seen], balloons: &[Balloon]) -> Option<Found> {
    let radius = drafts.first()?.balloon_radius();
    let views = views(drafts, seen, balloons);
    let mut best: Option<Found> = None;
    for room in Room::all(drafts) {
        let band = room.frame.band;
        let Some(needless) = needless(&views, band) else { continue };
        if best.as_ref().is_some_and(|best| best.solution.needless <= needless + ENOUGH) {
            continue;
        }
        let slots = Slots::new(room.slots(drafts, balloons.len()), 2.0 * radius + BETWEEN);
        let leaders = Leaders::new(&views, &slots, room.frame, radius);
        let Some(solution) = Placement(leaders).solve() else { continue };
        // A row or column longer than the drawing may take it out of its room.
        if !room.holds(drafts, solution.placed.iter().flatten().map(|(place, _)| *place)) {
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

/// The drawings with balloons along a band, so many of them elsewhere at most where that is better, and what leaders cost.
fn placed<'a>(
    drafts: &[Draft<'a>],
    seen: &[Seen],
    balloons: &[Balloon],
    elsewhere: usize,
) -> Option<(f64, Vec<Draft<'a>>)> {
    if balloons.is_empty() {
        return Some((0.0, drafts.to_vec()));
    }
    let found = along_a_band(drafts, seen, balloons);
    let aside = match &found {
        _ if elsewhere == 0 => None,
        None => (0..balloons.len()).find_map(|aside| one_elsewhere(drafts, seen, balloons, aside, 0)),
        // What stands at one place in several drawings has a good way in few of them: a row is read more easily.
        Some(_) if drafts.len() > 1 => None,
        Some(found) => {
            let astray = found.solution.astray.iter().take(elsewhere);
            let tried =
                astray.filter_map(|aside| one_elsewhere(drafts, seen, balloons, *aside, elsewhere - 1));
            tried.min_by(|one, other| one.0.total_cmp(&other.0)).filter(|(cost, _)| *cost < found.cost)
        }
    };
    aside.or_else(|| {
        found.map(|found| {
            let (cost, mut drafts) = (found.cost, drafts.to_vec());
            found.put(&mut drafts, balloons);
            (cost, drafts)
        })
    })
}

/// The drawings with one balloon at a place of its own; so many of the others may stand elsewhere, too.
fn one_elsewhere<'a>(
    drafts: &[Draft<'a>],
    seen: &[Seen],
    balloons: &[Balloon],
    aside: usize,
    elsewhere: usize,
) -> Option<(f64, Vec<Draft<'a>>)> {
    let mut others = balloons.to_vec();
    let alone = [others.remove(aside)];
    let (cost, mut placed) = placed(drafts, seen, &others, elsewhere)?;
    let aside = aside::free_place(&placed, &views(&placed, seen, &alone))?;
    for (draft, target) in placed.iter_mut().zip(aside.targets) {
        draft.balloon(&alone[0], aside.place, target);
    }
    Some((cost + aside.cost + ELSEWHERE, placed))
}

/// What leaders of these balloons keep clear of in each drawing.
fn views<'s>(drafts: &[Draft], seen: &'s [Seen], balloons: &[Balloon]) -> Vec<View<'s>> {
    drafts.iter().zip(seen).map(|(draft, seen)| draft.view(seen, balloons)).collect()
}

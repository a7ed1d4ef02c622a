//! What each leader costs, worked out once: the search for places asks for the same ones again and again.

use super::band::Frame;
use super::seen::Seen;
use super::slots::Slots;
use super::targets::{OVER_OTHERS, Target};
use crate::sketch::plane::{Line, Point, Rect, enters, segments_meet};
use kurbo::ParamCurveNearest as _;

/// What a leader that meets something costs, in millimetres of leader: more than all that leaders cost otherwise.
pub(super) const CONFLICT: f64 = 10_000.0;
/// What a millimetre costs that a leader goes over another part and need not, beside what each costs that it goes over one.
const NEEDLESS: f64 = 8.0;
/// By so little a leader may go over others that it need not, in millimetres: the eye sees no better way (own rule).
const SLACK: f64 = 0.6;
/// What a millimetre of a leader costs; one that the balloon stands beside its target costs a whole one more.
const LONG: f64 = 0.3;
/// From here on nobody follows a leader easily, in millimetres, and what each more costs (own rule).
const FAR: f64 = 30.0;
const TOO_LONG: f64 = 0.7;

/// So many places towards each side are tried for a balloon by itself.
const FEW: usize = 6;

/// What the length of a leader costs.
fn reaching(length: f64) -> f64 {
    LONG * length + TOO_LONG * (length - FAR).max(0.0)
}

/// What a drawing has for leaders to end at, and to keep clear of.
pub(super) struct View<'s> {
    pub seen: &'s Seen,
    /// The part of every item.
    pub parts: Vec<usize>,
    /// Boxes that leaders stay out of.
    pub kept_out: Vec<Rect>,
    /// Lines that leaders do not cross.
    pub lines: Vec<Line>,
}

/// How far a leader goes over others, and how far of that it need not, in millimetres.
struct Over {
    all: f64,
    needless: f64,
}

impl Over {
    fn cost(&self) -> f64 {
        OVER_OTHERS * self.all + NEEDLESS * self.needless
    }
}

impl View<'_> {
    /// How far a leader goes over others, in millimetres, and how far beyond what it must; no further than it takes to cost
    /// `enough`.
    fn over(&self, item: usize, line: Line, enough: f64) -> Over {
        let part = self.parts[item];
        let free = self.seen.aims[part].least_over + SLACK;
        let enough =
            (enough / OVER_OTHERS).min((enough + NEEDLESS * free) / (OVER_OTHERS + NEEDLESS)).max(0.0);
        let all = self.seen.cells.over_others(part, line, enough);
        Over { all, needless: (all - free).max(0.0) }
    }

    /// Where leaders to an item may end, whatever side they come from: the cheapest places towards each.
    pub fn places_of(&self, item: usize) -> impl Iterator<Item = Target> {
        self.seen.aims[self.parts[item]].towards.iter().flat_map(|towards| towards.iter().take(FEW).copied())
    }

    /// What a leader to an item from a place costs at least.
    pub fn at_least(&self, item: usize, place: Point) -> f64 {
        let costs = self.places_of(item).map(|target| target.cost + reaching(target.place.distance(place)));
        costs.fold(f64::INFINITY, f64::min)
    }

    /// What a leader that meets nothing costs.
    fn free_cost(target: Target, line: Line) -> f64 {
        target.cost + reaching(line.p0.distance(line.p1))
    }

    /// What a leader costs by itself, wherever its balloon stands; where that is no less than `bound`, any number from
    /// `bound` to it.
    pub fn cost(&self, item: usize, target: Target, line: Line, bound: f64) -> f64 {
        let free = Self::free_cost(target, line);
        if free >= bound {
            return free;
        }
        let crossed = self.lines.iter().filter(|of| segments_meet(line, **of)).count();
        let entered = self.kept_out.iter().filter(|kept| enters(line, **kept)).count();
        let met = free + CONFLICT * (crossed + entered) as f64;
        if met >= bound { met } else { met + self.over(item, line, bound - met).cost() }
    }
}

/// The leaders from the slots of a band to the targets of all items.
pub(super) struct Leaders<'l> {
    pub views: &'l [View<'l>],
    /// Where balloons may stand along the band.
    pub slots: &'l Slots,
    pub frame: Frame,
    /// Radius of a balloon.
    pub radius: f64,
    /// What is known of costs, by view, item, target and slot.
    known: Vec<Known>,
    most: usize,
}

/// What is known of what a leader costs: that it is no less than this, or, where it is whole, just this.
#[derive(Clone, Copy)]
struct Known {
    least: f64,
    is_whole: bool,
}

impl Known {
    const NOTHING: Self = Self { least: f64::NAN, is_whole: false };
}

impl<'l> Leaders<'l> {
    pub fn new(views: &'l [View<'l>], slots: &'l Slots, frame: Frame, radius: f64) -> Self {
        let items = views.first().map_or(0, |view| view.parts.len());
        let of = |view: &View<'_>, item: usize| view.seen.targets(view.parts[item], frame.band).len();
        let all = views.iter().flat_map(|view| (0..items).map(move |item| of(view, item)));
        let most = all.max().unwrap_or(0);
        let known = vec![Known::NOTHING; views.len() * items * most * slots.places.len()];
        Self { views, slots, frame, radius, known, most }
    }

    pub fn items(&self) -> usize {
        self.views.first().map_or(0, |view| view.parts.len())
    }

    pub fn targets(&self, view: usize, item: usize) -> &'l [Target] {
        let view = &self.views[view];
        view.seen.targets(view.parts[item], self.frame.band)
    }

    pub fn line(&self, (view, item): (usize, usize), target: usize, slot: usize) -> Line {
        Line::new(self.frame.place(self.slots.places[slot]), self.targets(view, item)[target].place)
    }

    /// What a leader to a target costs at least, wherever its balloon stands.
    pub fn at_least(&self, (view, item): (usize, usize), target: usize) -> f64 {
        let target = self.targets(view, item)[target];
        target.cost + reaching((self.frame.across(target.place) - self.frame.level).abs())
    }

    /// What a leader costs by itself; where that is no less than `bound`, any number from `bound` to it.
    pub fn cost(&mut self, of: (usize, usize), target: usize, slot: usize, bound: f64) -> f64 {
        let index = self.index(of, target, slot);
        let known = self.known[index];
        if known.is_whole || known.least >= bound {
            return known.least;
        }
        let (line, slant) = (self.line(of, target, slot), self.slant(of, target, slot));
        let ended = self.targets(of.0, of.1)[target];
        let least = slant + self.views[of.0].cost(of.1, ended, line, bound - slant);
        self.known[index] = Known { least, is_whole: least < bound };
        least
    }

    /// What is known of that without following the leader: it costs no less.
    pub fn least(&mut self, of: (usize, usize), target: usize, slot: usize) -> f64 {
        let index = self.index(of, target, slot);
        if self.known[index].least.is_nan() {
            let ended = self.targets(of.0, of.1)[target];
            self.known[index].least =
                self.slant(of, target, slot) + View::free_cost(ended, self.line(of, target, slot));
        }
        self.known[index].least
    }

    fn index(&self, (view, item): (usize, usize), target: usize, slot: usize) -> usize {
        ((view * self.items() + item) * self.most + target) * self.slots.places.len() + slot
    }

    /// How far the balloon stands beside its target.
    fn slant(&self, of: (usize, usize), target: usize, slot: usize) -> f64 {
        (self.slots.places[slot] - self.frame.along(self.targets(of.0, of.1)[target].place)).abs()
    }

    /// How far beyond what it must a leader goes over others, in millimetres.
    pub fn needless(&self, of: (usize, usize), target: usize, slot: usize) -> f64 {
        self.views[of.0].over(of.1, self.line(of, target, slot), f64::INFINITY).needless
    }

    /// How many leaders of a drawing meet each other, or a foreign dot or balloon.
    pub fn meet(&self, lines: &[Line]) -> usize {
        let of = |index: usize| {
            lines[..index].iter().map(|other| self.pair_meets(lines[index], *other)).sum::<usize>()
        };
        (1..lines.len()).map(of).sum()
    }

    fn pair_meets(&self, one: Line, other: Line) -> usize {
        let covered = |line: Line, Line { p0: balloon, p1: dot }: Line| {
            let off = |point: Point| line.nearest(point, 0.0).distance_sq.sqrt();
            usize::from(off(dot) < 0.8 || off(balloon) < self.radius + 0.2)
        };
        usize::from(segments_meet(one, other)) + covered(one, other) + covered(other, one)
    }
}

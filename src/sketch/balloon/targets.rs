//! Where the dot of a leader may lie: well inside what is seen of its part, with little of others on the way out.

use super::band::{Band, Frame};
use super::cells::{Cells, Met};
use crate::sketch::appearance::Tone;
use crate::sketch::plane::{Point, Rect, Vec2, around, grown};
use crate::sketch::scene::{Element, Purpose, Scene};
use std::f64::consts::FRAC_PI_4;

/// Where a dot may lie, and what the place costs.
#[derive(Debug, Clone, Copy)]
pub(super) struct Target {
    pub place: Point,
    pub cost: f64,
}

/// What a part has for leaders to end at.
#[derive(Debug, Clone, Default)]
pub(super) struct Aims {
    /// For each side, by its number: the places, the cheapest first.
    pub towards: [Vec<Target>; 4],
    /// The least that a straight way to each side goes over others, in millimetres, and to any side.
    pub over_towards: [f64; 4],
    pub least_over: f64,
}

/// A part that ends nearer than this to a dot is a scrap that nobody makes out, in millimetres (own rule).
const SCRAP: f64 = 0.1;
/// From here on a place has room enough round its dot, in millimetres.
const ROOMY: f64 = 1.2;
/// What a millimetre costs that a leader goes over another part: as much as two that it is longer.
pub(super) const OVER_OTHERS: f64 = 2.0;
/// Places this near to each other along a side are as good as one, in millimetres.
const ALIKE: f64 = 0.7;

/// A place with how far the way from a side to it lies over others, in millimetres.
#[derive(Clone, Copy)]
struct Candidate {
    target: Target,
    over: f64,
}

impl Candidate {
    fn whole_cost(&self) -> f64 {
        self.target.cost + OVER_OTHERS * self.over
    }
}

/// What is seen of a part.
struct Part {
    /// Its cells that hold a dot.
    holding: Vec<usize>,
    /// The box round their middles, and the mean of these.
    bounds: Rect,
    mean: Point,
}

/// What each of so many parts has for leaders to end at, so many places towards each side at most, for dots of this radius.
pub(super) fn aims(scene: &Scene, cells: &Cells, parts: usize, dot: f64, most: usize) -> Vec<Aims> {
    let parts = self::parts(scene, cells, parts, dot);
    let mut holds = vec![false; cells.clearance.len()];
    parts.iter().flat_map(|part| &part.holding).for_each(|cell| holds[*cell] = true);
    let mut aims: Vec<Aims> = parts.iter().map(|_| Aims::default()).collect();
    for (number, band) in Band::ALL.into_iter().enumerate() {
        // Of each part: the best place of each stretch along the side.
        let mut best: Vec<Vec<Option<Candidate>>> = parts.iter().map(|_| Vec::new()).collect();
        cells.inward_from(band, &holds, |Met { part, line, cell, place, over }| {
            let found = Candidate { target: parts[part].target(place, cells.clearance[cell], band), over };
            let (stretch, best) = ((line as f64 * cells.side / ALIKE) as usize, &mut best[part]);
            best.resize(best.len().max(stretch + 1), None);
            if best[stretch].is_none_or(|kept| found.whole_cost() < kept.whole_cost()) {
                best[stretch] = Some(found);
            }
        });
        for (aims, best) in aims.iter_mut().zip(best) {
            let best: Vec<Candidate> = best.into_iter().flatten().collect();
            aims.over_towards[number] = best.iter().map(|of| of.over).fold(f64::INFINITY, f64::min);
            aims.towards[number] = chosen(best, most);
        }
    }
    for aims in &mut aims {
        aims.least_over = aims.over_towards.iter().copied().fold(f64::INFINITY, f64::min);
    }
    aims
}

impl Part {
    fn of(holding: Vec<usize>, cells: &Cells) -> Self {
        let middles = || holding.iter().map(|cell| cells.middle_of(*cell));
        let sum = middles().fold(Vec2::ZERO, |sum, place| sum + place.to_vec2());
        let mean = (sum / (holding.len() as f64).max(1.0)).to_point();
        Self { bounds: around(middles()), mean, holding }
    }

    /// A place of it for a leader from a band: roomy, near its middle along the band, not deep in it.
    fn target(&self, place: Point, clearance: f64, band: Band) -> Target {
        let frame = Frame { band, level: 0.0 };
        let deep = (frame.across(place) - band.level(self.bounds, 0.0)).abs();
        let off = (frame.along(place) - frame.along(self.mean)).abs();
        Target { place, cost: (ROOMY - clearance).max(0.0) + 0.1 * (off + deep) }
    }
}

/// What is seen of each part.
fn parts(scene: &Scene, cells: &Cells, count: usize, dot: f64) -> Vec<Part> {
    let texts: Vec<Rect> = scene.texts().map(|text| grown(text.bounds(), 0.4)).collect();
    let areas = Areas::of(scene);
    let mut all: Vec<Vec<usize>> = vec![Vec::new(); count];
    for cell in 0..cells.clearance.len() {
        if let Some(of) = cells.part(cell).and_then(|part| all.get_mut(part)) {
            of.push(cell);
        }
    }
    let mut parts = Vec::with_capacity(count);
    for (part, mut of) in all.into_iter().enumerate() {
        of.retain(|cell| !texts.iter().any(|text| text.contains(cells.middle_of(*cell))));
        parts.push(Part::of(holding(&areas, part, &of, cells, dot), cells));
    }
    parts
}

/// The cells of a part in whose middle a dot lies wholly in it and on no mark; where there are none, on a mark, too; where
/// none is so large, in which a smaller one does.
fn holding(areas: &Areas, part: usize, all: &[usize], cells: &Cells, dot: f64) -> Vec<usize> {
    let is_roomy =
        |cell: &usize| !cells.is_painted(*cell) && cells.clearance[*cell] >= dot + cells.side / 2.0;
    let roomy: Vec<usize> = all.iter().copied().filter(is_roomy).collect();
    if !roomy.is_empty() {
        return roomy;
    }
    // A cell is too coarse a measure for what is as thin as this.
    let best: Vec<usize> =
        [false, true].into_iter().flat_map(|marked| clearest(all, cells, marked)).collect();
    let tiers = [(dot, false), (dot / 2.0, false), (dot, true), (dot / 2.0, true), (1.2 * SCRAP, true)];
    let held = tiers.into_iter().map(|(radius, marked)| -> Vec<usize> {
        let holds = |cell: &usize| areas.holds((part, marked), cells.middle_of(*cell), radius);
        best.iter().copied().filter(holds).collect()
    });
    held.into_iter().find(|held| !held.is_empty()).unwrap_or_default()
}

/// So many cells of a part are looked at more closely than as cells: it takes long.
const FEW: usize = 60;

/// Those of its cells on its mark, or off it, that have most room round them, from all over the part.
fn clearest(all: &[usize], cells: &Cells, marked: bool) -> impl Iterator<Item = usize> {
    let mut all: Vec<usize> = all.iter().copied().filter(|cell| cells.is_painted(*cell) == marked).collect();
    all.sort_by(|a, b| cells.clearance[*b].total_cmp(&cells.clearance[*a]));
    let stride = (all.len() / FEW).clamp(1, 6);
    all.into_iter().step_by(stride).take(FEW)
}

/// Areas back to front with their boxes, to look up what is seen at a point.
struct Areas<'s>(Vec<(&'s Element, Rect)>);

impl<'s> Areas<'s> {
    fn of(scene: &'s Scene) -> Self {
        let areas = scene.elements.iter().filter(|element| {
            matches!(element.purpose, Purpose::Cut(_) | Purpose::View(_) | Purpose::Wire | Purpose::Empty)
        });
        Self(areas.map(|of| (of, of.primitive.bounds())).collect())
    }

    /// Whether a circle round a place lies in what is seen of a part, its mark counted or not.
    fn holds(&self, (part, painted): (usize, bool), place: Point, radius: f64) -> bool {
        let round = (0..8).map(|eighth| place + Vec2::from_angle(f64::from(eighth) * FRAC_PI_4) * radius);
        [place].into_iter().chain(round).all(|point| {
            let mut there = self.0.iter().rev().filter(|(_, bounds)| bounds.contains(point));
            there.find(|(of, _)| of.primitive.contains(point)).is_some_and(|(of, _)| {
                let marked = matches!(of.appearance.fill, Some(Tone::Paint(_)));
                matches!(of.purpose, Purpose::Cut(p) | Purpose::View(p) if p == part) && (painted || !marked)
            })
        })
    }
}

/// The cheapest places, and some of the rest from all over the part.
fn chosen(mut all: Vec<Candidate>, most: usize) -> Vec<Target> {
    all.sort_by(|a, b| a.whole_cost().total_cmp(&b.whole_cost()));
    let cheapest = most * 2 / 5;
    let rest = all.split_off(all.len().min(cheapest));
    let stride = rest.len().div_ceil(most - cheapest).max(1);
    all.extend(rest.into_iter().step_by(stride));
    // How far a leader lies over others is counted on its own way.
    all.into_iter().map(|of| of.target).collect()
}

//! Which balloon stands where: leaders that meet nothing, short, over as little of others as can be, in the order of the items.

use super::leaders::{CONFLICT, Leaders};
use super::slots::Slots;
use crate::sketch::plane::{Line, Point};

/// What a balloon out of its order costs, in millimetres of leader.
const DISORDER: f64 = 12.0;
/// What costs no more than this beyond the least that there could be is not looked for any further.
const ENOUGH: f64 = 6.0;
/// A leader that goes further over others without need, in millimetres, may be worth a place elsewhere (own rule).
const ASTRAY: f64 = 0.6;
/// More than sums of costs are off because numbers are rounded.
const ROUNDING: f64 = 1e-6;
/// How often all items are gone through.
const ROUNDS: usize = 4;

/// Of every drawing: which of its targets each item has.
type Chosen = Vec<Vec<usize>>;

/// Places of all balloons.
pub(super) struct Solution {
    /// Of every drawing: the balloon's place and its target of each item.
    pub placed: Vec<Vec<(Point, Point)>>,
    /// How far leaders go over others and need not, in millimetres; the items whose do by more than the eye
    /// overlooks, the worst first.
    pub needless: f64,
    pub astray: Vec<usize>,
    /// What the leaders cost, in millimetres of them.
    pub cost: f64,
}

/// The choice of a slot for every balloon, and of a target for it in every drawing that it stands in: mostly there is one.
pub(super) struct Placement<'l>(pub Leaders<'l>);

/// A choice with the slots that its balloons get.
struct Tried {
    cost: f64,
    chosen: Chosen,
    slots: Vec<usize>,
}

impl Placement<'_> {
    /// Balloon place and target of each item, where no leader meets anything: descends from several starts,
    /// changing one item at a time.
    pub fn solve(mut self) -> Option<Solution> {
        let least: f64 = self.at_least(&self.nearest());
        let mut best: Option<Tried> = None;
        for start in [self.rising(), self.cheapest(), self.nearest()] {
            let tried = self.descend(start)?;
            let tried = self.shifted(tried);
            if best.as_ref().is_none_or(|best| tried.cost < best.cost) {
                best = Some(tried);
            }
            if best.as_ref().is_some_and(|best| best.cost < least + ENOUGH) {
                break;
            }
        }
        let Tried { chosen, slots, cost } = self.freed(best?);
        if cost >= CONFLICT {
            return None;
        }
        let all = || self.all().map(|of| (of, chosen[of.0][of.1], slots[of.1]));
        let mut needless = vec![0.0; slots.len()];
        all().for_each(|(of, target, slot)| needless[of.1] += self.0.needless(of, target, slot));
        let mut astray: Vec<usize> = (0..slots.len()).filter(|item| needless[*item] > ASTRAY).collect();
        astray.sort_by(|one, other| needless[*other].total_cmp(&needless[*one]));
        let needless = needless.into_iter().sum();
        let mut placed = vec![Vec::with_capacity(slots.len()); self.0.views.len()];
        for (of, target, slot) in all() {
            let line = self.0.line(of, target, slot);
            placed[of.0].push((line.p0, line.p1));
        }
        Some(Solution { placed, needless, astray, cost })
    }

    /// All items of all drawings.
    fn all(&self) -> impl Iterator<Item = (usize, usize)> + use<> {
        let items = self.0.items();
        (0..self.0.views.len()).flat_map(move |view| (0..items).map(move |item| (view, item)))
    }

    fn cheapest(&self) -> Chosen {
        vec![vec![0; self.0.items()]; self.0.views.len()]
    }

    /// The targets that leaders cost least to, wherever balloons stand.
    fn nearest(&self) -> Chosen {
        let mut chosen = self.cheapest();
        for of in self.all() {
            let targets = 0..self.0.targets(of.0, of.1).len();
            let least = targets.min_by(|a, b| self.0.at_least(of, *a).total_cmp(&self.0.at_least(of, *b)));
            chosen[of.0][of.1] = least.unwrap_or(0);
        }
        chosen
    }

    /// Targets that rise along the band with the item numbers, as far as the parts allow.
    fn rising(&self) -> Chosen {
        let mut chosen = self.cheapest();
        for (view, chosen) in chosen.iter_mut().enumerate() {
            let mut least = f64::NEG_INFINITY;
            for (item, chosen) in chosen.iter_mut().enumerate() {
                let targets = self.0.targets(view, item);
                let along = |index: &usize| self.0.frame.along(targets[*index].place);
                let beyond = (0..targets.len()).filter(|index| along(index) > least);
                let next = beyond.min_by(|a, b| along(a).total_cmp(&along(b)));
                least = next.map_or(least, |index| along(&index) + 1.0);
                *chosen = next.unwrap_or(0);
            }
        }
        chosen
    }

    fn descend(&mut self, chosen: Chosen) -> Option<Tried> {
        let (cost, slots) = self.cost(&chosen, f64::INFINITY)?;
        let mut best = Tried { cost, chosen, slots };
        for _ in 0..ROUNDS {
            let before = best.cost;
            for (view, item) in self.all() {
                for index in 0..self.0.targets(view, item).len() {
                    let kept = std::mem::replace(&mut best.chosen[view][item], index);
                    match self.cost(&best.chosen, best.cost - 1e-9) {
                        Some((cost, slots)) => (best.cost, best.slots) = (cost, slots),
                        None => best.chosen[view][item] = kept,
                    }
                }
            }
            if best.cost >= before - 1e-9 {
                break;
            }
        }
        Some(best)
    }

    /// Balloons moved along the band, one at a time, as long as that is better.
    fn shifted(&mut self, mut best: Tried) -> Tried {
        for _ in 0..2 {
            let before = best.cost;
            for item in 0..best.slots.len() {
                self.shift(&mut best, item);
            }
            if best.cost >= before - 1e-9 {
                break;
            }
        }
        best
    }

    /// Moves one balloon along the band to where all leaders cost least.
    fn shift(&mut self, best: &mut Tried, item: usize) {
        for slot in 0..self.0.slots.places.len() {
            let kept = std::mem::replace(&mut best.slots[item], slot);
            let Slots { places, pitch, .. } = self.0.slots;
            let apart = best
                .slots
                .iter()
                .enumerate()
                .all(|(other, at)| other == item || (places[*at] - places[slot]).abs() >= *pitch);
            let bound = best.cost - 1e-9;
            let cost = if apart { self.cost_at(&best.chosen, &best.slots, bound) } else { None };
            match cost {
                Some(cost) => best.cost = cost,
                None => best.slots[item] = kept,
            }
        }
    }

    /// Where leaders still meet something: one item at a time in every slot with every target.
    fn freed(&mut self, mut best: Tried) -> Tried {
        for _ in 0..ROUNDS {
            let before = best.cost;
            for (view, item) in self.all() {
                if best.cost < CONFLICT {
                    return best;
                }
                for index in 0..self.0.targets(view, item).len() {
                    let (cost, kept) = (best.cost, best.chosen[view][item]);
                    best.chosen[view][item] = index;
                    self.shift(&mut best, item);
                    if best.cost >= cost {
                        best.chosen[view][item] = kept;
                    }
                }
            }
            if best.cost >= before - 1e-9 {
                break;
            }
        }
        best
    }

    fn at_least(&self, chosen: &Chosen) -> f64 {
        self.all().map(|of| self.0.at_least(of, chosen[of.0][of.1])).sum()
    }

    /// What a choice costs, with the balloons' slots; nothing where that is no less than `bound`.
    fn cost(&mut self, chosen: &Chosen, bound: f64) -> Option<(f64, Vec<usize>)> {
        if self.at_least(chosen) >= bound {
            return None;
        }
        let slots = self.arranged(chosen)?;
        self.cost_at(chosen, &slots, bound).map(|cost| (cost, slots))
    }

    fn cost_at(&mut self, chosen: &Chosen, slots: &[usize], bound: f64) -> Option<f64> {
        let disorder = slots.windows(2).filter(|pair| pair[1] < pair[0]).count();
        let mut cost = DISORDER * disorder as f64;
        // To follow a leader takes long, and most choices cost too much before any is followed.
        let least =
            |leaders: &mut Leaders, of: (usize, usize)| leaders.least(of, chosen[of.0][of.1], slots[of.1]);
        let mut rest: f64 = self.all().map(|of| least(&mut self.0, of)).sum();
        for of in self.all() {
            if cost + rest >= bound + ROUNDING {
                return None;
            }
            rest -= least(&mut self.0, of);
            cost += self.0.cost(of, chosen[of.0][of.1], slots[of.1], bound + ROUNDING - cost - rest);
        }
        if cost >= bound {
            return None;
        }
        for (view, chosen) in chosen.iter().enumerate() {
            let line = |item: usize| self.0.line((view, item), chosen[item], slots[item]);
            let lines: Vec<Line> = (0..slots.len()).map(line).collect();
            cost += CONFLICT * self.0.meet(&lines) as f64;
        }
        (cost < bound).then_some(cost)
    }

    /// Balloons in the order of their targets, each as near to its own as their pitch allows.
    fn arranged(&self, chosen: &Chosen) -> Option<Vec<usize>> {
        let place = |view: usize, item: usize| self.0.targets(view, item)[chosen[view][item]].place;
        let wish = |item: usize| {
            let along = chosen.iter().enumerate().map(|(view, _)| self.0.frame.along(place(view, item)));
            along.sum::<f64>() / chosen.len() as f64
        };
        let mut order: Vec<(usize, f64)> = (0..self.0.items()).map(|item| (item, wish(item))).collect();
        order.sort_by(|a, b| a.1.total_cmp(&b.1));
        let wishes: Vec<f64> = order.iter().map(|(_, wish)| *wish).collect();
        let nearest = self.0.slots.nearest(&wishes)?;
        let mut slots = vec![0; order.len()];
        for ((item, _), slot) in order.into_iter().zip(nearest) {
            slots[item] = slot;
        }
        Some(slots)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sketch::appearance::{Appearance, Tone};
    use crate::sketch::balloon::band::{Band, Frame};
    use crate::sketch::balloon::leaders::View;
    use crate::sketch::balloon::seen::Seen;
    use crate::sketch::outline::Outline;
    use crate::sketch::plane::{Rect, at};
    use crate::sketch::scene::{Purpose, Scene};
    use fastrand::Rng;

    const PARTS: usize = 5;

    /// Parts that lie over each other by chance.
    fn scene(random: &mut Rng) -> Scene {
        let mut scene = Scene::default();
        for part in (0..PARTS).chain(0..PARTS) {
            let (x, y) = (35.0 * random.f64(), 14.0 * random.f64());
            let area = Rect::new(x, y, x + 2.0 + 9.0 * random.f64(), y + 2.0 + 6.0 * random.f64());
            scene.area(Purpose::Cut(part), Outline::rectangle(area), Appearance::solid(Tone::Paper));
        }
        scene
    }

    /// The second way knows what every leader costs before it looks for places, so it leaves out none that may be the
    /// cheapest. Would miss: a cost that is wrong in both.
    #[test]
    fn no_choice_is_left_out_that_would_have_been_taken() {
        let mut random = Rng::with_seed(3);
        let (mut found, mut astray) = (0, 0);
        for case in 0..150 {
            let scene = scene(&mut random);
            let seen = Seen::of(&scene, PARTS, 0.3, 20);
            let wall = |x: f64| Line::new(at(x, -2.0), at(x + 4.0, 1.0));
            let views = [View {
                seen: &seen,
                parts: (0..PARTS).collect(),
                kept_out: vec![Rect::new(10.0, -3.0, 13.0, -1.0)],
                lines: (0..2).map(|_| wall(40.0 * random.f64())).collect(),
            }];
            if views[0].parts.iter().any(|part| seen.targets(*part, Band::Above).is_empty()) {
                continue;
            }
            let slots = Slots::new((0..60).map(|place| f64::from(place) * 0.75).collect(), 4.0);
            let frame = Frame { band: Band::Above, level: -6.0 };
            let leaders = || Leaders::new(&views, &slots, frame, 1.8);
            let mut followed = leaders();
            for item in 0..PARTS {
                for target in 0..followed.targets(0, item).len() {
                    for slot in 0..slots.places.len() {
                        followed.cost((0, item), target, slot, f64::INFINITY);
                    }
                }
            }
            let (one, other) = (Placement(leaders()).solve(), Placement(followed).solve());
            let told = |solution: &Solution| (solution.placed.clone(), solution.astray.clone());
            assert_eq!(one.as_ref().map(told), other.as_ref().map(told), "case {case}");
            found += usize::from(one.is_some());
            astray += usize::from(one.is_some_and(|one| !one.astray.is_empty()));
        }
        assert!(
            found > 50 && astray > 10,
            "{found} found, of {astray} some leader goes over others without need"
        );
    }
}

//! Which balloon stands where: leaders that meet nothing, short, in the order of the items.

use super::band::Frame;
use super::targets::Target;
use crate::sketch::plane::{Line, Point, Rect, at, enters, segments_meet};
use kurbo::ParamCurveNearest as _;

/// What a balloon out of its order costs, in millimetres of leader.
const DISORDER: f64 = 12.0;
/// What a leader that meets something costs.
const CONFLICT: f64 = 200.0;

/// The choice of a slot for every balloon, and of a target for it in every drawing that it stands in.
pub(super) struct Placement<'l> {
    /// The drawings that balloons stand in at the same places; mostly there is one.
    pub views: &'l [View],
    /// Where balloons may stand along the band.
    pub slots: &'l [f64],
    pub frame: Frame,
    /// Radius of a balloon.
    pub radius: f64,
}

/// What a drawing has for leaders to end at, and to keep clear of.
pub(super) struct View {
    /// Of every item: where its dot may lie, and what each place costs.
    pub targets: Vec<Vec<Target>>,
    /// Boxes that leaders stay out of.
    pub kept_out: Vec<Rect>,
    /// Lines that leaders do not cross.
    pub lines: Vec<Line>,
}

/// Of every drawing: which of its targets each item has.
type Chosen = Vec<Vec<usize>>;
/// Of every drawing: the balloon's place and its target of each item.
pub(super) type Placed = Vec<Vec<(Point, Point)>>;

impl Placement<'_> {
    /// Balloon place and target of each item, where no leader meets anything: descends from two starts,
    /// changing one item at a time.
    pub fn solve(&self) -> Option<Placed> {
        let mut best: Option<(f64, Chosen, Vec<Point>)> = None;
        for start in [self.rising(), self.cheapest()] {
            let (cost, chosen, places) = self.descend(start)?;
            if best.as_ref().is_none_or(|(least, ..)| cost < *least) {
                best = Some((cost, chosen, places));
            }
            if cost < DISORDER {
                break;
            }
        }
        let (_, chosen, places) = best?;
        let placed = |(view, chosen): (&View, &Vec<usize>)| {
            (0..chosen.len()).map(|item| (places[item], view.target(chosen, item))).collect()
        };
        let free = self.conflicts(&chosen, &places) == 0;
        free.then(|| self.views.iter().zip(&chosen).map(placed).collect())
    }

    fn cheapest(&self) -> Chosen {
        self.views.iter().map(|view| vec![0; view.targets.len()]).collect()
    }

    /// Targets that rise along the band with the item numbers, as far as the parts allow.
    fn rising(&self) -> Chosen {
        self.views.iter().map(|view| view.rising(self.frame)).collect()
    }

    fn descend(&self, mut chosen: Chosen) -> Option<(f64, Chosen, Vec<Point>)> {
        let (mut cost, mut places) = self.cost(&chosen)?;
        for _ in 0..4 {
            let before = cost;
            for (number, view) in self.views.iter().enumerate() {
                for item in 0..view.targets.len() {
                    for index in 0..view.targets[item].len() {
                        let kept = std::mem::replace(&mut chosen[number][item], index);
                        match self.cost(&chosen) {
                            Some((tried, moved)) if tried < cost - 1e-9 => (cost, places) = (tried, moved),
                            _ => chosen[number][item] = kept,
                        }
                    }
                }
            }
            if cost >= before - 1e-9 {
                break;
            }
        }
        Some((cost, chosen, places))
    }

    fn cost(&self, chosen: &Chosen) -> Option<(f64, Vec<Point>)> {
        let places = self.arranged(chosen)?;
        let reach =
            self.views.iter().zip(chosen).map(|(view, chosen)| view.reach(chosen, &places, self.frame));
        let disorder = (1..places.len())
            .filter(|&item| self.frame.along(places[item]) < self.frame.along(places[item - 1]))
            .count();
        let conflicts = self.conflicts(chosen, &places);
        Some((reach.sum::<f64>() + DISORDER * disorder as f64 + CONFLICT * conflicts as f64, places))
    }

    /// Balloons in the order of their targets, each as near to its own as their pitch allows.
    fn arranged(&self, chosen: &Chosen) -> Option<Vec<Point>> {
        let count = chosen.first()?.len();
        let mut order: Vec<usize> = (0..count).collect();
        let wish = |item: usize| {
            let targets = self.views.iter().zip(chosen).map(|(view, chosen)| view.target(chosen, item));
            targets.map(|target| self.frame.along(target)).sum::<f64>() / self.views.len() as f64
        };
        order.sort_by(|&a, &b| wish(a).total_cmp(&wish(b)));
        let wishes: Vec<f64> = order.iter().map(|&item| wish(item)).collect();
        let along = positions(&wishes, self.slots, 2.0 * self.radius + 0.3)?;
        let mut places = vec![at(0.0, 0.0); count];
        for (rank, &item) in order.iter().enumerate() {
            places[item] = self.frame.place(along[rank]);
        }
        Some(places)
    }

    fn conflicts(&self, chosen: &Chosen, places: &[Point]) -> usize {
        self.views.iter().zip(chosen).map(|(view, chosen)| view.conflicts(chosen, places, self.radius)).sum()
    }
}

impl View {
    fn target(&self, chosen: &[usize], item: usize) -> Point {
        self.targets[item][chosen[item]].0
    }

    fn rising(&self, frame: Frame) -> Vec<usize> {
        let mut least = f64::NEG_INFINITY;
        let mut chosen = Vec::new();
        for targets in &self.targets {
            let along = |index: &usize| frame.along(targets[*index].0);
            let next = (0..targets.len())
                .filter(|index| along(index) > least)
                .min_by(|a, b| along(a).total_cmp(&along(b)));
            least = next.map_or(least, |index| along(&index) + 1.0);
            chosen.push(next.unwrap_or(0));
        }
        chosen
    }

    /// What the targets cost, and the length and slant of the leaders to them.
    fn reach(&self, chosen: &[usize], places: &[Point], frame: Frame) -> f64 {
        let own: f64 = chosen.iter().zip(&self.targets).map(|(&index, targets)| targets[index].1).sum();
        let slant: f64 = (0..places.len())
            .map(|item| {
                let target = self.target(chosen, item);
                (frame.along(places[item]) - frame.along(target)).abs() + 0.3 * places[item].distance(target)
            })
            .sum();
        own + slant
    }

    /// How many leaders meet each other, a foreign dot or balloon, or a text.
    fn conflicts(&self, chosen: &[usize], places: &[Point], radius: f64) -> usize {
        let lines: Vec<Line> =
            (0..places.len()).map(|item| Line::new(places[item], self.target(chosen, item))).collect();
        let mut count = 0;
        for (index, &line) in lines.iter().enumerate() {
            count += self.lines.iter().filter(|of| segments_meet(line, **of)).count();
            count += self.kept_out.iter().filter(|kept| enters(line, **kept)).count();
            for (other, &Line { p0: balloon, p1: dot }) in lines.iter().enumerate() {
                if other == index {
                    continue;
                }
                let crossed = other > index && segments_meet(line, lines[other]);
                let off = |point| line.nearest(point, 0.0).distance_sq.sqrt();
                let covered = off(dot) < 0.8 || off(balloon) < radius + 0.2;
                count += usize::from(crossed) + usize::from(covered);
            }
        }
        count
    }
}

/// Positions out of rising `slots`, at least `pitch` apart, in order, with the least sum of distances
/// from rising `wishes`.
fn positions(wishes: &[f64], slots: &[f64], pitch: f64) -> Option<Vec<f64>> {
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
    let mut positions = vec![0.0; wishes.len()];
    for rank in (0..wishes.len()).rev() {
        let (cost, slot) = *best[rank].get(end.checked_sub(1)?)?;
        if !cost.is_finite() {
            return None;
        }
        positions[rank] = slots[slot];
        end = slots[..slot].iter().take_while(|other| **other <= slots[slot] - pitch).count();
    }
    Some(positions)
}

#[cfg(test)]
mod tests {
    use super::positions;

    #[test]
    fn positions_keep_order_and_pitch_and_stay_near_their_wishes() {
        let slots: Vec<f64> = (0..=20).map(f64::from).collect();
        assert_eq!(positions(&[5.0, 12.0], &slots, 4.0), Some(vec![5.0, 12.0]));
        let crowded = positions(&[5.0, 5.0, 6.0], &slots, 4.0).unwrap();
        assert!(crowded.windows(2).all(|pair| pair[1] - pair[0] >= 4.0), "{crowded:?}");
        assert_eq!(positions(&[1.0, 1.0], &[0.0, 1.0], 4.0), None);
    }
}

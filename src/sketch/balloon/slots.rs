//! Places along a band for balloons that would all stand somewhere else.

/// Places along a band, in rising order, of which balloons take some that lie far enough apart.
pub(super) struct Slots {
    pub places: Vec<f64>,
    /// The least distance between two balloons.
    pub pitch: f64,
    /// Of each place: how many lie so far before it.
    before: Vec<usize>,
}

impl Slots {
    pub fn new(places: Vec<f64>, pitch: f64) -> Self {
        let before = places.iter().map(|place| places.partition_point(|other| *other <= place - pitch));
        Self { before: before.collect(), places, pitch }
    }

    /// Which places, far enough apart and in order, have the least sum of distances from rising `wishes`.
    pub fn nearest(&self, wishes: &[f64]) -> Option<Vec<usize>> {
        let width = self.places.len() + 1;
        // A row an item, after one for none: in each column the least cost with this item at one of so many first places,
        // and the place that gives it.
        let mut least = vec![0.0; (wishes.len() + 1) * width];
        let mut given = vec![0; least.len()];
        for (rank, wish) in wishes.iter().enumerate() {
            let (earlier, row) = least.split_at_mut((rank + 1) * width);
            let (earlier, row) = (&earlier[rank * width..], &mut row[..width]);
            let given = &mut given[(rank + 1) * width..][..width];
            let mut best = (f64::INFINITY, 0);
            row[0] = best.0;
            for (index, (place, before)) in self.places.iter().zip(&self.before).enumerate() {
                let cost = earlier[*before] + (place - wish).abs();
                if cost < best.0 {
                    best = (cost, index);
                }
                (row[index + 1], given[index + 1]) = best;
            }
        }
        let mut first = self.places.len();
        let mut taken = vec![0; wishes.len()];
        for rank in (0..wishes.len()).rev() {
            let cell = (rank + 1) * width + first;
            if !least[cell].is_finite() {
                return None;
            }
            taken[rank] = given[cell];
            first = self.before[given[cell]];
        }
        Some(taken)
    }
}

#[cfg(test)]
mod tests {
    use super::Slots;

    #[test]
    fn slots_keep_order_and_pitch_and_stay_near_their_wishes() {
        let slots = Slots::new((0..=20).map(f64::from).collect(), 4.0);
        assert_eq!(slots.nearest(&[5.0, 12.0]), Some(vec![5, 12]));
        let crowded = slots.nearest(&[5.0, 5.0, 6.0]).unwrap();
        assert!(crowded.windows(2).all(|pair| pair[1] - pair[0] >= 4), "{crowded:?}");
        assert_eq!(Slots::new(vec![0.0, 1.0], 4.0).nearest(&[1.0, 1.0]), None);
        assert_eq!(Slots::new(Vec::new(), 4.0).nearest(&[1.0]), None);
    }

    /// Against all that could be chosen.
    #[test]
    fn no_other_choice_has_a_smaller_sum_of_distances() {
        let places = vec![0.0, 0.7, 1.9, 2.0, 3.1, 4.4, 4.9, 6.0, 7.5];
        let slots = Slots::new(places.clone(), 1.5);
        let far = |taken: &[usize], wishes: &[f64]| -> f64 {
            taken.iter().zip(wishes).map(|(slot, wish)| (places[*slot] - wish).abs()).sum()
        };
        let count = places.len();
        for wishes in [[0.0, 0.1, 0.2], [2.0, 2.1, 7.0], [3.0, 3.0, 3.0], [7.0, 7.4, 9.0], [1.0, 4.0, 4.5]] {
            let triples =
                (0..count * count * count).map(|n| [n / count / count, n / count % count, n % count]);
            let apart = |taken: &[usize; 3]| {
                taken.windows(2).all(|pair| pair[0] < pair[1] && places[pair[1]] - places[pair[0]] >= 1.5)
            };
            let least = triples.filter(apart).map(|taken| far(&taken, &wishes)).fold(f64::INFINITY, f64::min);
            let taken = slots.nearest(&wishes).unwrap();
            assert!(apart(&[taken[0], taken[1], taken[2]]), "{wishes:?}: {taken:?}");
            assert!((far(&taken, &wishes) - least).abs() < 1e-9, "{wishes:?}: {taken:?}, {least}");
        }
    }
}

//! Places along a band for balloons that would all stand somewhere else.

/// Which of rising `slots`, at least `pitch` apart, in order, have the least sum of distances from rising `wishes`.
pub(super) fn nearest_slots(wishes: &[f64], slots: &[f64], pitch: f64) -> Option<Vec<usize>> {
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
    let mut taken = vec![0; wishes.len()];
    for rank in (0..wishes.len()).rev() {
        let (cost, slot) = *best[rank].get(end.checked_sub(1)?)?;
        if !cost.is_finite() {
            return None;
        }
        taken[rank] = slot;
        end = slots[..slot].iter().take_while(|other| **other <= slots[slot] - pitch).count();
    }
    Some(taken)
}

#[cfg(test)]
mod tests {
    use super::nearest_slots;

    #[test]
    fn slots_keep_order_and_pitch_and_stay_near_their_wishes() {
        let slots: Vec<f64> = (0..=20).map(f64::from).collect();
        assert_eq!(nearest_slots(&[5.0, 12.0], &slots, 4.0), Some(vec![5, 12]));
        let crowded = nearest_slots(&[5.0, 5.0, 6.0], &slots, 4.0).unwrap();
        assert!(crowded.windows(2).all(|pair| pair[1] - pair[0] >= 4), "{crowded:?}");
        assert_eq!(nearest_slots(&[1.0, 1.0], &[0.0, 1.0], 4.0), None);
    }
}

//! Chance that is the same for the same words.

/// Numbers by chance, from words alone: no clock and no machine is in them.
pub(super) struct Dice(blake3::OutputReader);

/// What stands between the words.
const BETWEEN: u8 = 0x1f;

impl Dice {
    /// The dice of these words.
    pub fn of(words: &[&str]) -> Self {
        let mut hasher = blake3::Hasher::new();
        for word in words {
            hasher.update(word.as_bytes());
            hasher.update(&[BETWEEN]);
        }
        Self(hasher.finalize_xof())
    }

    /// A number under `most`, which is more than 0.
    fn below(&mut self, most: usize) -> usize {
        let mut bytes = [0; 8];
        self.0.fill(&mut bytes);
        let most = most.max(1) as u64;
        usize::try_from(u64::from_le_bytes(bytes) % most).unwrap_or_default()
    }

    /// Puts a list into an order by chance.
    pub fn shuffle<T>(&mut self, list: &mut [T]) {
        for last in (1..list.len()).rev() {
            list.swap(last, self.below(last + 1));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Dice;

    #[test]
    fn the_same_words_fall_alike_and_others_do_not() {
        let order = |words: &[&str]| {
            let mut list: Vec<u32> = (0..30).collect();
            Dice::of(words).shuffle(&mut list);
            list
        };
        assert_eq!(order(&["2026-2", "spring"]), order(&["2026-2", "spring"]));
        assert_ne!(order(&["2026-2", "spring"]), order(&["2026-2", "autumn"]));
        assert_ne!(order(&["2026-2", "spring"]), order(&["2026-2s", "pring"]));
    }

    /// Each of three places is as likely for the first of three: 1,000 of 3,000, and no further off than four times the
    /// standard deviation of that many tries, √(3000 · 1/3 · 2/3) = 26.
    #[test]
    fn every_order_is_as_likely() {
        let mut places = [0_i32; 3];
        for try_number in 0..3000 {
            let mut list = [0, 1, 2];
            Dice::of(&[&try_number.to_string()]).shuffle(&mut list);
            places[list.iter().position(|first| *first == 0).unwrap()] += 1;
        }
        assert!(places.iter().all(|count| (count - 1000).abs() < 104), "{places:?}");
    }
}

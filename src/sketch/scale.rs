//! Drawing scales: round ones, from large to small.

use crate::units::Numerals;

/// Millimetres on paper for one millimetre of the object.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd)]
pub(crate) struct Scale(pub f64);

/// Steps within a decade (ISO 5455 recommends 1, 2, 5; between them where room is short).
const STEPS: [f64; 9] = [1.0, 1.5, 2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0];
impl Scale {
    /// Round scales no larger than `most`, from large to small.
    pub fn below(most: f64) -> Vec<Self> {
        let enlarged = [100.0, 10.0, 1.0]
            .into_iter()
            .flat_map(|decade| STEPS.iter().rev().map(move |step| decade * step));
        let reduced = [1.0, 10.0, 100.0]
            .into_iter()
            .flat_map(|decade| STEPS.iter().map(move |step| 1.0 / (decade * step)));
        let mut scales: Vec<f64> = enlarged.chain(reduced).filter(|scale| *scale <= most).collect();
        scales.dedup();
        scales.into_iter().map(Self).collect()
    }

    /// Such as "5:1" or "1:2.5".
    pub fn words(self, numerals: Numerals) -> String {
        if self.0 >= 1.0 {
            format!("{}:1", numerals.shortest(self.0, 1))
        } else {
            format!("1:{}", numerals.shortest(1.0 / self.0, 1))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn scales_are_round_and_fall() {
        let words: Vec<String> =
            Scale::below(2.2).into_iter().take(6).map(|scale| scale.words(Numerals::default())).collect();
        assert_eq!(words, ["2:1", "1.5:1", "1:1", "1:1.5", "1:2", "1:2.5"]);
    }
}

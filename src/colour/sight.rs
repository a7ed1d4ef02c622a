//! How eyes see a colour: normal sight and the three deficiencies at full severity.

use super::{Lab, Srgb, ciede2000};
use palette::LinSrgb;

/// A kind of colour vision.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Sight {
    /// All three kinds of cone.
    Normal,
    /// Without the cones for long waves.
    Protan,
    /// Without the cones for middle waves.
    Deutan,
    /// Without the cones for short waves.
    Tritan,
}

impl Sight {
    /// Every kind, normal first.
    pub const ALL: [Self; 4] = [Self::Normal, Self::Protan, Self::Deutan, Self::Tritan];

    /// In words, as messages have it: "to a protan eye (red-blind)".
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Normal => "to any eye",
            Self::Protan => "to a protan eye (red-blind)",
            Self::Deutan => "to a deutan eye (green-blind)",
            Self::Tritan => "to a tritan eye (blue-blind)",
        }
    }

    /// Rows of the matrix on linear RGB: Machado, Oliveira, Fernandes 2009, severity 1.0.
    fn matrix(self) -> [[f64; 3]; 3] {
        match self {
            Self::Normal => [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
            Self::Protan => [
                [0.152_286, 1.052_583, -0.204_868],
                [0.114_503, 0.786_281, 0.099_216],
                [-0.003_882, -0.048_116, 1.051_998],
            ],
            Self::Deutan => [
                [0.367_322, 0.860_646, -0.227_968],
                [0.280_085, 0.672_501, 0.047_413],
                [-0.011_820, 0.042_940, 0.968_881],
            ],
            Self::Tritan => [
                [1.255_528, -0.076_749, -0.178_779],
                [-0.078_411, 0.930_809, 0.147_602],
                [0.004_733, 0.691_367, 0.303_900],
            ],
        }
    }
}

/// A colour as an eye of that kind sees it (Machado, Oliveira, Fernandes 2009, on linear RGB).
///
/// ```
/// use fittingcards::colour::{Sight, Srgb, simulate};
/// let red = Srgb { red: 255, green: 0, blue: 0 };
/// assert_eq!(simulate(red, Sight::Deutan).hex(), "#a39000");
/// ```
#[must_use]
pub fn simulate(colour: Srgb, sight: Sight) -> Srgb {
    Srgb::from_linear(seen(colour, sight))
}

/// CIEDE2000 between two colours as an eye of that kind sees them.
///
/// ```
/// use fittingcards::colour::{Sight, Srgb, difference};
/// let (red, green) = (Srgb { red: 204, green: 39, blue: 54 }, Srgb { red: 6, green: 126, blue: 75 });
/// assert!(difference(red, green, Sight::Deutan) < difference(red, green, Sight::Normal) / 3.0);
/// ```
#[must_use]
pub fn difference(one: Srgb, two: Srgb, sight: Sight) -> f64 {
    ciede2000(Lab::of(seen(one, sight)), Lab::of(seen(two, sight)))
}

fn seen(colour: Srgb, sight: Sight) -> LinSrgb<f64> {
    let linear = colour.linear();
    let [red, green, blue] = sight
        .matrix()
        .map(|row| (row[0] * linear.red + row[1] * linear.green + row[2] * linear.blue).clamp(0.0, 1.0));
    LinSrgb::new(red, green, blue)
}

//! How eyes see a colour: normal sight and the three deficiencies at full severity, by two models.

use super::dichromat::{Cone, dichromat};
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

/// A model of how a deficient eye sees. They agree closely for protan and deutan eyes and differ most for tritan ones.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Model {
    /// Machado, Oliveira, Fernandes 2009: one matrix on linear RGB, at severity 1.0.
    Machado2009,
    /// Brettel, Viénot, Mollon 1997: two half-planes of cone responses.
    Brettel1997,
}

impl Model {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Machado2009, Self::Brettel1997];
}

/// A colour as an eye of that kind sees it.
///
/// ```
/// use fittingcards::colour::{Model, Sight, Srgb, simulate};
/// let red = Srgb { red: 255, green: 0, blue: 0 };
/// assert_eq!(simulate(red, Sight::Deutan, Model::Machado2009).hex(), "#a39000");
/// assert_eq!(simulate(red, Sight::Normal, Model::Brettel1997), red);
/// ```
#[must_use]
pub fn simulate(colour: Srgb, sight: Sight, model: Model) -> Srgb {
    Srgb::from_linear(seen(colour, sight, model))
}

/// CIEDE2000 between two colours as an eye of that kind sees them: the least that any model gives.
///
/// ```
/// use fittingcards::colour::{Sight, Srgb, difference};
/// let (red, green) = (Srgb { red: 204, green: 39, blue: 54 }, Srgb { red: 6, green: 126, blue: 75 });
/// assert!(difference(red, green, Sight::Deutan) < difference(red, green, Sight::Normal) / 3.0);
/// // To a tritan eye green and blue are one colour; only one of the models says so.
/// let blue = Srgb { red: 3, green: 96, blue: 198 };
/// assert!(difference(green, blue, Sight::Tritan) < 5.0);
/// ```
#[must_use]
pub fn difference(one: Srgb, two: Srgb, sight: Sight) -> f64 {
    let by = |model| ciede2000(Lab::of(seen(one, sight, model)), Lab::of(seen(two, sight, model)));
    Model::ALL.map(by).into_iter().fold(f64::INFINITY, f64::min)
}

fn seen(colour: Srgb, sight: Sight, model: Model) -> LinSrgb<f64> {
    let linear = colour.linear();
    let seen = match (sight, model) {
        (Sight::Normal, _) => return linear,
        (_, Model::Machado2009) => by_matrix(linear, sight.matrix()),
        (Sight::Protan, Model::Brettel1997) => dichromat(linear, Cone::Long),
        (Sight::Deutan, Model::Brettel1997) => dichromat(linear, Cone::Middle),
        (Sight::Tritan, Model::Brettel1997) => dichromat(linear, Cone::Short),
    };
    let within = |value: f64| value.clamp(0.0, 1.0);
    LinSrgb::new(within(seen.red), within(seen.green), within(seen.blue))
}

fn by_matrix(linear: LinSrgb<f64>, matrix: [[f64; 3]; 3]) -> LinSrgb<f64> {
    let [red, green, blue] =
        matrix.map(|row| row[0] * linear.red + row[1] * linear.green + row[2] * linear.blue);
    LinSrgb::new(red, green, blue)
}

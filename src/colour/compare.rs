//! Whether two marks can be told apart by every eye, in a grey copy, and by touch.

use super::{ColourCode, Confusion, Mark, Sight, confusion, difference, reads_as};
use std::collections::BTreeMap;
use std::sync::LazyLock;

/// Least difference in L* that a grey copy shows.
pub const GREY_LIGHTNESS: f64 = 10.0;

/// Least number of characters that must differ where a grey copy does not show the colours.
pub const GREY_TEXT: usize = 2;

/// What marks are measured by.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MarkLimits {
    /// Smallest CIEDE2000 between marks of one body.
    pub difference: f64,
}

impl Default for MarkLimits {
    fn default() -> Self {
        Self { difference: 12.0 }
    }
}

/// A reason why two marks can be taken for each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Likeness {
    /// They have the same colour.
    SameColour,
    /// They have the same number of notches.
    SameNotches,
    /// One text can be taken for the other.
    Text(Confusion),
    /// An eye of that kind sees too small a difference.
    ColourTooClose {
        /// Which eye.
        sight: Sight,
        /// CIEDE2000 as it sees them.
        difference: f64,
    },
    /// In a grey copy neither lightness nor text tells them apart.
    GreyCopy {
        /// Difference in L*.
        lightness: f64,
    },
}

impl Likeness {
    /// The reason in words, without a full stop.
    ///
    /// ```
    /// use fittingcards::colour::{Likeness, Sight};
    /// let near = Likeness::ColourTooClose { sight: Sight::Deutan, difference: 8.12 };
    /// assert_eq!(near.words(), "their colours look alike to a deutan eye (green-blind): difference 8.1");
    /// ```
    #[must_use]
    pub fn words(&self) -> String {
        match self {
            Self::SameColour => "they have the same colour".into(),
            Self::SameNotches => "they have the same number of notches".into(),
            Self::Text(confusion) => format!("the text of one {}", confusion.words()),
            Self::ColourTooClose { sight, difference } => {
                format!("their colours look alike {}: difference {difference:.1}", sight.words())
            }
            Self::GreyCopy { lightness } => format!(
                "a grey copy shows {lightness:.0} L* between them and their texts differ by one character"
            ),
        }
    }
}

/// How two marks compare.
#[derive(Debug, Clone, PartialEq)]
pub struct Comparison {
    /// Why they can be taken for each other; empty where they can't.
    pub likenesses: Vec<Likeness>,
    /// CIEDE2000 as each kind of eye sees their colours, in the order of [`Sight::ALL`].
    pub differences: [f64; 4],
}

impl Comparison {
    /// Whether nobody can take one for the other.
    #[must_use]
    pub fn distinct(&self) -> bool {
        self.likenesses.is_empty()
    }

    /// The least difference that any eye sees.
    #[must_use]
    pub fn least_difference(&self) -> f64 {
        self.differences.into_iter().fold(f64::INFINITY, f64::min)
    }

    /// The deficiencies that take one colour for the other, where a normal eye does not.
    #[must_use]
    pub fn deficiencies(&self) -> Vec<Sight> {
        let close: Vec<Sight> = self
            .likenesses
            .iter()
            .filter_map(|likeness| match likeness {
                Likeness::ColourTooClose { sight, .. } => Some(*sight),
                _ => None,
            })
            .collect();
        if close.contains(&Sight::Normal) { Vec::new() } else { close }
    }

    /// The reasons in one sentence without a full stop; empty where there are none.
    #[must_use]
    pub fn words(&self) -> String {
        self.likenesses.iter().map(Likeness::words).collect::<Vec<_>>().join("; ")
    }
}

/// Compares two marks: colour, text and notches each, the colours for every eye and in a grey copy.
///
/// ```
/// use fittingcards::colour::{ColourCode, Mark, MarkLimits, Sight, compare};
/// let red = Mark { colour: ColourCode::RD, text: "A1".into(), notches: 1 };
/// let green = Mark { colour: ColourCode::GN, text: "C2".into(), notches: 2 };
/// let comparison = compare(&red, &green, MarkLimits::default());
/// assert_eq!(comparison.deficiencies(), [Sight::Deutan]);
/// ```
#[must_use]
pub fn compare(one: &Mark, two: &Mark, limits: MarkLimits) -> Comparison {
    let differences = differences(one.colour, two.colour);
    let mut likenesses = Vec::new();
    if one.colour == two.colour {
        likenesses.push(Likeness::SameColour);
    } else {
        likenesses.extend(too_close(differences, limits));
        likenesses.extend(grey_copy(one, two));
    }
    likenesses.extend(confusion(&one.text, &two.text).map(Likeness::Text));
    if one.notches == two.notches {
        likenesses.push(Likeness::SameNotches);
    }
    Comparison { likenesses, differences }
}

fn too_close(differences: [f64; 4], limits: MarkLimits) -> impl Iterator<Item = Likeness> {
    Sight::ALL
        .into_iter()
        .zip(differences)
        .filter(move |(_, difference)| *difference < limits.difference)
        .map(|(sight, difference)| Likeness::ColourTooClose { sight, difference })
}

fn grey_copy(one: &Mark, two: &Mark) -> Option<Likeness> {
    let lightness = (one.colour.printed().lab().lightness - two.colour.printed().lab().lightness).abs();
    let told_by_text = strsim::levenshtein(&reads_as(&one.text), &reads_as(&two.text)) >= GREY_TEXT;
    (lightness < GREY_LIGHTNESS && !told_by_text).then_some(Likeness::GreyCopy { lightness })
}

/// CIEDE2000 between the printed values of two colours as each kind of eye sees them, in the order of
/// [`Sight::ALL`].
pub(super) fn differences(one: ColourCode, two: ColourCode) -> [f64; 4] {
    /// A catalogue compares the same few colours thousands of times.
    static TABLE: LazyLock<BTreeMap<(ColourCode, ColourCode), [f64; 4]>> = LazyLock::new(|| {
        let all = ColourCode::USABLE.into_iter().chain([ColourCode::GNYE]);
        all.clone().flat_map(|one| all.clone().map(move |two| ((one, two), measured(one, two)))).collect()
    });
    TABLE.get(&(one, two)).copied().unwrap_or_else(|| measured(one, two))
}

fn measured(one: ColourCode, two: ColourCode) -> [f64; 4] {
    Sight::ALL.map(|sight| difference(one.printed(), two.printed(), sight))
}

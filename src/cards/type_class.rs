//! Classes of type: what a text is for settles how large it is, and how small it may become.

use crate::units::Length;

/// What a text on a card is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) enum TypeClass {
    /// The stamp of the gripping part: the first thing seen.
    Stamp,
    /// The text of the mark.
    Mark,
    /// Stamps side by side, on the card of a body.
    Stamps,
    /// The name of the card.
    Title,
    /// What is measured or read, and what is right.
    Check,
    /// Everything that is read once.
    Body,
    /// Number, edition, notices.
    Foot,
}

impl TypeClass {
    /// The class by the word that layouts use for it.
    pub fn from_word(word: &str) -> Option<Self> {
        match word {
            "stamp" => Some(Self::Stamp),
            "mark" => Some(Self::Mark),
            "stamps" => Some(Self::Stamps),
            "title" => Some(Self::Title),
            "check" => Some(Self::Check),
            "body" => Some(Self::Body),
            "foot" => Some(Self::Foot),
            _ => None,
        }
    }

    /// The size where there is room, and the smallest that is legible at arm's length, in points.
    fn points(self) -> (f64, f64) {
        match self {
            Self::Stamp => (22.0, 18.0),
            Self::Mark => (16.0, 14.0),
            Self::Stamps => (14.0, 10.0),
            Self::Title => (11.0, 9.0),
            Self::Check => (10.5, 10.0),
            Self::Body => (9.0, 8.5),
            Self::Foot => (7.5, 0.0),
        }
    }
}

/// How tightly a face is set: from as designed to as tight as is legible.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Fit {
    /// From 0, lines and blocks apart as designed, to 1, closed up.
    pub close: f64,
    /// From 0, types as designed, to 1, each at the smallest of its class.
    pub shrink: f64,
    /// The smallest type on a card.
    pub smallest: Length,
}

/// From roomy to tight: blocks close up first, then types shrink; the last resort is lines that all but touch.
const STEPS: [(f64, f64); 8] =
    [(0.0, 0.0), (0.4, 0.0), (0.8, 0.0), (0.8, 0.25), (0.8, 0.5), (0.8, 0.75), (0.8, 1.0), (1.0, 1.0)];

impl Fit {
    /// Every fit that is tried, from roomy to tight.
    pub fn all(smallest: Length) -> impl Iterator<Item = Self> {
        STEPS.into_iter().map(move |(close, shrink)| Self { close, shrink, smallest })
    }

    /// The size of a class's type, up to the next hundredth of a millimetre, which is as fine as
    /// drawings write numbers.
    pub fn size(self, class: TypeClass) -> Length {
        let (roomy, tight) = class.points();
        let tight = tight.max(self.smallest.pt());
        let roomy = roomy.max(tight);
        let size = Length::from_pt(roomy + (tight - roomy) * self.shrink);
        Length::from_mm((size.mm() * 100.0 - 1e-6).ceil() / 100.0)
    }

    /// From one base line to the next, in type sizes.
    pub fn leading(self) -> f64 {
        1.22 - 0.2 * self.close
    }

    /// What a gap of the design becomes.
    pub fn gap(self, designed: f64) -> f64 {
        designed * (1.0 - 0.875 * self.close)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Least sizes as printed cards are read at arm's length; common practice, no source.
    #[test]
    fn no_class_shrinks_below_what_is_legible() {
        let smallest = Length::from_pt(7.0);
        let tight = Fit { close: 1.0, shrink: 1.0, smallest };
        let least = [
            (TypeClass::Stamp, 18.0),
            (TypeClass::Check, 10.0),
            (TypeClass::Body, 8.5),
            (TypeClass::Foot, 7.0),
        ];
        for (class, points) in least {
            assert!(tight.size(class).pt() >= points - 1e-9, "{class:?}");
        }
    }

    #[test]
    fn blocks_close_up_before_types_shrink() {
        let fits: Vec<Fit> = Fit::all(Length::from_pt(7.0)).collect();
        let first_shrunk = fits.iter().position(|fit| fit.shrink > 0.0).expect("a fit that shrinks");
        assert!((fits[first_shrunk - 1].close - fits[first_shrunk].close).abs() < 1e-9);
        assert!(fits[first_shrunk].close > 0.7);
        assert!(fits.windows(2).all(|pair| pair[0].size(TypeClass::Body) >= pair[1].size(TypeClass::Body)));
    }
}

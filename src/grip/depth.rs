//! How deep a cone or wedge goes, against how far its closing part can push it.

use super::compare::{less, more};
use super::{Outcome, Verdict};
use crate::units::{Length, Range};

/// Depth of the end that stands out, below the body's face, how unsure it is, and what is left open for each millimetre that
/// the closing part falls short of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Depth {
    pub(super) stated: Length,
    pub(super) tolerance: Length,
    pub(super) slope: f64,
}

/// How far the closing part can push.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Travel {
    stated: Length,
    tolerance: Length,
}

impl Travel {
    pub(super) fn of(stated: Option<Length>, tolerance: Option<Length>) -> Option<Self> {
        Some(Self { stated: stated?, tolerance: tolerance.unwrap_or_default() })
    }

    fn least(self) -> Length {
        self.stated - self.tolerance
    }

    fn most(self) -> Length {
        self.stated + self.tolerance
    }
}

impl Depth {
    pub(super) fn least(self) -> Length {
        self.stated - self.tolerance
    }

    pub(super) fn most(self) -> Length {
        self.stated + self.tolerance
    }

    /// Closes without gripping where the closing part bottoms first, stands proud where it does not go
    /// home, marginal where either holds for some sizes within the tolerances; else grips.
    pub(super) fn verdict(self, travel: Travel) -> Verdict {
        if more(self.least(), travel.most()) {
            Verdict::ClosesWithoutGripping
        } else if less(self.most(), Length::ZERO) {
            Verdict::StandsProud
        } else if less(self.least(), Length::ZERO) || more(self.most(), travel.least()) {
            Verdict::Marginal
        } else {
            Verdict::Grips
        }
    }

    /// The lengths of an outcome: stand-out = −min(depth, travel).
    pub(super) fn lengths(depth: Option<Self>, travel: Option<Travel>) -> Outcome {
        let none = Outcome { depth: depth.map(|depth| depth.stated), ..Outcome::of(Verdict::Unknown) };
        let (Some(depth), Some(travel)) = (depth, travel) else { return none };
        let deepest = -depth.most().min(travel.most());
        Outcome {
            stand_out: Some(-depth.stated.min(travel.stated)),
            stand_out_interval: Some(Range::between(deepest, -depth.least().min(travel.least()))),
            deepest: Some(-travel.most()),
            gap: Some((depth.stated - travel.stated) * depth.slope).filter(|gap| *gap > Length::ZERO),
            ..none
        }
    }
}

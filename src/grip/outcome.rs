//! What comes of putting a gripping part on a conductor.

use crate::units::{Length, Range};

/// What happens when a gripping part is put on a conductor in a body and closed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Verdict {
    /// It closes on the conductor, a collet with its reserve in hand; a rope fits its thimble, which only guides it.
    Grips,
    /// It may grip or not, within the tolerances.
    Marginal,
    /// It does not go as deep as it should.
    StandsProud,
    /// It can't be put together.
    WillNotEnter,
    /// It takes its torque and holds nothing.
    ClosesWithoutGripping,
    /// The outer wires are held and the inner ones are not.
    CoreNotHeld,
    /// Tapers of body or socket and gripping part differ: they touch at one end only.
    TipContact,
    /// A measurement is missing, or the conductor is one that no rule is known for.
    Unknown,
}

impl Verdict {
    /// The word that JSON and tables carry.
    ///
    /// ```
    /// use fittingcards::grip::Verdict;
    /// assert_eq!(Verdict::ClosesWithoutGripping.word(), "closes-without-gripping");
    /// ```
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Grips => "grips",
            Self::Marginal => "marginal",
            Self::StandsProud => "stands-proud",
            Self::WillNotEnter => "will-not-enter",
            Self::ClosesWithoutGripping => "closes-without-gripping",
            Self::CoreNotHeld => "core-not-held",
            Self::TipContact => "tip-contact",
            Self::Unknown => "unknown",
        }
    }
}

/// The verdict with the lengths behind it; a length that could not be computed is `None`.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// What happens.
    pub verdict: Verdict,
    /// Record keys of the measurements that the deciding rule lacks, such as `geometry.collet.bore_mm`.
    pub missing: Vec<&'static str>,
    /// Whether it goes in only where slits are prised open.
    pub forced: bool,
    /// Bore less conductor of a collet; groove less rope of a thimble; bore less conductor of a sleeve.
    pub clearance: Option<Length>,
    /// How far a collet's bore can close before its slits shut.
    pub closure: Option<Length>,
    /// How far the gripping part stands proud of the body's face after seating; negative when below it.
    pub stand_out: Option<Length>,
    /// Stand-out over all stated tolerances.
    pub stand_out_interval: Option<Range<Length>>,
    /// The lowest stand-out that it can ever be drawn in to: slits shut, or travel at its end.
    pub deepest: Option<Length>,
    /// Depth of a spreading cone's large face, or of a wedge's, below the mouth; negative when proud.
    pub depth: Option<Length>,
    /// What is left open once a collet's slits are shut, or the closing part of a wedge or spreading cone is at its end;
    /// of a spreading cone that has all wires in its hole, what is left open there. `None` where nothing is.
    pub gap: Option<Length>,
    /// Wires that go through a spreading cone's hole.
    pub wires_through_hole: Option<u32>,
}

impl Outcome {
    /// A verdict without any length.
    #[must_use]
    pub fn of(verdict: Verdict) -> Self {
        Self {
            verdict,
            missing: Vec::new(),
            forced: false,
            clearance: None,
            closure: None,
            stand_out: None,
            stand_out_interval: None,
            deepest: None,
            depth: None,
            gap: None,
            wires_through_hole: None,
        }
    }

    /// Unknown for want of measurements, by their record keys.
    #[must_use]
    pub fn unknown(missing: Vec<&'static str>) -> Self {
        Self { missing, ..Self::of(Verdict::Unknown) }
    }

    /// The same verdict, force and measurements wanted, with the lengths of another outcome.
    pub(super) fn with_lengths_of(self, lengths: Self) -> Self {
        Self { verdict: self.verdict, missing: self.missing, forced: self.forced, ..lengths }
    }

    /// Whether the parts can be put together: every verdict but *will not enter*.
    #[must_use]
    pub fn goes_together(&self) -> bool {
        self.verdict != Verdict::WillNotEnter
    }
}

/// Names of the measurements that are not there.
pub(super) fn missing(wanted: &[(bool, &'static str)]) -> Vec<&'static str> {
    wanted.iter().filter(|(known, _)| !known).map(|(_, key)| *key).collect()
}

//! What a case comes to: one summary, whose words every card, page, drawing, list and message uses.

use crate::catalogue::{Fitting, Role, Status};
use crate::grip::{Outcome, Verdict};

/// What a case comes to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Summary {
    /// The fitting's own part, unless it is withdrawn or superseded.
    Right,
    /// Tested on this conductor in this body.
    ProvenHereToo,
    /// It would hold or was once right, and must not be used: withdrawn, superseded, or proven here and on hold.
    Withdrawn,
    /// It can't be put together.
    WillNotGoIn,
    /// Its slits are prised open, and it does not go in all the way.
    ForcedProud,
    /// It does not go in all the way.
    StandsProud,
    /// It takes its torque and holds nothing.
    HoldsNothing,
    /// The outer wires are held and the inner ones are not.
    CoreNotHeld,
    /// Tapers that differ.
    OneEnd,
    /// Within the tolerances either may be.
    MayHold,
    /// It closes on the conductor, and nobody has tested it.
    NotProven,
    /// A measurement is missing.
    NotKnown,
}

impl Summary {
    /// Every one of them.
    pub const ALL: [Self; 12] = [
        Self::Right,
        Self::ProvenHereToo,
        Self::Withdrawn,
        Self::WillNotGoIn,
        Self::ForcedProud,
        Self::StandsProud,
        Self::HoldsNothing,
        Self::CoreNotHeld,
        Self::OneEnd,
        Self::MayHold,
        Self::NotProven,
        Self::NotKnown,
    ];

    /// In words; a wrong part is never said to grip.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Right => "right part",
            Self::ProvenHereToo => "proven here too",
            Self::Withdrawn => "withdrawn: do not use",
            Self::WillNotGoIn => "will not go in",
            Self::ForcedProud => "goes in by force, stands proud",
            Self::StandsProud => "stands proud",
            Self::HoldsNothing => "closes, holds nothing",
            Self::CoreNotHeld => "inner wires not held",
            Self::OneEnd => "touches at one end only",
            Self::MayHold => "may or may not hold",
            Self::NotProven => "fits, looks right, not proven",
            Self::NotKnown => "not known: treat as wrong",
        }
    }

    /// The words as a heading: with a capital.
    #[must_use]
    pub fn heading(self) -> String {
        let words = self.words();
        words.chars().next().into_iter().flat_map(char::to_uppercase).chain(words.chars().skip(1)).collect()
    }

    /// Of a wrong part whose outcome alone is known: what a drawing shows.
    #[must_use]
    pub fn of_wrong(outcome: &Outcome) -> Self {
        match outcome.verdict {
            Verdict::WillNotEnter => Self::WillNotGoIn,
            Verdict::StandsProud if outcome.forced => Self::ForcedProud,
            Verdict::StandsProud => Self::StandsProud,
            Verdict::ClosesWithoutGripping => Self::HoldsNothing,
            Verdict::CoreNotHeld => Self::CoreNotHeld,
            Verdict::TipContact => Self::OneEnd,
            Verdict::Marginal => Self::MayHold,
            Verdict::Grips => Self::NotProven,
            Verdict::Unknown => Self::NotKnown,
        }
    }

    /// Of a fitting's own part of a role.
    #[must_use]
    pub fn of_own(fitting: &Fitting, role: Role) -> Self {
        let own = fitting.items.iter().map(|item| &item.part).find(|part| part.role == role);
        if own.is_some_and(|part| part.status.is_out_of_use()) { Self::Withdrawn } else { Self::Right }
    }

    /// What holds nothing is never proven: `proven` is false where geometry contradicts a proof.
    pub(super) fn of(outcome: &Outcome, right: bool, proven: bool, status: Status) -> Self {
        let would_hold = matches!(outcome.verdict, Verdict::Grips | Verdict::Marginal);
        match status {
            _ if status.is_out_of_use() && (right || proven || would_hold) => Self::Withdrawn,
            _ if right => Self::Right,
            Status::OnHold if proven => Self::Withdrawn,
            _ if proven => Self::ProvenHereToo,
            _ => Self::of_wrong(outcome),
        }
    }
}

//! Whether somebody would see from outside that a wrong part is in.

use crate::catalogue::{StandOut, StandOutFrom};
use crate::grip::{Outcome, Verdict};
use crate::units::Length;

/// A nanometre: a difference of exactly the limit counts, whatever the last binary digit.
const EQUAL: Length = Length::from_mm(1e-9);

/// By what somebody would notice a wrong part in a closed fitting.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SeenBy {
    /// It does not go in, or stands out where nobody can miss it.
    Measurement,
    /// Only its mark shows.
    Mark,
    /// Nothing shows.
    Nothing,
}

impl SeenBy {
    /// The word that JSON carries.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Measurement => "measurement",
            Self::Mark => "mark",
            Self::Nothing => "nothing",
        }
    }

    pub(super) fn of(visible: bool, mark_seen: bool) -> Self {
        match (visible, mark_seen) {
            (true, _) => Self::Measurement,
            (false, true) => Self::Mark,
            (false, false) => Self::Nothing,
        }
    }
}

/// Whether an outcome is visible.
///
/// It is where the part won't enter, or where its whole stand-out interval lies off the right pair's
/// stated seated window by at least `least`. It never is without a window, where stand-out can't be seen
/// or is not known, or where the window is one of the gap under a screw, which is not what is computed.
pub(super) fn visible(outcome: &Outcome, stated: Option<&StandOut>, least: Length) -> bool {
    if outcome.verdict == Verdict::WillNotEnter {
        return true;
    }
    let seen = stated.filter(|stated| matches!(stated.from, StandOutFrom::ConeFace | StandOutFrom::WedgeEnd));
    match (outcome.stand_out_interval, seen.and_then(|stated| stated.seated)) {
        (Some(interval), Some(window)) => interval.distance(window) + EQUAL >= least,
        _ => false,
    }
}

/// The worst of what can happen: hidden before visible, visible before what won't go in; among equals
/// the first. `None` only of nothing.
pub(super) fn worst<'o>(
    outcomes: &'o [Outcome],
    stated: Option<&StandOut>,
    least: Length,
) -> Option<&'o Outcome> {
    outcomes
        .iter()
        .min_by_key(|outcome| (outcome.verdict == Verdict::WillNotEnter, visible(outcome, stated, least)))
}

//! Whether somebody would see from outside that a wrong part is in.

use crate::catalogue::{StandOut, StandOutFrom};
use crate::grip::{Outcome, Verdict};
use crate::units::{Length, Range};

/// A nanometre: a difference of exactly the limit counts, whatever the last binary digit.
const EQUAL: Length = Length::from_mm(1e-9);

/// Whether a case is visible.
///
/// It is where the part won't enter, or where its whole stand-out interval lies off the right part's
/// stated seated window by at least `least`; without a window, off the right part's stand-out. It never
/// is where stand-out can't be seen or is not known.
pub(super) fn visible(
    outcome: &Outcome,
    right: Option<&Outcome>,
    stated: Option<&StandOut>,
    least: Length,
) -> bool {
    if outcome.verdict == Verdict::WillNotEnter {
        return true;
    }
    if stated.is_some_and(|stand_out| stand_out.from == StandOutFrom::None) {
        return false;
    }
    let Some(interval) = outcome.stand_out_interval else { return false };
    let window = stated.and_then(|stand_out| stand_out.seated);
    let at = |right: &Outcome| right.stand_out.map(Range::at);
    window.or_else(|| right.and_then(at)).is_some_and(|window| interval.distance(window) + EQUAL >= least)
}

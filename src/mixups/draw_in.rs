//! Where a part stands out after seating, and where line tension has drawn it.

use crate::catalogue::StandOut;
use crate::grip::Outcome;
use crate::units::{Length, Range};

/// A nanometre: a reading at the limit counts, whatever the last binary digit.
const EQUAL: Length = Length::from_mm(1e-9);

/// Stand-outs that a part can have.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval {
    /// The deepest; `None` where nothing stops it.
    pub least: Option<Length>,
    /// The furthest out.
    pub most: Length,
}

impl Interval {
    /// Whether a reading that may be off by a tolerance lies in it.
    #[must_use]
    pub fn takes(self, reading: Length, tolerance: Length) -> bool {
        let off = tolerance + EQUAL;
        reading <= self.most + off && self.least.is_none_or(|least| reading >= least - off)
    }
}

/// After seating: the stand-out interval.
pub(super) fn seated(outcome: &Outcome) -> Option<Interval> {
    outcome
        .stand_out_interval
        .map(|interval| Interval { least: Some(interval.least()), most: interval.most() })
}

/// Under tension: from the lower end less the most that it may draw in to the upper end less the least.
///
/// The least is seated min − tensioned max, not under 0; the most is what is stated, else seated max −
/// tensioned min. A window that is lacking leaves the least 0 and the most unlimited. Nothing is drawn in
/// below where slits are shut or travel ends.
pub(super) fn tensioned(outcome: &Outcome, stated: Option<&StandOut>) -> Option<Interval> {
    let interval = outcome.stand_out_interval?;
    let windows = stated.and_then(|stated| Some((stated.seated?, stated.tensioned?)));
    let least = windows
        .map_or(Length::ZERO, |(seated, tensioned)| (seated.least() - tensioned.most()).max(Length::ZERO));
    let most = stated
        .and_then(|stated| stated.draw_in_max)
        .or_else(|| windows.map(|(seated, tensioned)| seated.most() - tensioned.least()));
    Some(drawn(interval, least, most, outcome.deepest))
}

fn drawn(interval: Range<Length>, least: Length, most: Option<Length>, deepest: Option<Length>) -> Interval {
    let not_below = |length: Length| deepest.map_or(length, |deepest| length.max(deepest));
    Interval {
        least: most.map(|most| not_below(interval.least() - most)).or(deepest),
        most: not_below(interval.most() - least),
    }
}

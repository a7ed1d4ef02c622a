//! Where a part stands out after seating, and where line tension has drawn it.

use super::Consequence;
use super::acceptance::{Need, Reading, fine};
use crate::catalogue::StandOut;
use crate::units::{Length, Numerals, Range};
use serde_json::{Value, json};

/// Stand-outs that a part can have.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interval {
    /// The deepest; `None` where nothing stops it.
    pub least: Option<Length>,
    /// The furthest out.
    pub most: Length,
}

impl Interval {
    /// In words, to a tenth of a millimetre. What lies below the face is sunk: a minus is overlooked.
    ///
    /// ```
    /// use fittingcards::mixups::Interval;
    /// use fittingcards::units::{Length, Numerals};
    /// let from = |least, most| Interval { least: Some(Length::from_mm(least)), most: Length::from_mm(most) };
    /// let words = |interval: Interval| interval.words(Numerals::default()).replace('\u{a0}', " ");
    /// assert_eq!(words(from(3.42, 5.14)), "3.4 to 5.1 mm");
    /// assert_eq!(words(from(-5.5, -4.2)), "sunk 4.2 to 5.5 mm");
    /// assert_eq!(words(from(-0.5, 3.1)), "sunk 0.5 mm to out 3.1 mm");
    /// ```
    #[must_use]
    pub fn words(self, numerals: Numerals) -> String {
        let (most, sunk) = (self.most, |length: Length| length.mm() <= -0.05);
        let out = |length: Length| numerals.length(length.abs(), 1);
        match self.least {
            None if sunk(most) => format!("sunk {} or deeper", out(most)),
            None => format!("at most {}", out(most)),
            Some(least) if sunk(least) && !sunk(most) => {
                format!("sunk {} to out {}", out(least), out(most.max(Length::ZERO)))
            }
            Some(least) => {
                let range = Range::between(least.abs(), most.abs()).map(Length::mm);
                let words = numerals.range(range, 1, "mm");
                if sunk(most) { format!("sunk {words}") } else { words }
            }
        }
    }

    /// Least and most in millimetres; the least is `null` where nothing stops it.
    #[must_use]
    pub fn to_json(self) -> Value {
        json!([self.least.map(fine), fine(self.most)])
    }

    /// What a reading of it has to be.
    pub(super) fn need(self, of: Reading) -> Need {
        Need::Between { of, least: self.least.map(fine), most: Some(fine(self.most)), widened: 1.0 }
    }
}

/// After seating: wherever it can stand out.
pub(super) fn seated(comes: &Consequence) -> Option<Interval> {
    comes.stand_outs.map(|interval| Interval { least: Some(interval.least()), most: interval.most() })
}

/// Under tension: from the lower end less the most that it may draw in to the upper end less the least.
///
/// The least is seated min − tensioned max, not under 0; the most is what is stated, else seated max −
/// tensioned min. A window that is lacking leaves the least 0 and the most unlimited. Nothing is drawn in
/// below where slits are shut or travel ends.
pub(super) fn tensioned(comes: &Consequence, stated: Option<&StandOut>) -> Option<Interval> {
    let interval = comes.stand_outs?;
    let windows = stated.and_then(|stated| Some((stated.seated?, stated.tensioned?)));
    let least = windows
        .map_or(Length::ZERO, |(seated, tensioned)| (seated.least() - tensioned.most()).max(Length::ZERO));
    let most = stated
        .and_then(|stated| stated.draw_in_max)
        .or_else(|| windows.map(|(seated, tensioned)| seated.most() - tensioned.least()));
    Some(drawn(interval, least, most, comes.outcome.deepest))
}

fn drawn(interval: Range<Length>, least: Length, most: Option<Length>, deepest: Option<Length>) -> Interval {
    let not_below = |length: Length| deepest.map_or(length, |deepest| length.max(deepest));
    Interval {
        least: most.map(|most| not_below(interval.least() - most)).or(deepest),
        most: not_below(interval.most() - least),
    }
}

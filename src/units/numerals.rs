//! Numbers as people read them: rounded, with one decimal mark, never split from their unit.

use super::{Area, Force, Length, Range, Torque};

/// Between a number and its unit: a space that no line breaks at.
pub const UNIT_SPACE: char = '\u{a0}';

/// The most decimals that a window is given before it vanishes.
const LONGEST: usize = 6;
/// What the last bits of a number may be off by, in units of the last decimal.
const LAST_BITS: f64 = 1e-6;

/// How numbers are written.
///
/// ```
/// use fittingcards::units::{Area, Length, Numerals};
/// let numerals = Numerals::new(',');
/// assert_eq!(numerals.length(Length::from_mm(14.04), 1), "14,0\u{a0}mm");
/// assert_eq!(numerals.area(Area::from_mm2(116.99)), "117\u{a0}mm²");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Numerals {
    decimal_mark: char,
}

impl Default for Numerals {
    fn default() -> Self {
        Self::new('.')
    }
}

impl Numerals {
    /// Numbers with this decimal mark.
    #[must_use]
    pub const fn new(decimal_mark: char) -> Self {
        Self { decimal_mark }
    }

    /// A bare number rounded to `places` decimals; never "-0".
    #[must_use]
    pub fn fixed(self, value: f64, places: usize) -> String {
        let mut text = format!("{value:.places$}");
        if text.starts_with('-') && !text.contains(|digit: char| matches!(digit, '1'..='9')) {
            text.remove(0);
        }
        if self.decimal_mark == '.' {
            text
        } else {
            text.replace('.', self.decimal_mark.encode_utf8(&mut [0; 4]))
        }
    }

    /// A bare number with as few decimals as it needs, at most `places`.
    #[must_use]
    pub fn shortest(self, value: f64, places: usize) -> String {
        let text = self.fixed(value, places);
        if !text.contains(self.decimal_mark) {
            return text;
        }
        text.trim_end_matches('0').trim_end_matches(self.decimal_mark).to_owned()
    }

    /// A stated number with the decimals that its record writes, never rounded; to a tenth where no record is known.
    ///
    /// ```
    /// use fittingcards::units::Numerals;
    /// let numerals = Numerals::new(',');
    /// assert_eq!(numerals.stated(21.06, Some(2)), "21,06");
    /// assert_eq!(numerals.stated(2.8, Some(2)), "2,80");
    /// assert_eq!(numerals.stated(2.8, None), "2,8");
    /// ```
    #[must_use]
    pub fn stated(self, value: f64, decimals: Option<usize>) -> String {
        decimals.map_or_else(|| self.shortest(value, 1), |places| self.fixed(value, places))
    }

    /// A computed value that must not be exceeded: rounded down.
    ///
    /// ```
    /// use fittingcards::units::Numerals;
    /// assert_eq!(Numerals::default().at_most(21.06, 1), "21.0");
    /// assert_eq!(Numerals::default().at_most(21.1, 1), "21.1");
    /// assert_eq!(Numerals::default().at_most(-0.25, 1), "-0.3");
    /// ```
    #[must_use]
    pub fn at_most(self, value: f64, places: usize) -> String {
        let scale = 10_f64.powi(i32::try_from(places).unwrap_or(0));
        self.fixed((value * scale + LAST_BITS).floor() / scale, places)
    }

    /// A computed value that must be reached: rounded up.
    ///
    /// ```
    /// use fittingcards::units::Numerals;
    /// assert_eq!(Numerals::default().at_least(9.754, 2), "9.76");
    /// assert_eq!(Numerals::default().at_least(9.75, 2), "9.75");
    /// ```
    #[must_use]
    pub fn at_least(self, value: f64, places: usize) -> String {
        let scale = 10_f64.powi(i32::try_from(places).unwrap_or(0));
        self.fixed((value * scale - LAST_BITS).ceil() / scale, places)
    }

    /// A computed window that shrinks: its least rounded up, its most rounded down. One that would vanish keeps more
    /// decimals.
    ///
    /// ```
    /// use fittingcards::units::{Numerals, Range};
    /// let numerals = Numerals::default();
    /// assert_eq!(numerals.window(Range::between(3.04, 5.58), 1, "mm"), "3.1\u{a0}to\u{a0}5.5\u{a0}mm");
    /// assert_eq!(numerals.window(Range::between(3.04, 3.06), 1, "mm"), "3.04\u{a0}to\u{a0}3.06\u{a0}mm");
    /// ```
    #[must_use]
    pub fn window(self, window: Range<f64>, places: usize, unit: &str) -> String {
        let scale = 10_f64.powi(i32::try_from(places).unwrap_or(0));
        let least = (window.least() * scale - LAST_BITS).ceil();
        let most = (window.most() * scale + LAST_BITS).floor();
        if least > most && places < LONGEST {
            return self.window(window, places + 1, unit);
        }
        self.range(Range::between(least / scale, most / scale), places, unit)
    }

    /// A number with a unit.
    #[must_use]
    pub fn with_unit(self, value: f64, places: usize, unit: &str) -> String {
        format!("{}{UNIT_SPACE}{unit}", self.fixed(value, places))
    }

    /// A length in millimetres.
    #[must_use]
    pub fn length(self, length: Length, places: usize) -> String {
        self.with_unit(length.mm(), places, "mm")
    }

    /// An area in square millimetres, to three digits: as much as half a percent supports.
    #[must_use]
    pub fn area(self, area: Area) -> String {
        let value = area.mm2();
        self.with_unit(value, three_digits(value), "mm²")
    }

    /// A force in kilonewtons, to three digits.
    #[must_use]
    pub fn force(self, force: Force) -> String {
        let value = force.kn();
        format!("{}{UNIT_SPACE}kN", self.shortest(value, three_digits(value)))
    }

    /// A computed force that must not be exceeded, rounded down.
    ///
    /// ```
    /// use fittingcards::units::{Force, Numerals};
    /// assert_eq!(Numerals::default().force_at_most(Force::from_kn(43.94)), "43.9\u{a0}kN");
    /// assert_eq!(Numerals::default().force_at_least(Force::from_kn(43.91)), "44.0\u{a0}kN");
    /// ```
    #[must_use]
    pub fn force_at_most(self, force: Force) -> String {
        let value = force.kn();
        format!("{}{UNIT_SPACE}kN", self.at_most(value, three_digits(value)))
    }

    /// A computed force that must be reached, rounded up.
    #[must_use]
    pub fn force_at_least(self, force: Force) -> String {
        let value = force.kn();
        format!("{}{UNIT_SPACE}kN", self.at_least(value, three_digits(value)))
    }

    /// A torque in newton metres.
    #[must_use]
    pub fn torque(self, torque: Torque) -> String {
        format!("{}{UNIT_SPACE}N·m", self.shortest(torque.nm(), 1))
    }

    /// A range, such as "3.0 to 6.0 mm"; the number alone where both ends read the same.
    #[must_use]
    pub fn range(self, range: Range<f64>, places: usize, unit: &str) -> String {
        let (least, most) = (self.fixed(range.least(), places), self.fixed(range.most(), places));
        if least == most {
            format!("{least}{UNIT_SPACE}{unit}")
        } else {
            format!("{least}{UNIT_SPACE}to{UNIT_SPACE}{most}{UNIT_SPACE}{unit}")
        }
    }
}

fn three_digits(value: f64) -> usize {
    match value.abs() {
        value if value >= 99.95 => 0,
        value if value >= 9.995 => 1,
        _ => 2,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn zero_has_no_sign() {
        assert_eq!(Numerals::default().fixed(-0.01, 1), "0.0");
        assert_eq!(Numerals::default().fixed(-0.06, 1), "-0.1");
    }

    #[test]
    fn shortest_drops_only_decimals() {
        let numerals = Numerals::new(',');
        assert_eq!(numerals.shortest(80.0, 1), "80");
        assert_eq!(numerals.shortest(0.5, 2), "0,5");
        assert_eq!(numerals.shortest(100.0, 0), "100");
    }

    #[test]
    fn windows_of_one_value_are_one_number() {
        assert_eq!(Numerals::default().range(Range::at(3.0), 1, "mm"), "3.0\u{a0}mm");
        assert_eq!(
            Numerals::default().range(Range::between(3.0, 6.0), 1, "mm"),
            "3.0\u{a0}to\u{a0}6.0\u{a0}mm"
        );
    }
}

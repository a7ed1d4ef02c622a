//! Comparing lengths and angles so that the last binary digit decides nothing.

use crate::units::{Angle, Length};

/// A nanometre: sums of decimal millimetres are off by far less, and no workshop measures it.
const EQUAL: Length = Length::from_mm(1e-9);

/// Half-angles further apart than this touch at one end only. Common practice, no source.
const SAME_ANGLE: Angle = Angle::from_degrees(0.25);

/// Whether `a` is less than `b`, and not only by rounding.
pub(super) fn less(a: Length, b: Length) -> bool {
    a < b - EQUAL
}

/// Whether `a` is more than `b`, and not only by rounding.
pub(super) fn more(a: Length, b: Length) -> bool {
    less(b, a)
}

/// Whether two tapers differ so much that they touch at one end only.
pub(super) fn tapers_differ(a: Angle, b: Angle) -> bool {
    (a - b).abs() > SAME_ANGLE + Angle::from_degrees(1e-9)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rounding_decides_nothing() {
        let sum = Length::from_mm(0.1) + Length::from_mm(0.2);
        assert!(!more(sum, Length::from_mm(0.3)) && !less(sum, Length::from_mm(0.3)));
        assert!(!tapers_differ(Angle::from_degrees(5.25), Angle::from_degrees(5.0)));
        assert!(tapers_differ(Angle::from_degrees(5.26), Angle::from_degrees(5.0)));
    }
}

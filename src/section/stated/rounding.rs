//! What the printed digits of a value leave open.

/// Half of the last printed digit, for a value that is printed with at least so many decimals.
///
/// A number does not remember trailing noughts: 14.0 is kept as 14. What tables print with a decimal is
/// therefore taken to have one.
pub(super) fn half_digit(value: f64, least_decimals: usize) -> f64 {
    let text = value.to_string();
    let decimals = text.find('.').map_or(0, |point| text.len() - point - 1);
    0.5 * 10_f64.powi(-i32::try_from(decimals.max(least_decimals)).unwrap_or(i32::MAX))
}

/// Whether a value agrees with a computed one within its printed digits and a tolerance.
pub(super) fn agrees(stated: f64, computed: f64, tolerance: f64, least_decimals: usize) -> bool {
    (stated - computed).abs() <= half_digit(stated, least_decimals) + tolerance + 1e-9 * computed.abs()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_digit_is_the_last_one_printed() {
        assert_eq!(half_digit(116.99, 0), 0.005);
        assert_eq!(half_digit(117.0, 0), 0.5);
        assert_eq!(half_digit(14.0, 1), 0.05);
    }

    #[test]
    fn a_rounded_value_agrees() {
        assert!(agrees(15.8, 15.75, 0.0, 1));
        assert!(!agrees(15.8, 15.74, 0.0, 1));
    }
}

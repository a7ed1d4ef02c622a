//! Numbers as spreadsheets hold and show them.

/// A number as a spreadsheet shows it, with at most 15 significant digits: what a formula leaves beyond them, as in
/// 5.3999999999999995, is nobody's figure.
pub(super) fn rounded(number: f64) -> f64 {
    format!("{number:.14e}").parse().unwrap_or(number)
}

/// The number that a text is, where it is one.
pub(super) fn number(text: &str) -> Option<f64> {
    text.trim().parse().ok().filter(|number: &f64| number.is_finite())
}

/// Whether two texts are the same number, as far as a spreadsheet tells numbers apart.
pub(super) fn are_one_number(one: &str, other: &str) -> bool {
    number(one).is_some_and(|one| number(other).map(rounded) == Some(rounded(one)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_have_fifteen_digits() {
        for (held, shown) in [
            (5.399_999_999_999_999_5, "5.4"),
            (0.1 + 0.2, "0.3"),
            (14.0, "14"),
            (-2.5, "-2.5"),
            (0.0, "0"),
            (123_456_789_012_345.0, "123456789012345"),
            (1_234_567_890_123_456_789.0, "1234567890123460000"),
        ] {
            assert_eq!(rounded(held).to_string(), shown);
        }
        assert!(are_one_number("41E1", "410") && are_one_number("14.0", " 14"));
        assert!(
            !are_one_number("14.0", "14.1") && !are_one_number("nan", "nan") && !are_one_number("a", "a")
        );
    }
}

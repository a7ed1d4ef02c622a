//! The one writer of numbers in SVG.

/// A coordinate or length for SVG: millimetres to the hundredth, without trailing zeros, never "-0".
///
/// A hundredth of a millimetre is finer than any printer's dot and keeps drawings small. What is not finite
/// is written as `NaN`, which no reader of SVG takes for a place: a nought would look as if it were meant.
///
/// ```
/// use fittingcards::sketch::number;
/// assert_eq!(number(12.340_000_000_000_002), "12.34");
/// assert_eq!(number(-0.001), "0");
/// ```
#[must_use]
pub fn number(value: f64) -> String {
    if !value.is_finite() {
        return "NaN".to_owned();
    }
    let hundredths = (value * 100.0).round() as i64;
    let sign = if hundredths < 0 { "-" } else { "" };
    let (whole, rest) = (hundredths.abs() / 100, hundredths.abs() % 100);
    match rest {
        0 => format!("{sign}{whole}"),
        rest if rest % 10 == 0 => format!("{sign}{whole}.{}", rest / 10),
        rest => format!("{sign}{whole}.{rest:02}"),
    }
}

#[cfg(test)]
mod tests {
    use super::number;

    #[test]
    fn numbers_are_short_and_signed_rightly() {
        let cases =
            [(0.0, "0"), (-0.004, "0"), (0.05, "0.05"), (-1.5, "-1.5"), (100.0, "100"), (-0.25, "-0.25")];
        for (value, text) in cases {
            assert_eq!(number(value), text);
        }
    }

    #[test]
    fn what_is_not_finite_is_written_as_no_number() {
        for value in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert!(number(value).parse::<f64>().is_ok_and(f64::is_nan), "{value}");
        }
    }
}

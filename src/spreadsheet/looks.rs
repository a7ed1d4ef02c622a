//! What a text looks like that a spreadsheet may have made of another.

/// How spreadsheets shorten the names of months, in some of the languages that they are set to.
const MONTHS: [&str; 37] = [
    "jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec", "mär", "mrz", "mai",
    "okt", "dez", "sept", "janv", "févr", "mars", "avr", "juin", "juil", "août", "déc", "ene", "abr", "ago",
    "dic", "gen", "mag", "giu", "lug", "set", "ott", "fev",
];

/// Whether a text looks like a day as a spreadsheet writes it: `02-Jan`, `3. Apr`, `03.04.2026`.
pub(super) fn like_a_day(text: &str) -> bool {
    let pieces = pieces(text);
    let months = pieces.iter().filter(|piece| is_month(piece)).count();
    let figures = pieces.iter().filter(|piece| is_figures(piece)).count();
    let is_whole = months + figures == pieces.len();
    let has_year = || match pieces.as_slice() {
        [first, _, last] => first.len() == 4 || [2, 4].contains(&last.len()),
        _ => false,
    };
    is_whole && (months == 1 && matches!(figures, 1 | 2) || months == 0 && has_year())
}

/// Whether a spreadsheet could take a text for a day: `1-2`, `3/4`, `1.2`.
pub(super) fn could_be_a_day(text: &str) -> bool {
    let pieces = pieces(text);
    matches!(pieces.len(), 2 | 3) && pieces.iter().all(|piece| is_figures(piece)) && !like_a_day(text)
}

/// Whether a text is a number as a spreadsheet writes one that is too long for it: `1.23457E+18`.
pub(super) fn like_a_long_number(text: &str) -> bool {
    let Some((digits, power)) = text.split_once(['E', 'e']) else { return false };
    let is_digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    let is_power = power.strip_prefix(['+', '-']).is_some_and(is_digits);
    let (whole, decimals) = digits.split_once(['.', ',']).unwrap_or((digits, "0"));
    is_power && is_digits(whole) && is_digits(decimals)
}

fn pieces(text: &str) -> Vec<&str> {
    let pieces = text.split(['-', '/', '.', ' ']).filter(|piece| !piece.is_empty());
    pieces.take(4).collect()
}

fn is_figures(piece: &str) -> bool {
    piece.len() <= 4 && piece.bytes().all(|byte| byte.is_ascii_digit())
}

fn is_month(piece: &str) -> bool {
    MONTHS.contains(&piece.to_lowercase().as_str())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_and_long_numbers_are_told_from_stamps() {
        for day in [
            "02-Jan",
            "Jan 02",
            "2. Jan",
            "3-Apr-26",
            "03.04.2026",
            "2026-03-04",
            "4/3/26",
            "12. Okt",
            "Dez 24",
        ] {
            assert!(like_a_day(day), "{day}");
        }
        for stamp in [
            "",
            "1-2",
            "14.0",
            "3/4",
            "B14.0",
            "Mark 1",
            "Apr",
            "M16",
            "ST-4100",
            "1-2-3",
            "1-2-3-4",
            "12345-1-22",
        ] {
            assert!(!like_a_day(stamp), "{stamp}");
        }
        for stamp in ["1-2", "3/4", "14.0", "1.2", "1-2-3"] {
            assert!(could_be_a_day(stamp), "{stamp}");
        }
        assert!(!could_be_a_day("B1-2") && !could_be_a_day("14") && !could_be_a_day("2026-03-04"));
        assert!(like_a_long_number("1.23457E+18") && like_a_long_number("1E+03"));
        assert!(!like_a_long_number("1E3") && !like_a_long_number("41E1") && !like_a_long_number("E+1"));
    }
}

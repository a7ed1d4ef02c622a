//! Cells of a CSV that spreadsheets open: texts stay texts, and come back as they were.

use std::borrow::Cow;

/// What a spreadsheet takes as the start of a formula, in plain and full-width forms, and what makes it look at
/// the letter after.
const STARTS: [char; 10] = ['=', '+', '-', '@', '\t', '\r', '＝', '＋', '－', '＠'];

/// A cell that no spreadsheet runs: an apostrophe stands before a text that would be a formula, as is the usual
/// convention. A number stays what it is.
///
/// ```
/// use fittingcards::records::{as_it_was, harmless};
/// assert_eq!(harmless("=1+1"), "'=1+1");
/// assert_eq!(as_it_was("'=1+1"), "=1+1");
/// ```
#[must_use]
pub fn harmless(cell: &str) -> Cow<'_, str> {
    if would_run(cell) { Cow::Owned(format!("'{cell}")) } else { Cow::Borrowed(cell) }
}

/// The text that [`harmless`] made a cell of.
#[must_use]
pub fn as_it_was(cell: &str) -> &str {
    cell.strip_prefix('\'').filter(|text| would_run(text)).unwrap_or(cell)
}

/// Whether a text would be a formula; or is one that had its apostrophe already, which must not lose it.
fn would_run(text: &str) -> bool {
    let bare = text.trim_start_matches('\'');
    let first = bare.trim_start_matches(' ').chars().next();
    first.is_some_and(|first| STARTS.contains(&first)) && !is_number(bare)
}

/// A number with or without a sign, and nothing else.
fn is_number(cell: &str) -> bool {
    let figures = cell.strip_prefix(['-', '+']).unwrap_or(cell);
    figures.starts_with(|first: char| first.is_ascii_digit()) && figures.parse::<f64>().is_ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    // The characters are those that a well-known guide on formula injection names (from memory).
    #[test]
    fn what_would_run_gets_an_apostrophe() {
        for cell in
            ["=1+1", "+cmd|' /C calc'!A0", "-2+3", "@SUM(1)", "\t=1", "\r=1", "＝1", "＠A", " =1", "-"]
        {
            assert_eq!(harmless(cell), format!("'{cell}"));
        }
    }

    #[test]
    fn texts_and_numbers_stay() {
        for cell in
            ["ST-4100", "Cone dead-end, messenger 120", "", "-0.5", "+3", "-12", "-1e5", "2=3", "'90", "'"]
        {
            assert_eq!(harmless(cell), cell);
            assert_eq!(as_it_was(cell), cell);
        }
    }

    #[test]
    fn what_got_an_apostrophe_comes_back_as_it_was() {
        for cell in ["=1+1", "'=1", "''=1", " =1", "-", "-0.5", "'-0.5", "'", "a'=1", ""] {
            assert_eq!(as_it_was(&harmless(cell)), cell);
        }
    }
}

//! Values in a text, which stand out from its words: where they begin and end, as marks in the text that draw nothing.

/// Where a value begins or ends (invisible separator): it has no direction and no font.
const MARK: char = '\u{2063}';

/// A value that has no figure to be known by, marked word by word so that texts in `FontStyle::CondensedValues` have it in
/// bold. The marks draw nothing, and no line has them.
///
/// ```
/// use fittingcards::source::{MemoryWorld, World};
/// use fittingcards::typeset::{FontStyle, Fonts, Style, marked_value};
/// let (fonts, _) = Fonts::new(&MemoryWorld::new().fonts(), &[]);
/// let line = fonts.line(&format!("Seat cone {}.", marked_value("KA")), Style::points(FontStyle::CondensedValues, 9.0));
/// assert_eq!((line.text.as_str(), line.runs[1].weight), ("Seat cone KA.", 700));
/// ```
#[must_use]
pub fn marked_value(text: &str) -> String {
    text.split(' ').map(valued).collect::<Vec<_>>().join(" ")
}

/// Whether a text has marks of values.
pub(super) fn is_marked(text: &str) -> bool {
    text.contains(MARK)
}

/// A value with its marks.
pub(super) fn valued(text: &str) -> String {
    format!("{MARK}{text}{MARK}")
}

/// A text without marks.
pub(super) fn unvalued(text: String) -> String {
    if text.contains(MARK) { text.replace(MARK, "") } else { text }
}

/// The parts of a text, each with whether it is a value; `in_value` says whether the text begins in one, and then
/// whether what follows it does. A space stays with the part before it: at the beginning of a run it would be lost.
pub(super) fn parts(text: &str, in_value: &mut bool) -> Vec<(bool, String)> {
    let mut parts: Vec<(bool, String)> = Vec::new();
    for (index, part) in text.split(MARK).enumerate() {
        *in_value ^= index > 0;
        let words = part.trim_start_matches(' ');
        let spaces = &part[..part.len() - words.len()];
        let rest = match parts.last_mut() {
            Some((_, before)) => {
                before.push_str(spaces);
                words
            }
            None => part,
        };
        if !rest.is_empty() {
            parts.push((*in_value, rest.to_owned()));
        }
    }
    parts
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::source::{MemoryWorld, World};
    use crate::typeset::{FontStyle, Fonts, Style};
    use crate::units::Length;

    #[test]
    fn a_value_goes_on_from_stretch_to_stretch() {
        let mut in_value = false;
        let first = parts(&format!("in {MARK}70"), &mut in_value);
        assert_eq!(first, [(false, "in ".to_owned()), (true, "70".to_owned())]);
        assert!(in_value);
        let second = parts(&format!(" mm{MARK} deep"), &mut in_value);
        assert_eq!(second, [(true, " mm ".to_owned()), (false, "deep".to_owned())]);
        assert!(!in_value);
    }

    /// 700 is the weight that CSS Fonts 4 calls bold.
    #[test]
    fn figures_with_their_units_are_bold_and_words_are_not() {
        let (fonts, _) = Fonts::new(&MemoryWorld::new().fonts(), &[]);
        let style = Style::points(FontStyle::CondensedValues, 8.5);
        let lines = fonts.lines("Push wire in 70 mm, cone M14 last.", style, Length::from_mm(200.0));
        assert_eq!(lines[0].text, "Push wire in 70 mm, cone M14 last.");
        let runs = lines[0].runs.iter().map(|run| (run.text.as_str(), run.weight));
        let expected =
            [("Push wire in ", 400), ("70 mm, ", 700), ("cone ", 400), ("M14 ", 700), ("last.", 400)];
        assert_eq!(runs.collect::<Vec<_>>(), expected);
        let ends =
            lines[0].runs.windows(2).map(|pair| (pair[0].left + pair[0].width).mm() - pair[1].left.mm());
        assert!(ends.into_iter().all(|apart| apart.abs() < 1e-9));
    }
}

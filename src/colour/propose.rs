//! Marks that are still free: one for a body, and a whole set for a new body.

use super::compare::differences;
use super::{ColourCode, GREY_TEXT, Mark, MarkLimits, common_marking, confusion, reads_as};

/// Letters that no stroke, no half-turn and no bad light turns into a figure or into each other.
const LETTERS: [char; 12] = ['A', 'C', 'E', 'H', 'K', 'L', 'P', 'T', 'V', 'X', 'N', 'U'];

/// A mark that is free beside those taken: the colour that keeps the least difference largest, the
/// fewest free notches, and a letter with the number of notches for its text.
///
/// `avoid` holds texts that must not be used besides, such as stamps. Colours that earthing uses are
/// proposed only where nothing else is left; `None` where nothing at all is distinct.
///
/// ```
/// use fittingcards::colour::{MarkLimits, compare, propose_mark, propose_set};
/// let limits = MarkLimits::default();
/// let taken = propose_set(3, &[], limits).unwrap();
/// let free = propose_mark(&taken, &["K4"], limits).unwrap();
/// assert!(taken.iter().all(|mark| compare(mark, &free, limits).distinct()));
/// ```
#[must_use]
pub fn propose_mark(taken: &[Mark], avoid: &[&str], limits: MarkLimits) -> Option<Mark> {
    let colours: Vec<ColourCode> = taken.iter().map(|mark| mark.colour).collect();
    let colour = best_colour(&colours, limits, false).or_else(|| best_colour(&colours, limits, true))?;
    let notches = (1..).find(|notches| taken.iter().all(|mark| mark.notches != *notches))?;
    let text = free_text(notches, taken, avoid)?;
    Some(Mark { colour, text, notches })
}

/// A set of marks for a new body, each distinct from every other: colours that keep the least
/// difference largest over the whole set. `None` where so many can't be told apart.
///
/// ```
/// use fittingcards::colour::{MarkLimits, propose_set};
/// assert_eq!(propose_set(5, &[], MarkLimits::default()).unwrap().len(), 5);
/// ```
#[must_use]
pub fn propose_set(size: usize, avoid: &[&str], limits: MarkLimits) -> Option<Vec<Mark>> {
    let colours = best_set(size, limits, false).or_else(|| best_set(size, limits, true))?;
    let mut marks: Vec<Mark> = Vec::with_capacity(size);
    for colour in colours {
        let notches = u32::try_from(marks.len() + 1).ok()?;
        let text = free_text(notches, &marks, avoid)?;
        marks.push(Mark { colour, text, notches });
    }
    Some(marks)
}

/// The least difference that any eye sees between two colours.
fn least(one: ColourCode, two: ColourCode) -> f64 {
    differences(one, two).into_iter().fold(f64::INFINITY, f64::min)
}

fn candidates(earthing_too: bool) -> impl Iterator<Item = ColourCode> {
    ColourCode::USABLE.into_iter().filter(move |code| earthing_too || !code.is_used_by_earthing())
}

fn best_colour(taken: &[ColourCode], limits: MarkLimits, earthing_too: bool) -> Option<ColourCode> {
    candidates(earthing_too)
        .filter(|code| !taken.contains(code))
        .map(|code| (code, taken.iter().map(|other| least(code, *other)).fold(f64::INFINITY, f64::min)))
        .filter(|(_, kept)| *kept >= limits.difference)
        .reduce(|best, next| if next.1 > best.1 { next } else { best })
        .map(|(code, _)| code)
}

/// Every subset of that size is looked at: at most 3432 of 14 colours.
fn best_set(size: usize, limits: MarkLimits, earthing_too: bool) -> Option<Vec<ColourCode>> {
    let codes: Vec<ColourCode> = candidates(earthing_too).collect();
    let between: Vec<Vec<f64>> =
        codes.iter().map(|one| codes.iter().map(|two| least(*one, *two)).collect()).collect();
    let mut best: Option<(u32, f64)> = None;
    for subset in 0..1_u32 << codes.len() {
        if subset.count_ones() as usize != size {
            continue;
        }
        let kept = kept(subset, &between);
        if kept >= limits.difference && best.is_none_or(|(_, most)| kept > most) {
            best = Some((subset, kept));
        }
    }
    let (subset, _) = best?;
    Some(
        codes.into_iter().enumerate().filter(|(at, _)| subset >> at & 1 == 1).map(|(_, code)| code).collect(),
    )
}

fn kept(subset: u32, between: &[Vec<f64>]) -> f64 {
    let mut least = f64::INFINITY;
    let chosen: Vec<usize> = (0..between.len()).filter(|at| subset >> at & 1 == 1).collect();
    for (nth, one) in chosen.iter().enumerate() {
        for two in &chosen[nth + 1..] {
            least = least.min(between[*one][*two]);
        }
    }
    least
}

fn free_text(notches: u32, taken: &[Mark], avoid: &[&str]) -> Option<String> {
    LETTERS.iter().map(|letter| format!("{letter}{notches}")).find(|text| {
        let apart = |mark: &Mark| {
            confusion(text, &mark.text).is_none()
                && strsim::levenshtein(&reads_as(text), &reads_as(&mark.text)) >= GREY_TEXT
        };
        common_marking(text).is_none()
            && taken.iter().all(apart)
            && avoid.iter().all(|other| confusion(text, other).is_none())
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::colour::compare;

    #[test]
    fn every_size_of_set_that_is_given_is_distinct() {
        let limits = MarkLimits::default();
        let mut largest = 0;
        for size in 1..=14 {
            let Some(marks) = propose_set(size, &[], limits) else { break };
            for (nth, one) in marks.iter().enumerate() {
                assert!(marks[nth + 1..].iter().all(|two| compare(one, two, limits).distinct()), "{marks:?}");
            }
            largest = size;
        }
        assert!(largest >= 8, "{largest}");
    }

    #[test]
    fn a_free_mark_stays_clear_of_earthing() {
        let mark = propose_mark(&[], &[], MarkLimits::default()).unwrap();
        assert!(!mark.colour.is_used_by_earthing());
    }

    #[test]
    fn nothing_is_proposed_beyond_what_eyes_can_tell() {
        assert_eq!(propose_set(15, &[], MarkLimits::default()), None);
        assert_eq!(propose_set(2, &[], MarkLimits { difference: 200.0 }), None);
    }
}

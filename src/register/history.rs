//! What each edition changed, one after the other.

use super::{CardChange, Change, Comparison, Register, State, changes};

/// What each edition changed, the first one first; last what waits to be issued.
#[must_use]
pub fn history(register: &Register, present: &State) -> Vec<Comparison> {
    let editions = register.editions().len();
    let mut all: Vec<Comparison> =
        (0..editions).map(|nth| changes(register, (nth.checked_sub(1), Some(nth)), (present, ""))).collect();
    if editions > 0 {
        all.push(changes(register, (editions.checked_sub(1), None), (present, "")));
    }
    all
}

/// The changes of a card that this comparison tells of.
#[must_use]
pub fn of_card<'a>(comparison: &'a Comparison, number: &str) -> Option<&'a CardChange> {
    comparison.changed().find(|card| card.number == number)
}

/// What a notice changed: card by card, edition by edition.
#[must_use]
pub fn of_notice<'a>(history: &'a [Comparison], notice: &str) -> Vec<(&'a CardChange, &'a Change)> {
    let cards = history.iter().flat_map(Comparison::changed);
    let all = cards.flat_map(|card| card.changes.iter().map(move |change| (card, change)));
    all.filter(|(_, change)| change.notices.iter().any(|explains| explains == notice)).collect()
}

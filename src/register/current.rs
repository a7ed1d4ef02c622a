//! Whether a printed card is current: by its number and check code, from all editions.

use super::entry::text_of;
use super::{Register, Standing};
use crate::catalogue::{CardIssue, Catalogue, Edition, Status};
use crate::facts::CardFacts;
use std::collections::BTreeMap;

/// What is said of a number and code that no edition holds.
pub const UNKNOWN: &str = "unknown: no edition holds this number with this code. Look at the card again; if it says so, stop and report it";
/// What is said of a card without a check code.
pub const DRAFT: &str = "a draft: it was never issued, and must not be used";

/// A card as it was issued once, with what a copy of it is worth now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct IssuedCard {
    /// Its number.
    pub number: String,
    /// Its check code.
    pub check_code: String,
    /// Its issue.
    pub issue: u32,
    /// The edition that the issue is from.
    pub edition: String,
    /// Whether it may be used.
    pub is_good: bool,
    /// What a copy of it is worth, in words.
    pub words: String,
}

/// Every card that was ever issued, by number and issue. `facts` are the present cards of the catalogue by number: a hold
/// or withdrawal that waits to be issued counts already, and so does a record that is gone.
#[must_use]
pub fn issued_cards(
    register: &Register,
    catalogue: &Catalogue,
    facts: &BTreeMap<String, CardFacts>,
) -> Vec<IssuedCard> {
    let Some(newest) = register.newest() else { return Vec::new() };
    let mut cards = Vec::new();
    for edition in register.editions() {
        let from_here = edition.cards.iter().filter(|(_, card)| card.since == edition.name);
        for (number, card) in from_here {
            let present = Present::of(number, catalogue, facts);
            let (is_good, words) = worth(register, newest, (number, card), present);
            cards.push(IssuedCard {
                number: number.clone(),
                check_code: card.check_code.clone(),
                issue: card.issue,
                edition: edition.name.clone(),
                is_good,
                words,
            });
        }
    }
    cards.sort_by(|one, other| (&one.number, one.issue).cmp(&(&other.number, other.issue)));
    cards
}

/// Finds a card by what somebody typed: O is taken for 0, I and L for 1, small letters for large ones.
#[must_use]
pub fn find_issued<'a>(cards: &'a [IssuedCard], number: &str, check_code: &str) -> Option<&'a IssuedCard> {
    let (number, code) = (plain(number), code_as_typed(check_code));
    cards.iter().find(|card| plain(&card.number) == number && card.check_code == code)
}

/// A check code as it is printed, from what somebody typed.
///
/// ```
/// assert_eq!(fittingcards::register::code_as_typed(" 7k3m-oL "), "7K3M01");
/// ```
#[must_use]
pub fn code_as_typed(typed: &str) -> String {
    let letters = typed.chars().filter(char::is_ascii_alphanumeric).map(|letter| letter.to_ascii_uppercase());
    let digit = |letter| match letter {
        'O' => '0',
        'I' | 'L' => '1',
        letter => letter,
    };
    letters.map(digit).collect()
}

fn plain(number: &str) -> String {
    number.split_whitespace().collect::<String>().to_uppercase()
}

/// What the records say now of a card.
#[derive(Clone, Copy)]
enum Present<'a> {
    Card(&'a CardFacts),
    /// Its record can't be read: nobody knows what its card will print, and the register holds.
    Unread,
    /// No record asks for it any more.
    Gone,
}

impl<'a> Present<'a> {
    fn of(number: &str, catalogue: &Catalogue, facts: &'a BTreeMap<String, CardFacts>) -> Self {
        match facts.get(number) {
            Some(card) => Self::Card(card),
            None if catalogue.left_out.contains(number) => Self::Unread,
            None => Self::Gone,
        }
    }
}

fn worth(
    register: &Register,
    newest: &Edition,
    (number, card): (&str, &CardIssue),
    present: Present<'_>,
) -> (bool, String) {
    let Some(now) = newest.cards.get(number) else {
        return (false, format!("withdrawn: card {number} is no longer on the register. Hand it in"));
    };
    let present = match present {
        Present::Card(card) => Some(card),
        Present::Unread => None,
        Present::Gone => return (false, "withdrawn: no longer in the records. Hand it in".to_owned()),
    };
    let status = present.map_or(now.status, |present| present.status);
    let status_words = present.map_or_else(|| text_of(now, "status"), |present| present.status_words.clone());
    match status {
        Status::OnHold => return (false, "on hold: stop until told".to_owned()),
        Status::Withdrawn => return (false, "withdrawn: do not use, and hand the card in".to_owned()),
        Status::Superseded => return (false, format!("{}. Hand the card in", lower(&status_words))),
        Status::Current => {}
    }
    let own = register.holds_from(number, card.issue);
    if let Some(by) = register.superseded_by(number, card.issue) {
        let edition = register.issue(number, by.issue).map_or(&newest.name, |(edition, _)| &edition.name);
        let by_which = format!("by issue {} of edition {edition}: hand it in", by.issue);
        let words = match (by.from, own) {
            (Some(day), Some(own)) if own < day => format!(
                "holds from {own} on, not before; superseded from {day} on {by_which} on that day, and work by the new one"
            ),
            (Some(day), None) => {
                format!("superseded from {day} on {by_which} on that day, and work by the new one")
            }
            (_, Some(_)) => format!("superseded before it held {by_which}, and do not work by it"),
            (None, None) => format!("superseded {by_which}, and work by the new one"),
        };
        return (false, words);
    }
    let only = own.map_or_else(String::new, |day| format!(" from {day} on, not before,"));
    let good = format!(
        "good{only} by edition {} of {}: a newer edition or a hold notice overrules this",
        newest.name, newest.date
    );
    let pending = present.is_some_and(|present| register.standing(present) == Standing::Draft);
    let more = if pending { ". A change of it waits to be issued" } else { "" };
    (true, format!("{good}{more}"))
}

fn lower(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn card(number: &str, check_code: &str) -> IssuedCard {
        IssuedCard {
            number: number.to_owned(),
            check_code: check_code.to_owned(),
            issue: 1,
            edition: "1".to_owned(),
            is_good: true,
            words: String::new(),
        }
    }

    /// Crockford's base 32 takes O for 0, and I and L for 1 (its publication).
    #[test]
    fn letters_that_look_like_digits_are_those_digits() {
        let cards = [card("ST-4100", "10ABCD"), card("ST-4110", "7K3M9Q")];
        for typed in ["10ABCD", "lOabcd", "IoABCD", " 10 AB-CD "] {
            assert_eq!(find_issued(&cards, "st-4100 ", typed), Some(&cards[0]), "{typed}");
        }
        assert_eq!(find_issued(&cards, "ST-4110", "10ABCD"), None);
    }
}

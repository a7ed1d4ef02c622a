//! Which notices explain a change: those that the card's fitting, or a fitting that uses the changed part, newly
//! cites.

use super::change::Change;
use crate::catalogue::CardIssue;
use std::cell::OnceCell;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// Who cites what anew between two states, and who uses which part.
pub(super) struct Explaining<'a> {
    newly: BTreeMap<&'a str, BTreeSet<&'a str>>,
    users: BTreeMap<&'a str, BTreeSet<&'a str>>,
}

impl<'a> Explaining<'a> {
    pub(super) fn between(was: &'a BTreeMap<String, CardIssue>, is: &'a BTreeMap<String, CardIssue>) -> Self {
        let mut newly = BTreeMap::new();
        // Who prints the very same texts cites nothing anew; of a large register that is nearly all.
        let same = |number: &str, card: &CardIssue| {
            was.get(number).is_some_and(|before| Arc::ptr_eq(&before.texts, &card.texts))
        };
        let by_any: OnceCell<BTreeSet<&str>> = OnceCell::new();
        for (number, card) in is.iter().filter(|(number, card)| !same(number, card)) {
            // What a new fitting cites is new only where nobody cited it before.
            let before = match was.get(number) {
                Some(before) => &cited(before).collect(),
                None => by_any.get_or_init(|| was.values().flat_map(cited).collect()),
            };
            let new: BTreeSet<&str> = cited(card).filter(|notice| !before.contains(notice)).collect();
            if !new.is_empty() {
                newly.insert(number.as_str(), new);
            }
        }
        let mut users: BTreeMap<&str, BTreeSet<&str>> = BTreeMap::new();
        // Who cites nothing anew explains nothing.
        for (number, card) in is.iter().chain(was).filter(|(number, _)| newly.contains_key(number.as_str())) {
            for part in parts(card) {
                users.entry(part).or_default().insert(number);
            }
        }
        Self { newly, users }
    }

    /// The notices that explain a change of this card, in order. What speaks of parts or fittings is explained by those
    /// who use them, and not by every fitting of the body that the card is about.
    pub(super) fn notices(&self, card: &str, change: &Change) -> Vec<String> {
        let of_body = self.users.get(card).filter(|_| change.about.is_empty());
        let own = of_body.into_iter().flatten().copied().chain([card]);
        let mut notices: BTreeSet<&str> =
            own.filter_map(|fitting| self.newly.get(fitting)).flatten().copied().collect();
        for number in change.about.iter().map(String::as_str) {
            let users = self.users.get(number).into_iter().flatten().copied();
            for fitting in users.chain([number]) {
                notices.extend(self.newly.get(fitting).into_iter().flatten());
            }
        }
        notices.into_iter().map(|notice: &str| notice.to_owned()).collect()
    }
}

pub(super) fn cited(card: &CardIssue) -> impl Iterator<Item = &str> {
    card.texts.iter().filter(|text| text.name == "notice").map(|text| text.text.as_str())
}

/// The parts of a fitting, by its card.
fn parts(card: &CardIssue) -> impl Iterator<Item = &str> {
    let items = card.texts.iter().filter(|text| text.name.starts_with("item "));
    items.flat_map(|text| text.about.iter().map(String::as_str))
}

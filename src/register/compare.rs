//! Two states against each other: what to print again, what is new, what to withdraw, and whose copies.

use super::copies::{HolderLists, lists};
use super::difference::differences;
use super::entry::text_of;
use super::explained::Explaining;
use super::{CardChange, Change, REISSUED, Register, State};
use crate::catalogue::{CardIssue, Catalogue, Edition, Gaps, Grade};
use std::sync::Arc;

/// What may be otherwise where records are left out.
const OTHERWISE: &str = "a change or a copy that it names may come of that, and others may be missing. Hand out, \
                         withdraw and call in nothing by it";

/// What has changed between an edition and a later state.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Comparison {
    /// The earlier edition; none where nothing was issued before.
    pub since: Option<String>,
    /// The later edition; none for the present state.
    pub with: Option<String>,
    /// Cards that print something else.
    pub print_again: Vec<CardChange>,
    /// Cards that were not there.
    pub new: Vec<CardChange>,
    /// Cards that must not be used any more: gone, withdrawn, superseded.
    pub withdraw: Vec<CardChange>,
    /// Numbers of cards that print the same.
    pub unchanged: Vec<String>,
    /// What each holder gets and gives back.
    pub holders: Vec<HolderLists>,
    /// Numbers of cards of which nobody knows what they print now: records could not be read.
    pub not_compared: Vec<String>,
    /// What is to be said first where records could not be looked at.
    pub incomplete: Option<String>,
}

impl Comparison {
    /// Every card of which something has changed, in the order of print again, new, withdraw.
    pub fn changed(&self) -> impl Iterator<Item = &CardChange> {
        self.print_again.iter().chain(&self.new).chain(&self.withdraw)
    }

    /// Sets apart the cards of which nobody knows what they print now: they are not unchanged.
    pub fn leave_open(&mut self, numbers: Vec<String>) {
        self.unchanged.retain(|number| !numbers.contains(number));
        self.not_compared = numbers;
    }
}

/// Compares an edition with a later one or, where none is named, with the present state.
///
/// `present` is the present state as [`Register::next`] gives it; `since` and `with` are places in
/// [`Register::editions`]. `because` is a reason that explains what no notice does; empty where none is given.
#[must_use]
pub fn compare(
    register: &Register,
    catalogue: &Catalogue,
    (since, with): (Option<usize>, Option<usize>),
    (present, because): (&State, &str),
) -> Comparison {
    let none = State::new();
    let (was, is) = states(register, (since, with), present, &none);
    let holders = lists(register, catalogue, was, is, with);
    let left_out = if with.is_some() { catalogue.gaps.other } else { catalogue.gaps.all() };
    let incomplete = Gaps::stop(left_out, OTHERWISE);
    Comparison { holders, incomplete, ..changes(register, (since, with), (present, because)) }
}

/// The same without the holders' lists.
#[must_use]
pub fn changes(
    register: &Register,
    (since, with): (Option<usize>, Option<usize>),
    (present, because): (&State, &str),
) -> Comparison {
    let none = State::new();
    let (was, is) = states(register, (since, with), present, &none);
    let editions = register.editions();
    let between = since.map_or(0, |nth| nth + 1)..with.map_or(editions.len(), |nth| nth + 1);
    let reasons = editions.get(between).unwrap_or_default();
    let with_reason = |edition: &&Arc<Edition>| !edition.because.is_empty();
    let is_reasoned = |card: Option<&CardIssue>| match card {
        // A reason is one for the cards of its own edition.
        Some(card) if register.position(&card.since).is_some() => {
            reasons.iter().filter(with_reason).any(|edition| edition.name == card.since)
        }
        Some(_) => !because.is_empty(),
        None => !because.is_empty() || reasons.iter().any(|edition| with_reason(&edition)),
    };
    let mut found = Comparison {
        since: since.map(|nth| editions[nth].name.clone()),
        with: with.map(|nth| editions[nth].name.clone()),
        print_again: Vec::new(),
        new: Vec::new(),
        withdraw: Vec::new(),
        unchanged: Vec::new(),
        holders: Vec::new(),
        not_compared: Vec::new(),
        incomplete: None,
    };
    // A card that comes back is held against what it said last.
    let earlier = since.map_or(&[][..], |nth| &editions[..=nth]);
    let last = |number: &str| earlier.iter().rev().find_map(|edition| edition.cards.get(number));
    sort_out((was, last), is, is_reasoned, &mut found);
    found
}

/// The earlier and the later state.
fn states<'a>(
    register: &'a Register,
    (since, with): (Option<usize>, Option<usize>),
    present: &'a State,
    none: &'a State,
) -> (&'a State, &'a State) {
    let of = |nth: usize| &register.editions()[nth].cards;
    (since.map_or(none, of), with.map_or(present, of))
}

fn sort_out<'a>(
    (was, last): (&'a State, impl Fn(&str) -> Option<&'a CardIssue>),
    is: &State,
    is_reasoned: impl Fn(Option<&CardIssue>) -> bool,
    found: &mut Comparison,
) {
    let explaining = Explaining::between(was, is);
    for (number, card) in is {
        let Some(before) = was.get(number) else {
            found.new.push(match last(number) {
                None => fresh(number, card),
                Some(before) => {
                    let changes = differences(&before.texts, &card.texts);
                    let reasoned = is_reasoned(Some(card));
                    explained(number, Some(before), Some(card), changes, &explaining, reasoned)
                }
            });
            continue;
        };
        let changes = if Arc::ptr_eq(&before.texts, &card.texts) {
            Vec::new()
        } else {
            differences(&before.texts, &card.texts)
        };
        if changes.is_empty() {
            found.unchanged.push(number.clone());
            continue;
        }
        let reasoned = is_reasoned(Some(card));
        let changed = explained(number, Some(before), Some(card), changes, &explaining, reasoned);
        let list = if card.status.is_out_of_use() && !before.status.is_out_of_use() {
            &mut found.withdraw
        } else {
            &mut found.print_again
        };
        list.push(changed);
    }
    for (number, card) in was.iter().filter(|(number, _)| !is.contains_key(*number)) {
        let reasoned = is_reasoned(None);
        found.withdraw.push(explained(number, Some(card), None, vec![gone()], &explaining, reasoned));
    }
    found.withdraw.sort_by(|one, other| one.number.cmp(&other.number));
}

fn fresh(number: &str, card: &CardIssue) -> CardChange {
    CardChange {
        number: number.to_owned(),
        title: text_of(card, "name"),
        issue: None,
        becomes: Some(card.issue),
        changes: Vec::new(),
        explained: true,
        status_words: text_of(card, "status"),
    }
}

/// A card that is no longer there: what it was about has no record any more.
fn gone() -> Change {
    Change {
        what: "card".to_owned(),
        was: "on the register".to_owned(),
        is: String::new(),
        grade: Grade::Safety,
        notices: Vec::new(),
        about: Vec::new(),
    }
}

fn explained(
    number: &str,
    was: Option<&CardIssue>,
    is: Option<&CardIssue>,
    mut changes: Vec<Change>,
    explaining: &Explaining<'_>,
    reasoned: bool,
) -> CardChange {
    for change in &mut changes {
        change.notices = explaining.notices(number, change);
    }
    let is_explained = |change: &Change| {
        change.grade == Grade::Text || !change.notices.is_empty() || change.what == REISSUED
    };
    let named = is.or(was);
    CardChange {
        number: number.to_owned(),
        title: named.map(|card| text_of(card, "name")).unwrap_or_default(),
        issue: was.map(|card| card.issue),
        becomes: is.map(|card| card.issue),
        explained: reasoned || changes.iter().all(is_explained),
        changes,
        status_words: is.map(|card| text_of(card, "status")).unwrap_or_default(),
    }
}

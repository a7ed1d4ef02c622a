//! Where a card stands: what its foot prints.

use super::next::{issued_texts, prints_the_same};
use super::{REISSUED, Register, difference};
use crate::facts::CardFacts;
use jiff::civil::Date;
use std::collections::BTreeSet;

/// Where a card stands: what its foot prints.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Standing {
    /// The newest edition does not hold what it prints; it must not be used.
    Draft,
    /// The newest edition holds it.
    Issued(Box<Issued>),
}

/// What an edition says of a card.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Issued {
    /// The card's issue number.
    pub issue: u32,
    /// The edition that the issue is from.
    pub edition: String,
    /// The date of that edition.
    pub date: Option<Date>,
    /// The check code of what the card prints.
    pub check_code: String,
    /// The issue before it and the edition of that; none of a first issue.
    pub supersedes: Option<(u32, String)>,
    /// The day from which it holds, where notices put it off to after that edition.
    pub holds_from: Option<Date>,
    /// Why it was issued again though nothing on it had changed; empty where it was not.
    pub because: String,
    /// Names of the printed texts that are new or others than those of the issue before.
    pub changed: BTreeSet<String>,
}

impl Register {
    /// Where a card stands.
    #[must_use]
    pub fn standing(&self, card: &CardFacts) -> Standing {
        let Some(newest) = self.newest() else { return Standing::Draft };
        let Some(entry) = newest.cards.get(&card.number) else { return Standing::Draft };
        if !prints_the_same(&entry.texts, &issued_texts(card)) {
            return Standing::Draft;
        }
        let from = self.edition(&entry.since).unwrap_or(newest);
        let before = self.issues(&card.number).filter(|(_, before)| before.issue < entry.issue).last();
        let changed = before.map(|(_, before)| difference::changed_names(&before.texts, &entry.texts));
        let reason = entry.texts.iter().find(|text| text.name == REISSUED);
        Standing::Issued(Box::new(Issued {
            issue: entry.issue,
            edition: entry.since.clone(),
            date: Some(from.date),
            check_code: entry.check_code.clone(),
            holds_from: self.holds_from(&card.number, entry.issue),
            supersedes: before.map(|(edition, before)| (before.issue, edition.name.clone())),
            because: reason.map(|reason| reason.text.clone()).unwrap_or_default(),
            changed: changed.unwrap_or_default(),
        }))
    }
}

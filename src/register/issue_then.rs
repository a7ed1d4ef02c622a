//! A card as it was on a day: which issue was in force, and what has changed since.

use super::difference::differences;
use super::{Change, Register};
use crate::catalogue::{CardIssue, Edition};
use jiff::civil::Date;

impl Register {
    /// The issue of a card that was in force on a day, with the edition of that day; none before the first edition,
    /// or where the card was not on the register.
    #[must_use]
    pub fn issue_on(&self, number: &str, day: Date) -> Option<(&Edition, &CardIssue)> {
        let edition = self.editions().iter().rev().find(|edition| edition.date <= day)?;
        Some((&**edition, edition.cards.get(number)?))
    }

    /// What the newest edition prints otherwise on a card than an earlier issue of it did; nothing where there is no
    /// such issue, or the card is gone.
    #[must_use]
    pub fn changed_since(&self, number: &str, issue: u32) -> Vec<Change> {
        let now = self.newest().and_then(|newest| newest.cards.get(number));
        match (self.issue(number, issue), now) {
            (Some((_, then)), Some(now)) => differences(&then.texts, &now.texts),
            _ => Vec::new(),
        }
    }
}

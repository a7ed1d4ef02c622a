//! What has changed on a card since an issue of it.

use super::difference::differences;
use super::{Change, Register};

impl Register {
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

//! From which day each issue of a card holds: where notices put it off to after the edition that issued it, the copies
//! before it stay good until then.

use super::change::Change;
use super::difference::differences;
use super::explained::{Explaining, cited};
use crate::catalogue::{CardIssue, Edition, Grade, Status};
use jiff::civil::Date;
use std::cell::LazyCell;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Notices by number, with the day from which each holds.
pub(super) type Effective = BTreeMap<String, Date>;

/// The issues of each card, the first one first, with the day from which each holds; none where it holds at once.
#[derive(Debug, Clone, Default)]
pub(super) struct Days(BTreeMap<String, Vec<(u32, Option<Date>)>>);

impl Days {
    pub(super) fn of(editions: &[Arc<Edition>], effective: &Effective) -> Self {
        let mut days = Self::default();
        let none = BTreeMap::new();
        let mut was = &none;
        for edition in editions {
            let fresh = edition.cards.iter().filter(|(_, card)| card.since == edition.name);
            // In an edition with nothing but new cards, as the first is, nothing has to be explained.
            let explaining = LazyCell::new(|| Explaining::between(was, &edition.cards));
            let explained_by = |number: &str, change: &Change| explaining.notices(number, change);
            let issued = Issued { explained_by: &explained_by, date: edition.date, effective };
            for (number, card) in fresh {
                let issues = days.0.entry(number.clone()).or_default();
                let pending = issues.last().and_then(|(_, day)| *day);
                issues.push((card.issue, issued.day(number, was.get(number), card, pending)));
            }
            was = &edition.cards;
        }
        days
    }

    pub(super) fn issues(&self, number: &str) -> &[(u32, Option<Date>)] {
        self.0.get(number).map_or(&[], Vec::as_slice)
    }
}

/// An edition, seen from the one before.
struct Issued<'a> {
    /// The notices that explain a change of a card.
    explained_by: &'a dyn Fn(&str, &Change) -> Vec<String>,
    date: Date,
    effective: &'a Effective,
}

impl Issued<'_> {
    /// A changed card is put off only where every notice of its changes puts it off, to the first of their days: what
    /// holds already may not wait. A new one waits for the last. What may not be used is so at once.
    fn day(
        &self,
        number: &str,
        before: Option<&CardIssue>,
        card: &CardIssue,
        pending: Option<Date>,
    ) -> Option<Date> {
        if card.status != Status::Current {
            return None;
        }
        let Some(before) = before else { return cited(card).filter_map(|notice| self.later(notice)).max() };
        let changes = differences(&before.texts, &card.texts);
        let is_safety = changes.iter().any(|change| change.grade == Grade::Safety);
        let weighty = changes.iter().filter(|change| !is_safety || change.grade == Grade::Safety);
        let days = weighty.map(|change| {
            let notices = (self.explained_by)(number, change);
            let days: Option<Vec<Date>> = notices.iter().map(|notice| self.later(notice)).collect();
            days.and_then(|days| days.into_iter().min())
        });
        let own = days.collect::<Option<Vec<Date>>>().and_then(|days| days.into_iter().min());
        // A new wording of an issue that waits does not make the rest of it hold.
        own.or_else(|| pending.filter(|day| !is_safety && *day > self.date))
    }

    /// The day of a notice, where that is later than the edition.
    fn later(&self, notice: &str) -> Option<Date> {
        self.effective.get(notice).copied().filter(|day| *day > self.date)
    }
}

//! Which issue of a card is in force: now, on a day, and until the newest one holds.

use super::Register;
use crate::catalogue::{CardIssue, Status};
use jiff::civil::Date;

/// What became of an issue that is no longer the newest.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct SupersededBy {
    /// The issue to work by instead.
    pub issue: u32,
    /// The day from which that one holds; none where it holds already.
    pub from: Option<Date>,
}

/// A card whose newest issue does not hold yet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Waiting {
    /// The day from which the newest issue holds.
    pub from: Date,
    /// What holds until then: an issue, and the status that it prints; none of a card that is new.
    pub until_then: Option<(u32, Status)>,
}

impl Waiting {
    /// From when it holds and what holds until then, in words.
    #[must_use]
    pub fn words(self) -> String {
        let until_then = match self.until_then {
            Some((issue, Status::Current)) => format!("until then work by issue {issue}"),
            Some((_, Status::OnHold)) => "on hold until then".to_owned(),
            Some((_, Status::Withdrawn | Status::Superseded)) | None => "not to be used before".to_owned(),
        };
        format!("Holds from {} on; {until_then}", self.from)
    }
}

impl Register {
    /// The day from which an issue of a card holds, where notices put it off to after the edition that issued it.
    #[must_use]
    pub fn holds_from(&self, number: &str, issue: u32) -> Option<Date> {
        self.days().issues(number).iter().find(|(known, _)| *known == issue).and_then(|(_, day)| *day)
    }

    /// What became of an issue of a card; `None` while no later one is on the register. The last one that holds at once
    /// counts, else the first of those that are put off.
    #[must_use]
    pub fn superseded_by(&self, number: &str, issue: u32) -> Option<SupersededBy> {
        let later = || self.days().issues(number).iter().filter(|(known, _)| *known > issue);
        let at_once = later().rfind(|(_, day)| day.is_none());
        let first = at_once.or_else(|| later().min_by_key(|(_, day)| *day));
        first.map(|(issue, from)| SupersededBy { issue: *issue, from: *from })
    }

    /// The day until which copies of an earlier issue stay good, because the issue after it holds only from then on; `None`
    /// where they are good no longer, or the card may not be used at all.
    #[must_use]
    pub fn good_until(&self, number: &str, issue: u32) -> Option<Date> {
        let now = self.newest()?.cards.get(number).filter(|card| !card.status.is_out_of_use());
        now.and_then(|_| self.superseded_by(number, issue)?.from)
    }

    /// Whether the newest issue of a card waits for its day, and what holds until then.
    #[must_use]
    pub fn waiting(&self, number: &str) -> Option<Waiting> {
        let ((newest, from), earlier) = self.days().issues(number).split_last()?;
        let from = (*from)?;
        let (edition, _) = self.issue(number, *newest)?;
        let before = earlier.iter().rfind(|(_, day)| day.is_none_or(|day| day <= edition.date));
        let issue = before.and_then(|(issue, _)| self.issue(number, *issue));
        Some(Waiting { from, until_then: issue.map(|(_, card)| (card.issue, card.status)) })
    }

    /// The issue of a card that was in force on a day, by the editions until then and the days that they were put off to;
    /// none before the first edition, or where the card was not on the register.
    #[must_use]
    pub fn issue_on(&self, number: &str, day: Date) -> Option<&CardIssue> {
        let edition = self.editions().iter().rfind(|edition| edition.date <= day)?;
        let newest = edition.cards.get(number)?;
        let holds = |(issue, from): &&(u32, Option<Date>)| {
            *issue <= newest.issue && from.is_none_or(|from| from <= day)
        };
        let (issue, _) = self.days().issues(number).iter().rfind(holds)?;
        self.issue(number, *issue).map(|(_, card)| card)
    }
}

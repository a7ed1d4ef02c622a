//! Whether a fitting was built by a card that is superseded.

use super::{Installed, Reason, ReasonKind};
use crate::catalogue::{Grade, Status};
use crate::register::{Change, Register, text_of};
use std::collections::BTreeMap;

/// So many changes are said of a card.
const CHANGES_SAID: usize = 3;

/// Cards, each issue looked at once.
pub(super) struct Cards<'a> {
    register: &'a Register,
    changes: BTreeMap<(String, u32), Vec<String>>,
}

impl<'a> Cards<'a> {
    pub(super) fn of(register: &'a Register) -> Self {
        Self { register, changes: BTreeMap::new() }
    }

    /// A fitting that was built while its card said that it must not be.
    pub(super) fn built_against(&self, installed: &Installed) -> Option<Reason> {
        let built = installed.built?;
        let card = self.register.issue_on(&installed.fitting.number, built)?;
        if card.status == Status::Current {
            return None;
        }
        let said = text_of(card, "status");
        let notices = card.texts.iter().filter(|text| text.name == "notice");
        let notices: Vec<&str> = notices.map(|text| text.text.as_str()).collect();
        let by = if notices.is_empty() { String::new() } else { format!(" ({})", notices.join(", ")) };
        let words = format!("built when issue {} of its card said: {said}{by}", card.issue);
        Some(Reason::new(ReasonKind::Status, words))
    }

    /// A card that was superseded already when the fitting was built, or of which a text has changed since that
    /// decides safety. Without an issue that is stated, it is taken to be that of the day.
    pub(super) fn reason(&mut self, installed: &Installed) -> Option<Reason> {
        let number = installed.fitting.number.as_str();
        let in_force = installed.built.and_then(|built| self.register.issue_on(number, built));
        let in_force = in_force.map(|card| card.issue);
        let used = installed.issue.or(in_force)?;
        let now = self.register.newest()?.cards.get(number)?.issue;
        let was_other = in_force.filter(|in_force| used != *in_force);
        let since = if used < now { self.changes(number, used) } else { &[] };
        let mut words = match (was_other, since.is_empty()) {
            (Some(in_force), _) => {
                format!("built with issue {used} of its card when issue {in_force} was in force")
            }
            (None, false) if installed.issue.is_some() => format!("built with issue {used} of its card"),
            (None, false) => format!("built when issue {used} of its card was in force"),
            (None, true) => return None,
        };
        if since.is_empty() {
            words.push_str("; nothing that decides safety has changed since");
        } else {
            words.push_str(&format!("; issue {now} says: {}", since.join("; ")));
        }
        Some(Reason::new(ReasonKind::Card, words))
    }

    /// What has changed since an issue and decides safety, in words, as far as there is room.
    fn changes(&mut self, number: &str, issue: u32) -> &[String] {
        let register = self.register;
        self.changes.entry((number.to_owned(), issue)).or_insert_with(|| {
            let mut changes = register.changed_since(number, issue);
            changes.retain(|change| change.grade == Grade::Safety);
            changes.sort_by_key(Change::rank);
            let safety: Vec<String> = changes.iter().map(Change::words).collect();
            let more = safety.len().saturating_sub(CHANGES_SAID);
            let mut said: Vec<String> = safety.into_iter().take(CHANGES_SAID).collect();
            said.extend((more > 0).then(|| format!("and {more} more")));
            said
        })
    }
}

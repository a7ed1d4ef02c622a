//! The notice to crews, which is one page.

use super::{Page, Told, page};
use crate::catalogue::{Fitting, Grade, Status};
use crate::register::{self, CardChange, Comparison};
use jiff::civil::Date;
use serde_json::json;
use std::collections::BTreeSet;

/// So many lines have room in the table of the notice to crews, which is one page; a card takes one for its edges.
const LINES_ON_THE_NOTICE: usize = 36;
/// So many fittings on hold stand above the table; each takes about two lines.
const HELD_THERE: usize = 6;
/// So many letters stand in a line of a card's title there.
const LETTERS_OF_TITLE: usize = 18;
/// So many letters stand in a line of what is different.
const LETTERS_OF_CHANGE: usize = 30;
/// So many letters stand in a line of numbers below it.
const LETTERS_OF_NUMBERS: usize = 80;
/// So many changes of a card stand there.
const CHANGES_THERE: usize = 4;

impl Told<'_> {
    pub(super) fn to_crews(&self) -> Page {
        let all: Vec<&CardChange> = self.newest.iter().flat_map(Comparison::changed).collect();
        let withdrawn = self.newest.iter().flat_map(|newest| &newest.withdraw);
        let withdrawn: BTreeSet<&str> = withdrawn.map(|card| &*card.number).collect();
        let mut told: Vec<&&CardChange> = all.iter().collect();
        // The weightiest first; last those that nobody was to use before either.
        told.sort_by_key(|card| {
            let was_out = !card.status_words.is_empty() && !withdrawn.contains(&*card.number);
            (card.grade() != Grade::Safety, was_out, card.rank())
        });
        let held = self.held();
        let numbers: Vec<&str> = told.iter().map(|card| card.number.as_str()).collect();
        // Those that the table has no room for stand below it by their numbers.
        let named = lines_of(&numbers.join(", "), LETTERS_OF_NUMBERS) - 1;
        let mut lines = named + 2 * held.len().min(HELD_THERE);
        let (mut cards, mut some_later) = (Vec::new(), false);
        for card in &told {
            let mut changes = changes_for_crews(card);
            let later = self.later(card);
            some_later |= later.is_some();
            changes.extend(later);
            let title = lines_of(&format!("{} {}", card.number, card.title), LETTERS_OF_TITLE);
            let different = changes.iter().map(|words| lines_of(words, LETTERS_OF_CHANGE)).sum();
            lines += title.max(different) + 1;
            if lines > LINES_ON_THE_NOTICE {
                break;
            }
            cards.push(json!({
                "number": card.number, "title": card.title, "was": number(card.issue),
                "is": if withdrawn.contains(&*card.number) { do_not_use(card) } else { number(card.becomes) },
                "changes": changes, "notices": self.by(card),
            }));
        }
        // Whoever does not find a card here keeps it: those without room for their changes are named all the same.
        let more = &numbers[cards.len()..];
        let more_held: Vec<&str> = held.iter().skip(HELD_THERE).map(|(number, _)| number.as_str()).collect();
        let values = json!({
            "more": more, "cards": cards, "later": some_later,
            "held": held.iter().take(HELD_THERE).map(|(_, words)| words).collect::<Vec<_>>(),
            "more_held": more_held,
        });
        page("notice-to-crews", "Notice to crews", values)
    }

    /// The day from which a changed card holds, where it does not at once.
    fn later(&self, card: &CardChange) -> Option<String> {
        let day = self.prepared.register.holds_from(&card.number, card.becomes?)?;
        Some(format!("holds from {day} on"))
    }

    /// What a change rests on: notices, else the reason that was given with the edition.
    fn by(&self, card: &CardChange) -> String {
        let notices = card.notices().join(", ");
        let is_reasoned = notices.is_empty() && card.grade() == Grade::Safety && card.issue.is_some();
        let reason = self.edition().filter(|_| is_reasoned).map(|edition| edition.because.clone());
        reason.unwrap_or(notices)
    }

    /// The fittings that nobody may build until told, or until the day from which they may: the number of each, and in
    /// words with its newest notice.
    fn held(&self) -> Vec<(String, String)> {
        let held = self.prepared.catalogue.fittings.values().filter_map(|fitting| {
            let until = match fitting.status {
                Status::OnHold => String::new(),
                _ => format!(", until {}", self.held_until(fitting)?),
            };
            let newest = fitting.notices.iter().max_by_key(|notice| notice.date);
            let notice = newest.map(|notice| format!(" ({}: {})", notice.number, notice.title));
            let words = format!("{} {}{until}{}", fitting.number, fitting.name, notice.unwrap_or_default());
            Some((fitting.number.clone(), words))
        });
        held.collect()
    }

    /// The day on which a hold ends that a notice lifts only then.
    fn held_until(&self, fitting: &Fitting) -> Option<Date> {
        let waiting = self.prepared.register.waiting(&fitting.number)?;
        let is_held = waiting.until_then.is_some_and(|(_, status)| status == Status::OnHold);
        (fitting.status == Status::Current && is_held).then_some(waiting.from)
    }
}

fn number(issue: Option<u32>) -> String {
    issue.map_or_else(|| "none".to_owned(), |issue| issue.to_string())
}

/// "withdrawn" or "superseded"; the changes say the rest. Of a card that is gone there is no status.
fn do_not_use(card: &CardChange) -> String {
    let word = card.status_words.split([' ', ':']).next().filter(|word| !word.is_empty());
    word.unwrap_or("withdrawn").to_lowercase()
}

/// The weightiest changes of a card in words: what is set and measured before the steps, which stand on the card.
fn changes_for_crews(card: &CardChange) -> Vec<String> {
    let mut weightiest: Vec<&register::Change> = card.changes.iter().collect();
    weightiest.sort_by_key(|change| change.rank());
    let mut changes: Vec<String> =
        weightiest.into_iter().take(CHANGES_THERE).map(register::Change::words).collect();
    if card.changes.len() > CHANGES_THERE {
        changes.push(format!("and {} more", card.changes.len() - CHANGES_THERE));
    }
    if card.issue.is_none() {
        changes.push("new card".to_owned());
    }
    changes
}

/// Lines that a text takes where so many letters stand in one.
fn lines_of(text: &str, letters: usize) -> usize {
    text.chars().count().div_ceil(letters).max(1)
}

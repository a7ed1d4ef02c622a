//! Editions: which card had which issue and check code, what has changed since, and what becomes the next edition.
//!
//! Only what cards print counts: each edition holds the printed texts of every card whose issue is new in it, and
//! comparisons look at nothing else. Nothing is written here; [`edition_text`] gives the text of an edition's file.

mod change;
mod compare;
mod comparison_text;
mod copies;
mod current;
mod days;
mod days_differ;
mod difference;
mod edition_text;
mod entry;
mod explained;
mod handed_out;
mod history;
mod in_force;
mod issue_then;
mod json;
mod next;
mod refused;
mod standing;

pub use change::{CardChange, Change};
pub use compare::{Comparison, changes, compare};
pub use comparison_text::{comparison_text, explained_by};
pub use copies::{
    CopiesOfCard, CopiesOfIssue, HolderCopies, HolderLists, copies_of_issue, not_issued, still_out,
};
pub use current::{DRAFT, IssuedCard, UNKNOWN, code_as_typed, find_issued, issued_cards};
pub use days_differ::days_differ;
pub use edition_text::edition_text;
pub use entry::text_of;
pub use handed_out::copies_of;
pub use history::{history, of_card, of_notice};
pub use in_force::{SupersededBy, Waiting};
pub use json::comparison_json;
pub use next::Reissue;
pub use refused::{Asked, Refusal, refusals, unexplained};
pub use standing::{Issued, Standing};

use crate::catalogue::{CardIssue, Catalogue, Edition, Notice};
use crate::source::{FilePath, Place};
use days::{Days, Effective};
use std::collections::BTreeMap;
use std::sync::{Arc, OnceLock};

/// Every card of a state by its number.
pub type State = BTreeMap<String, CardIssue>;

/// Its name on the list of what a card prints, for the reason of a reissue.
pub(crate) const REISSUED: &str = "reissued because";

/// The editions of a catalogue, the first one first.
#[derive(Debug, Clone, Default)]
pub struct Register {
    editions: Vec<Arc<Edition>>,
    effective: Effective,
    /// Worked out when it is asked for: most who read a register don't.
    days: OnceLock<Days>,
}

impl Register {
    /// The editions of a catalogue.
    #[must_use]
    pub fn of(catalogue: &Catalogue) -> Self {
        let day = |(number, notice): (&String, &Arc<Notice>)| Some((number.clone(), notice.effective?));
        Self::from(catalogue.editions.clone(), catalogue.notices.iter().filter_map(day).collect())
    }

    fn from(editions: Vec<Arc<Edition>>, effective: Effective) -> Self {
        Self { editions, effective, days: OnceLock::new() }
    }

    fn days(&self) -> &Days {
        self.days.get_or_init(|| Days::of(&self.editions, &self.effective))
    }

    /// The register with this state as one more edition, for looking at what it would come to.
    #[must_use]
    pub fn with(&self, asked: &Asked, cards: State) -> Self {
        let mut editions = self.editions.clone();
        editions.push(Arc::new(Edition {
            name: asked.edition.clone(),
            date: asked.date,
            checked_by: asked.checked_by.clone(),
            approved_by: asked.approved_by.clone(),
            because: asked.because.clone(),
            notices: Vec::new(),
            holders: Vec::new(),
            cards,
            hash: String::new(),
            place: Place::whole(FilePath::catalogue(&format!("register/{}.yaml", asked.edition))),
        }));
        Self::from(editions, self.effective.clone())
    }

    /// Every edition, the first one first.
    #[must_use]
    pub fn editions(&self) -> &[Arc<Edition>] {
        &self.editions
    }

    /// The newest edition, where there is any.
    #[must_use]
    pub fn newest(&self) -> Option<&Edition> {
        self.editions.last().map(|edition| &**edition)
    }

    /// Where an edition stands in the line, counted from 0.
    #[must_use]
    pub fn position(&self, name: &str) -> Option<usize> {
        self.editions.iter().position(|edition| edition.name == name)
    }

    /// The edition of this name.
    #[must_use]
    pub fn edition(&self, name: &str) -> Option<&Edition> {
        self.position(name).map(|nth| &*self.editions[nth])
    }

    /// The line of a card in the edition that its issue is from, for an issue that it had at any time.
    #[must_use]
    pub fn issue(&self, number: &str, issue: u32) -> Option<(&Edition, &CardIssue)> {
        let of = |edition: &'_ Arc<Edition>| {
            edition.cards.get(number).is_some_and(|card| card.issue == issue && card.since == edition.name)
        };
        let edition = self.editions.iter().find(|edition| of(edition))?;
        Some((edition, &edition.cards[number]))
    }

    /// The issues of a card, the first one first, each with the edition that it is from.
    pub fn issues<'a>(&'a self, number: &'a str) -> impl Iterator<Item = (&'a Edition, &'a CardIssue)> {
        self.editions.iter().filter_map(move |edition| {
            let card = edition.cards.get(number).filter(|card| card.since == edition.name)?;
            Some((&**edition, card))
        })
    }
}

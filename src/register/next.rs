//! The present state as it would stand in the next edition.

use super::{REISSUED, Register, State};
use crate::catalogue::{CardIssue, Catalogue, Grade, IssuedText};
use crate::facts::{CardFacts, CheckCode, PrintedText};
use rayon::prelude::*;
use std::sync::Arc;

/// Cards that are issued again though nothing that they print has changed.
#[derive(Debug, Clone, Copy, Default)]
pub struct Reissue<'a> {
    /// Their numbers.
    pub numbers: &'a [String],
    /// Why: it becomes a printed text of these cards.
    pub because: &'a str,
}

impl Register {
    /// Every card of the present state as the next edition would hold it: with the issue that it has, where it prints
    /// what the newest edition says, else with the next one. `edition` is the name of the next.
    #[must_use]
    pub fn next<'f>(
        &self,
        catalogue: &Catalogue,
        facts: impl IntoIterator<Item = &'f CardFacts>,
        edition: &str,
        reissue: Reissue<'_>,
    ) -> State {
        let facts: Vec<&CardFacts> = facts.into_iter().collect();
        let next_of = |card: &&CardFacts| {
            let replaced_by = catalogue.fittings.get(&card.number);
            let replaced_by = replaced_by.and_then(|fitting| fitting.use_instead.clone());
            let next = CardIssue { superseded_by: replaced_by, ..self.next_issue(card, edition, reissue) };
            (card.number.clone(), next)
        };
        let each: Vec<(String, CardIssue)> = facts.par_iter().map(next_of).collect();
        let mut next: State = each.into_iter().collect();
        // Of a record that can't be read nobody knows what its card will print: it is not gone.
        for (number, card) in self.newest().into_iter().flat_map(|newest| &newest.cards) {
            if catalogue.left_out.contains(number) && !next.contains_key(number) {
                next.insert(number.clone(), card.clone());
            }
        }
        next
    }

    fn next_issue(&self, card: &CardFacts, edition: &str, reissue: Reissue<'_>) -> CardIssue {
        let texts = issued_texts(card);
        let again = reissue.numbers.contains(&card.number);
        let entry = self.newest().and_then(|newest| newest.cards.get(&card.number));
        if let Some(entry) = entry.filter(|entry| !again && prints_the_same(&entry.texts, &texts)) {
            return CardIssue { status: card.status, ..entry.clone() };
        }
        let mut texts = texts;
        if again {
            texts.push(reason(reissue.because));
        }
        let highest = self.editions.iter().filter_map(|edition| edition.cards.get(&card.number));
        CardIssue {
            issue: highest.map(|card| card.issue).max().unwrap_or(0) + 1,
            since: edition.to_owned(),
            status: card.status,
            superseded_by: None,
            check_code: code(&texts),
            texts: Arc::from(texts),
        }
    }
}

/// What a card prints, as an edition holds it.
pub(super) fn issued_texts(card: &CardFacts) -> Vec<IssuedText> {
    card.printed().into_iter().map(issued).collect()
}

fn issued(printed: PrintedText) -> IssuedText {
    IssuedText { grade: printed.grade(), name: printed.name, text: printed.text, about: printed.about }
}

fn reason(because: &str) -> IssuedText {
    IssuedText {
        grade: Grade::Safety,
        name: REISSUED.to_owned(),
        text: because.to_owned(),
        about: Vec::new(),
    }
}

/// Whether an issue prints these texts, but for the reason of its reissue.
pub(super) fn prints_the_same(issue: &[IssuedText], texts: &[IssuedText]) -> bool {
    let own: Vec<&IssuedText> = issue.iter().filter(|text| text.name != REISSUED).collect();
    let same = |(one, other): (&&IssuedText, &IssuedText)| one.name == other.name && one.text == other.text;
    own.len() == texts.len() && own.iter().zip(texts).all(same)
}

fn code(texts: &[IssuedText]) -> String {
    let printed: Vec<PrintedText> =
        texts.iter().map(|text| PrintedText::new(text.name.as_str(), text.text.as_str())).collect();
    CheckCode::of(&printed).as_str().to_owned()
}

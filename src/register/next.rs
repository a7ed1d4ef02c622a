//! The present state as it would stand in the next edition.

use super::{REISSUED, Register, State};
use crate::catalogue::{CardIssue, Catalogue, Grade, IssuedText};
use crate::facts::{CardFacts, CheckCode, PrintedText};
use rayon::prelude::*;
use std::collections::BTreeMap;
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
        let newest = self.newest().into_iter().flat_map(|newest| &newest.cards);
        let open = self.not_known_now(catalogue, facts);
        let kept = newest.filter(|(number, _)| open.contains(number));
        next.extend(kept.map(|(number, card)| (number.clone(), card.clone())));
        next
    }

    /// The cards of the newest edition of which nobody knows what they print now, in the order of their numbers: while
    /// records can't be read, those that have no facts, those that speak of what is not there, and those of which a text
    /// has changed that hangs on other records. They are not gone.
    #[must_use]
    pub fn not_known_now<'f>(
        &self,
        catalogue: &Catalogue,
        facts: impl IntoIterator<Item = &'f CardFacts>,
    ) -> Vec<String> {
        let Some(newest) = self.newest().filter(|_| catalogue.gaps.deciding > 0) else { return Vec::new() };
        let present: BTreeMap<&str, &CardFacts> =
            facts.into_iter().map(|card| (card.number.as_str(), card)).collect();
        let is_there =
            |number: &String| catalogue.parts.contains_key(number) || catalogue.fittings.contains_key(number);
        let is_open = |(number, card): &(&String, &CardIssue)| {
            let mut about = card.texts.iter().flat_map(|text| &text.about);
            let now = present.get(number.as_str());
            now.is_none_or(|now| hanging(&issued_texts(now)) != hanging(&card.texts)) || !about.all(is_there)
        };
        newest.cards.iter().filter(is_open).map(|(number, _)| number.clone()).collect()
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

/// Texts that a card has because of records which it does not name.
fn hanging(texts: &[IssuedText]) -> Vec<(&str, &str)> {
    const NAMES: [&str; 5] = ["looks like", "more wrong parts", "more wrong kits", "body card", "supersedes"];
    let of_others = texts.iter().filter(|text| NAMES.contains(&text.name.as_str()));
    of_others.map(|text| (text.name.as_str(), text.text.as_str())).collect()
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

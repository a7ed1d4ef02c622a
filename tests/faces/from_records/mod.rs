//! What cards must print, found a second way: from the records as they are written and the answer of `mixups`, not from
//! the facts that cards are filled with.

mod bodies;
mod conductors;
mod fittings;
mod records;
mod words;
mod wrong_parts;

pub use records::Records;

use super::made;
use super::printed::{CATALOGUES, of_every_size};
use super::said::Said;
use bodies::Body;
use fittingcards::cards::Card;
use std::collections::{BTreeMap, BTreeSet};

/// Where a text must stand.
#[derive(Debug, Clone, Copy)]
pub enum On {
    Front,
    Back,
    Either,
}

/// A text that a card must print; none where it is empty.
#[derive(Debug)]
pub struct Needed {
    what: &'static str,
    text: String,
    on: On,
    /// What the text must stand close behind; anywhere where that is empty.
    behind: String,
}

impl Needed {
    pub fn new(what: &'static str, on: On, text: impl Into<String>) -> Self {
        Self { what, text: text.into(), on, behind: String::new() }
    }

    pub fn behind(self, head: impl Into<String>) -> Self {
        Self { behind: head.into(), ..self }
    }

    fn is_on(&self, said: &[Said; 3]) -> bool {
        let said = &said[self.on as usize];
        match self.behind.as_str() {
            "" => self.text.is_empty() || said.has(&self.text),
            head => self.text.is_empty() || said.has_behind(head, &self.text),
        }
    }
}

#[test]
fn every_card_prints_what_its_records_and_mix_ups_say_in_every_size() {
    let records: BTreeMap<&str, Records> =
        CATALOGUES.into_iter().map(|name| (name, Records::of(&made::world(&made::folder(name))))).collect();
    let (mut all, mut tables) = (Vec::new(), BTreeSet::new());
    of_every_size(|catalogue, size, made, card| {
        tables.extend(bodies::in_words(card).map(|in_words| (size.starts_with("A6"), in_words)));
        let lost = lost(&records[catalogue], card, size.starts_with("ID-1"));
        assert!(!made.facts.is_empty(), "{catalogue} {size}");
        all.extend(lost.into_iter().map(|text| format!("{catalogue} {size} {}: {text}", card.number)));
    });
    assert!(all.is_empty(), "{} texts are lost:\n{}", all.len(), all.join("\n"));
    // A6 has room for words.
    assert!(tables.contains(&(true, true)) && tables.contains(&(false, false)), "{tables:?}");
}

/// What a card should print by its records and does not; `small` is the size that carries less.
pub fn lost(records: &Records, card: &Card, small: bool) -> Vec<String> {
    let said = [Said::on(&[&card.front]), Said::on(&[&card.back]), Said::on(&[&card.front, &card.back])];
    let (needed, cells) = if records.fittings.contains_key(&card.number) {
        (fittings::needed(records, &card.number, small), Vec::new())
    } else {
        let body = Body::of(records, &card.number);
        (body.needed(), body.wrong_cells(card))
    };
    let lost = needed.into_iter().filter(|needed| !needed.is_on(&said));
    let named = |needed: Needed| {
        let Needed { what, text, behind, .. } = needed;
        if behind.is_empty() {
            format!("{what} “{text}”")
        } else {
            format!("{what} “{text}” behind “{behind}”")
        }
    };
    lost.map(named).chain(cells).collect()
}

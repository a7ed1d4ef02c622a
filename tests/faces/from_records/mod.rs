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
use std::collections::BTreeMap;

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
}

impl Needed {
    pub fn new(what: &'static str, on: On, text: impl Into<String>) -> Self {
        Self { what, text: text.into(), on }
    }
}

#[test]
fn every_card_prints_what_its_records_and_mix_ups_say_in_every_size() {
    let records: BTreeMap<&str, Records> =
        CATALOGUES.into_iter().map(|name| (name, Records::of(&made::world(&made::folder(name))))).collect();
    let mut all = Vec::new();
    of_every_size(|catalogue, size, made, card| {
        let lost = lost(&records[catalogue], card, size.starts_with("ID-1"));
        assert!(!made.facts.is_empty(), "{catalogue} {size}");
        all.extend(lost.into_iter().map(|text| format!("{catalogue} {size} {}: {text}", card.number)));
    });
    assert!(all.is_empty(), "{} texts are lost:\n{}", all.len(), all.join("\n"));
}

/// What a card should print by its records and does not; `small` is the size that carries less.
pub fn lost(records: &Records, card: &Card, small: bool) -> Vec<String> {
    let said = [Said::on(&[&card.front]), Said::on(&[&card.back]), Said::on(&[&card.front, &card.back])];
    let (needed, cells) = if records.fittings.contains_key(&card.number) {
        (fittings::needed(records, &card.number, small), Vec::new())
    } else {
        let body = Body::of(records, &card.number);
        (body.needed(small), body.wrong_cells(card))
    };
    let lost = needed
        .into_iter()
        .filter(|needed| !needed.text.is_empty() && !said[needed.on as usize].has(&needed.text));
    lost.map(|needed| format!("{} “{}”", needed.what, needed.text)).chain(cells).collect()
}

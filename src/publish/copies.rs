//! Copies: cards in the quantities of their holders, each with its number.

use super::counted::Counted;
use super::made::Making;
use super::options::{RenderError, Stage};
use crate::cards;
use crate::catalogue::Holder;
use crate::diagnostics::Findings;
use crate::facts::CardFacts;
use crate::register::copies_of;
use crate::sheets::{PrintKind, SheetFile};
use std::collections::BTreeMap;

/// A numbered copy of a card.
#[derive(Debug, Clone)]
pub(super) struct Copy<'a> {
    pub(super) facts: &'a CardFacts,
    /// Whose it is and which, in words; no part of the check code.
    pub(super) words: String,
}

impl Copy<'_> {
    /// How much room its number takes, in letters.
    fn room(&self) -> usize {
        self.words.chars().count()
    }
}

/// All copies that a holder gets of these cards; none of what nobody may use any more.
pub(super) fn of_holder<'a>(holder: &Holder, cards: &[&'a CardFacts]) -> Vec<Copy<'a>> {
    let in_use = cards.iter().filter(|card| !card.status.is_out_of_use());
    in_use.flat_map(|card| numbered(card, holder, copies_of(&holder.copies, &card.number))).collect()
}

/// So many copies of a card; they are the last of all that the holder has of it.
pub(super) fn numbered<'a>(
    card: &'a CardFacts,
    holder: &Holder,
    copies: u32,
) -> impl Iterator<Item = Copy<'a>> + use<'a> {
    let all = copies_of(&holder.copies, &card.number).max(copies);
    let id = holder.id.clone();
    (all - copies + 1..=all)
        .map(move |number| Copy { facts: card, words: format!("copy {number}/{all} {id}") })
}

/// Each card as it is handed out: as the copy whose number takes most room, or with no number where nobody holds it.
pub(super) fn as_handed_out<'a>(
    holders: impl Iterator<Item = &'a Holder> + Clone,
    cards: &[&'a CardFacts],
) -> Vec<Copy<'a>> {
    let widest = |card: &'a CardFacts| {
        let last = holders.clone().filter_map(move |holder| {
            let copies = copies_of(&holder.copies, &card.number);
            numbered(card, holder, copies).last()
        });
        last.max_by_key(Copy::room).unwrap_or(Copy { facts: card, words: String::new() })
    };
    cards.iter().map(|card| widest(card)).collect()
}

/// Of these copies, of each card the one whose number takes most room.
pub(super) fn widest(copies: Vec<Copy<'_>>) -> Vec<Copy<'_>> {
    let mut widest: BTreeMap<&str, Copy<'_>> = BTreeMap::new();
    for copy in copies {
        let number = copy.facts.number.as_str();
        if widest.get(number).is_none_or(|other| other.room() < copy.room()) {
            widest.insert(number, copy);
        }
    }
    widest.into_values().collect()
}

impl Making<'_> {
    /// Makes a file of sheets of copies at a path of the output; nothing where there are no copies.
    pub(super) fn copies(&self, path: &str, copies: &[Copy<'_>]) -> Result<Findings, RenderError> {
        if copies.is_empty() {
            return Ok(Findings::new());
        }
        let counted = Counted::new(self.progress, Stage::Cards, copies.len());
        let file = SheetFile {
            kind: PrintKind::Cards,
            name: path.to_owned(),
            records: 0..copies.len(),
            number: 1,
            of: 1,
        };
        let make = |copy: &Copy<'_>| {
            let made =
                self.clock.drawing(|| cards::make_copy(self.prepared.cards(), copy.facts, &copy.words));
            self.stop_for(&made.1);
            counted.one_more();
            Ok(made)
        };
        self.with_sheets(&file, copies, &make)
    }
}

//! What everything for the training cell is made from.

use crate::cards;
use crate::catalogue::{Catalogue, Fitting, Settings, Status, Training};
use crate::facts::{CardFacts, Content, FittingFacts};
use crate::register::Standing;
use crate::units::Numerals;
use std::collections::BTreeMap;
use std::sync::Arc;

/// What everything for the training cell is made from.
#[derive(Debug, Clone, Copy)]
pub struct Input<'a> {
    /// Records, mix-ups, editions, layouts and fonts.
    pub cards: cards::Input<'a>,
    /// What each card prints, by its number.
    pub facts: &'a BTreeMap<String, CardFacts>,
    /// What the catalogue chooses, or what holds where it is silent.
    pub training: &'a Training,
}

impl<'a> Input<'a> {
    pub(super) fn catalogue(&self) -> &'a Catalogue {
        self.cards.catalogue
    }

    pub(super) fn settings(&self) -> &'a Settings {
        &self.cards.catalogue.settings
    }

    pub(super) fn numerals(&self) -> Numerals {
        Numerals::new(self.settings().decimal_mark)
    }

    /// Where the card of this number stands; a draft where there is none.
    pub(super) fn standing(&self, number: &str) -> Standing {
        self.facts.get(number).map_or(Standing::Draft, |card| self.cards.register.standing(card))
    }

    /// Whether a card prints what no edition on the register has.
    pub(super) fn has_drafts(&self) -> bool {
        self.facts.values().any(|card| self.cards.register.standing(card) == Standing::Draft)
    }

    /// The fittings that may be built, with what their cards print, in the order of their numbers.
    pub(super) fn built(&self) -> impl Iterator<Item = (&'a Arc<Fitting>, &'a CardFacts, &'a FittingFacts)> {
        let facts = self.facts;
        let current = self.catalogue().fittings.values().filter(|fitting| fitting.status == Status::Current);
        current.filter_map(move |fitting| {
            let card = facts.get(&fitting.number)?;
            match &card.content {
                Content::Fitting(facts) => Some((fitting, card, &**facts)),
                Content::Body(_) => None,
            }
        })
    }
}

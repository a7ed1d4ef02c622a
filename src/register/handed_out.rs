//! What editions handed out: the copies of each issue of a card that each of them had printed for each holder.

use crate::catalogue::Edition;
use crate::records::HolderThenRecord;
use std::collections::BTreeMap;
use std::sync::Arc;

/// What some editions handed out.
pub(super) struct HandedOut<'a> {
    editions: &'a [Arc<Edition>],
    /// Of each edition, whether its holders had the same copies by the edition before.
    as_before: Vec<bool>,
    /// The name of each holder by the newest of them that holds it, by id.
    names: BTreeMap<&'a str, &'a str>,
}

impl<'a> HandedOut<'a> {
    pub(super) fn by(editions: &'a [Arc<Edition>]) -> Self {
        let holders = editions.iter().flat_map(|edition| &edition.holders);
        let same = |pair: &[Arc<Edition>]| pair[0].holders == pair[1].holders;
        Self {
            editions,
            as_before: std::iter::once(false).chain(editions.windows(2).map(same)).collect(),
            names: holders.map(|holder| (&*holder.id, &*holder.name)).collect(),
        }
    }

    /// The name of a holder.
    pub(super) fn name(&self, holder: &str) -> &'a str {
        self.names.get(holder).copied().unwrap_or_default()
    }

    /// The copies of each issue of a card, by the holder's id: all that its holder has when it is new, and each time that a
    /// holder has more, those that are more. Whoever gives some back and gets others later has had both.
    pub(super) fn of_card(&self, number: &str) -> BTreeMap<&'a str, BTreeMap<u32, u32>> {
        let mut handed_out: BTreeMap<&str, BTreeMap<u32, u32>> = BTreeMap::new();
        let (mut counted, mut had): (_, &[HolderThenRecord]) = (None, &[]);
        for (edition, as_before) in self.editions.iter().zip(&self.as_before) {
            let card = edition.cards.get(number).filter(|card| !card.status.is_out_of_use());
            let before = std::mem::replace(&mut counted, card.map(|card| card.issue));
            let earlier = std::mem::replace(&mut had, &edition.holders);
            let Some(card) = card.filter(|_| !(*as_before && before == counted)) else { continue };
            for holder in &edition.holders {
                let had = earlier.iter().find(|had| had.id == holder.id && before == counted);
                let all = handed_out.entry(&holder.id).or_default().entry(card.issue).or_insert(0);
                *all += more_copies(holder, had, number);
            }
        }
        handed_out
    }
}

/// How many copies of a card a holder gets beyond those that it had of the same issue.
pub(super) fn more_copies(holder: &HolderThenRecord, had: Option<&HolderThenRecord>, number: &str) -> u32 {
    let had = had.map_or(0, |had| copies_of(&had.copies, number));
    copies_of(&holder.copies, number).saturating_sub(had)
}

/// How many copies of a card a holder gets.
#[must_use]
pub fn copies_of(copies: &BTreeMap<String, u32>, number: &str) -> u32 {
    copies.get(number).or_else(|| copies.get("*")).copied().unwrap_or(0)
}

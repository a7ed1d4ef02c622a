//! Copies: who gets which, and who has which that are no longer good.

use super::handed_out::{HandedOut, copies_of, more_copies};
use super::{Register, State};
use crate::catalogue::{CardIssue, Catalogue, Edition};
use crate::records::HolderThenRecord;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// Copies of a card.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CopiesOfCard {
    /// The card's number.
    pub number: String,
    /// How many copies.
    pub copies: u32,
}

/// Copies of an issue of a card.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct CopiesOfIssue {
    /// The card's number.
    pub number: String,
    /// The issue.
    pub issue: u32,
    /// How many copies.
    pub copies: u32,
}

/// What a holder gets and gives back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HolderLists {
    /// The holder's id.
    pub id: String,
    /// The holder's name.
    pub name: String,
    /// Copies to be printed and handed out.
    pub print: Vec<CopiesOfCard>,
    /// Copies to be called in: of issues that are no longer good, as far as nobody has accounted for them.
    pub call_in: Vec<CopiesOfIssue>,
}

/// Copies of an issue that a holder has.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct HolderCopies {
    /// The holder's id.
    pub holder: String,
    /// The holder's name.
    pub name: String,
    /// The copies.
    pub copies: CopiesOfIssue,
}

/// Copies of issues that are no longer good by the newest edition and that nobody has accounted for, by holder and card;
/// without those that stay good until a day that has not come by the catalogue's date.
#[must_use]
pub fn still_out(register: &Register, catalogue: &Catalogue) -> Vec<HolderCopies> {
    let Some(newest) = register.newest() else { return Vec::new() };
    let today = catalogue.settings.date.map_or(newest.date, |date| date.max(newest.date));
    let stays = |copies: &CopiesOfIssue| {
        register.good_until(&copies.number, copies.issue).is_some_and(|day| day > today)
    };
    let out = out(register.editions(), &newest.cards, catalogue);
    let all = out.into_iter().flat_map(|((holder, name), copies)| {
        copies.into_iter().filter(|copies| !stays(copies)).map(move |copies| HolderCopies {
            holder: holder.clone(),
            name: name.clone(),
            copies,
        })
    });
    all.collect()
}

/// What each holder has by its record of cards that are good by the newest edition, beyond what that edition gives it.
#[must_use]
pub fn not_issued(register: &Register, catalogue: &Catalogue) -> Vec<HolderCopies> {
    let Some(newest) = register.newest() else { return Vec::new() };
    let good: Vec<_> = newest.cards.iter().filter(|(_, card)| !card.status.is_out_of_use()).collect();
    let mut more = Vec::new();
    for holder in catalogue.holders.values() {
        let given = newest.holders.iter().find(|given| given.id == holder.id);
        for (number, card) in &good {
            let given = given.map_or(0, |given| copies_of(&given.copies, number));
            let copies = copies_of(&holder.copies, number).saturating_sub(given);
            more.extend((copies > 0).then(|| HolderCopies {
                holder: holder.id.clone(),
                name: holder.name.clone(),
                copies: CopiesOfIssue { number: (*number).clone(), issue: card.issue, copies },
            }));
        }
    }
    more
}

/// The copies of an issue that editions handed out to a holder.
#[must_use]
pub fn copies_of_issue(register: &Register, holder: &str, number: &str, issue: u32) -> u32 {
    let handed_out = HandedOut::by(register.editions()).of_card(number);
    handed_out.get(holder).and_then(|issues| issues.get(&issue)).copied().unwrap_or(0)
}

/// What each holder gets and gives back between two states, in the order of the holders' ids; without those who do
/// neither.
pub(super) fn lists(
    register: &Register,
    catalogue: &Catalogue,
    was: &State,
    is: &State,
    with: Option<usize>,
) -> Vec<HolderLists> {
    let editions = register.editions();
    let upto = with.map_or(editions, |nth| &editions[..nth]);
    let mut call_in = out(upto, is, catalogue);
    let earlier = upto.last().map(|edition| edition.holders.as_slice()).unwrap_or_default();
    let holders = match with {
        Some(nth) => editions[nth].holders.clone(),
        None => holders_now(catalogue),
    };
    let mut lists = Vec::new();
    for holder in holders {
        let before = earlier.iter().find(|before| before.id == holder.id);
        let print = to_print(&holder, before, was, is);
        let key = (holder.id.clone(), holder.name.clone());
        let back: Vec<_> = call_in.keys().filter(|(id, _)| *id == key.0).cloned().collect();
        let call_in = back.iter().filter_map(|key| call_in.remove(key)).flatten().collect();
        lists.push(HolderLists { id: key.0, name: key.1, print, call_in });
    }
    // A holder who is no longer given copies may still have some.
    let left = call_in.into_iter();
    lists.extend(left.map(|((id, name), call_in)| HolderLists { id, name, print: Vec::new(), call_in }));
    lists.retain(|list| !(list.print.is_empty() && list.call_in.is_empty()));
    lists.sort_by(|one, other| one.id.cmp(&other.id));
    lists
}

/// The holders of the present state, as an edition holds them.
pub(super) fn holders_now(catalogue: &Catalogue) -> Vec<HolderThenRecord> {
    let holders = catalogue.holders.values();
    let then = holders.map(|holder| HolderThenRecord {
        id: holder.id.clone(),
        name: holder.name.clone(),
        copies: holder.copies.clone(),
    });
    then.collect()
}

/// All copies of a card that is new or prints something else; of one that prints the same, those that are more.
fn to_print(
    holder: &HolderThenRecord,
    before: Option<&HolderThenRecord>,
    was: &State,
    is: &State,
) -> Vec<CopiesOfCard> {
    let copies = |(number, card): (&String, &CardIssue)| {
        let same = was.get(number).is_some_and(|was| was.issue == card.issue);
        let copies = more_copies(holder, before.filter(|_| same), number);
        (copies > 0).then(|| CopiesOfCard { number: number.clone(), copies })
    };
    is.iter().filter(|(_, card)| !card.status.is_out_of_use()).filter_map(copies).collect()
}

/// A holder's id and name.
type Holder = (String, String);

/// What was handed out by these editions, is not good in a state any more, and is not accounted for.
fn out(editions: &[Arc<Edition>], is: &State, catalogue: &Catalogue) -> BTreeMap<Holder, Vec<CopiesOfIssue>> {
    let mut out: BTreeMap<Holder, Vec<CopiesOfIssue>> = BTreeMap::new();
    let handed_out = HandedOut::by(editions);
    for number in no_longer_good(editions, is) {
        let good = is.get(number).filter(|card| !card.status.is_out_of_use()).map(|card| card.issue);
        for (holder, issues) in handed_out.of_card(number) {
            // Where records are left out, a holder may be among them, and with it its receipts.
            if catalogue.gaps.all() > 0 && !catalogue.holders.contains_key(holder) {
                continue;
            }
            for (issue, copies) in issues.into_iter().filter(|(issue, _)| Some(*issue) != good) {
                let copies = copies.saturating_sub(accounted_for(catalogue, holder, number, issue));
                if copies > 0 {
                    let key = (holder.to_owned(), handed_out.name(holder).to_owned());
                    let list = out.entry(key).or_default();
                    list.push(CopiesOfIssue { number: number.to_owned(), issue, copies });
                }
            }
        }
    }
    out
}

/// Cards of which an issue was handed out that is not good in a state any more.
fn no_longer_good<'a>(editions: &'a [Arc<Edition>], is: &State) -> BTreeSet<&'a str> {
    let mut numbers = BTreeSet::new();
    for edition in editions {
        for (number, card) in &edition.cards {
            let good =
                is.get(number).is_some_and(|now| now.issue == card.issue && !now.status.is_out_of_use());
            if !good && !card.status.is_out_of_use() {
                numbers.insert(number.as_str());
            }
        }
    }
    numbers
}

fn accounted_for(catalogue: &Catalogue, holder: &str, number: &str, issue: u32) -> u32 {
    let receipts = catalogue.holders.get(holder).into_iter().flat_map(|holder| &holder.receipts);
    receipts
        .filter(|receipt| receipt.card == number && receipt.issue == issue)
        .map(|receipt| receipt.copies)
        .sum()
}

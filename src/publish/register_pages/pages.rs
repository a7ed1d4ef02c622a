//! The pages: what changed, the approval sheet, the list of current cards, a list for each holder.

use super::{Page, Told, lists, named, page};
use crate::catalogue::{CardIssue, Grade, Receipt};
use crate::register::{self, CardChange, Comparison, CopiesOfIssue, explained_by, text_of};
use serde_json::{Value, json};
use std::collections::BTreeMap;

impl Told<'_> {
    pub(super) fn what_changed(&self) -> Page {
        let stages: Vec<Value> = self.stages.iter().map(|stage| self.stage(stage)).collect();
        page("what-changed", "What changed", json!({ "stages": stages }))
    }

    fn stage(&self, stage: &Comparison) -> Value {
        let edition = stage.with.as_deref().and_then(|name| self.prepared.register.edition(name));
        let heading = edition.map_or_else(
            || "Waits to be issued".to_owned(),
            |edition| format!("Issued as {}", named(edition)),
        );
        let since = stage.since.as_ref().map(|since| format!(", since edition {since}")).unwrap_or_default();
        let lists = lists(stage).into_iter().filter(|(_, cards)| !cards.is_empty()).map(|(name, cards)| {
            json!({ "name": name, "cards": cards.iter().map(|card| self.card(card)).collect::<Vec<_>>() })
        });
        json!({
            "heading": format!("{heading}{since}"), "because": edition.map_or("", |edition| &edition.because),
            "lists": lists.collect::<Vec<_>>(),
        })
    }

    fn card(&self, card: &CardChange) -> Value {
        let groups = explained_by(card, &self.prepared.catalogue).into_iter();
        let groups = groups.map(|(by, changes)| json!({ "by": by, "changes": changes }));
        json!({
            "number": card.number, "title": card.title, "issue": issue(card), "unexplained": !card.explained,
            "groups": groups.collect::<Vec<_>>(),
        })
    }

    pub(super) fn approval(&self) -> Page {
        let stage = self.stages.first();
        let edition = stage.and_then(|stage| self.prepared.register.edition(stage.with.as_deref()?));
        let because = edition.map_or("", |edition| &edition.because);
        let cards = stage.into_iter().flat_map(Comparison::changed).map(|card| {
            let notices = card.notices().join(", ");
            let explained = match (card.explained, notices.is_empty()) {
                (false, _) => "UNEXPLAINED".to_owned(),
                (true, true)
                    if card.grade() == Grade::Safety && card.issue.is_some() && !because.is_empty() =>
                {
                    format!("reason given: {because}")
                }
                (true, true) => "no notice needed".to_owned(),
                (true, false) => notices,
            };
            json!({
                "number": card.number, "title": card.title, "issue": issue(card),
                "grade": card.grade().word(), "explained": explained,
            })
        });
        let what = match edition {
            Some(edition) => format!("{}, as issued", named(edition)),
            None => "What waits to be issued. After it is signed, run fittingcards issue.".to_owned(),
        };
        let values = json!({
            "what": what, "cards": cards.collect::<Vec<_>>(),
            "checked_by": edition.map_or("", |edition| &edition.checked_by),
            "approved_by": edition.map_or("", |edition| &edition.approved_by),
        });
        page("approval", "Approval sheet", values)
    }

    pub(super) fn current_cards(&self) -> Page {
        page("current-cards", "List of current cards", json!({ "cards": self.current() }))
    }

    /// Number, title, issue, check code, edition and status of every card on the register; of one that waits for its day,
    /// the issue too that holds until then. A hold or withdrawal that waits to be issued and a record that is gone count
    /// already, as they do where somebody looks up whether a card is current.
    pub(super) fn current(&self) -> Vec<Value> {
        let issued =
            register::issued_cards(&self.prepared.register, &self.prepared.catalogue, &self.prepared.facts);
        let barred: BTreeMap<(&str, u32), &str> = issued
            .iter()
            .filter(|card| !card.is_good)
            .map(|card| ((&*card.number, card.issue), &*card.words))
            .collect();
        let register = &self.prepared.register;
        let line = |number: &str, card: &CardIssue, when: String| {
            let status = match barred.get(&(number, card.issue)) {
                Some(words) if when.is_empty() => (*words).to_owned(),
                _ => format!("{}{when}", card.status.word()),
            };
            json!({
                "number": number, "title": text_of(card, "name"), "issue": card.issue.to_string(),
                "code": card.check_code, "edition": card.since,
                "status": status,
            })
        };
        let cards = self.edition().into_iter().flat_map(|edition| &edition.cards);
        let lines = cards.flat_map(|(number, card)| {
            let is_good = !barred.contains_key(&(number.as_str(), card.issue));
            let waiting = register.waiting(number).filter(|_| is_good);
            let earlier = waiting.and_then(|waiting| {
                let (issue, _) = waiting.until_then?;
                let (_, card) = register.issue(number, issue)?;
                Some(line(number, card, format!(" until {}", waiting.from)))
            });
            let when = waiting.map_or_else(String::new, |waiting| format!(" from {} on", waiting.from));
            earlier.into_iter().chain([line(number, card, when)])
        });
        lines.collect()
    }

    /// A list for each holder that gets or gives back anything, to be signed.
    pub(super) fn call_in(&self) -> Vec<Page> {
        let lists = self.newest.iter().flat_map(|newest| &newest.holders);
        let page_of = |lists: &register::HolderLists| {
            let print = lists.print.iter().map(|line| {
                json!({
                    "number": line.number, "title": self.title(&line.number), "copies": line.copies,
                    "day": self.holds_from(&line.number), "issue": self.newest_issue(&line.number),
                    "exchanged": self.is_exchanged(lists, &line.number),
                })
            });
            let call_in = lists.call_in.iter().map(|line| {
                json!({
                    "number": line.number, "title": self.title(&line.number), "issue": line.issue,
                    "copies": line.copies, "day": self.good_until(line),
                })
            });
            let values = json!({
                "holder": { "id": lists.id, "name": lists.name },
                "print": print.collect::<Vec<_>>(), "call_in": call_in.collect::<Vec<_>>(),
            });
            page(&format!("call-in-{}", lists.id), format!("Call-in list, {}", lists.name), values)
        };
        lists.map(page_of).collect()
    }

    fn newest_issue(&self, number: &str) -> Option<u32> {
        self.prepared.register.issues(number).last().map(|(_, card)| card.issue)
    }

    /// Whether a holder's receipts tell of an older issue of a card, and none of it is out any more: then the new copies
    /// were most likely handed out as the old ones came back.
    fn is_exchanged(&self, lists: &register::HolderLists, number: &str) -> bool {
        let newest = self.newest_issue(number);
        let receipts = self.prepared.catalogue.holders.get(&lists.id).map(|holder| &holder.receipts);
        let is_older = |receipt: &&Receipt| receipt.card == number && Some(receipt.issue) < newest;
        let is_accounted_for = receipts.into_iter().flatten().any(|receipt| is_older(&receipt));
        is_accounted_for && lists.call_in.iter().all(|line| line.number != number)
    }

    /// The day from which the newest issue of a card holds; empty where it holds at once.
    fn holds_from(&self, number: &str) -> String {
        let waiting = self.prepared.register.waiting(number);
        waiting.map_or_else(String::new, |waiting| waiting.from.to_string())
    }

    /// The day on which copies are to be handed in, because they are good until then; empty where that is now.
    pub(super) fn good_until(&self, copies: &CopiesOfIssue) -> String {
        let day = self.prepared.register.good_until(&copies.number, copies.issue);
        day.map_or_else(String::new, |day| day.to_string())
    }
}

fn issue(card: &CardChange) -> String {
    match (card.issue, card.becomes) {
        (Some(was), Some(is)) => format!("{was} → {is}"),
        (None, Some(is)) => format!("{is}, new"),
        (Some(was), None) => format!("{was}, gone"),
        (None, None) => String::new(),
    }
}

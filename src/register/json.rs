//! A comparison for other programs.

use super::{CardChange, Change, Comparison, HolderLists};
use serde_json::{Map, Value, json};

/// A comparison as one object: `since`, `with` where two editions are compared, `print_again`, `new`, `withdraw`,
/// `unchanged`, `not_compared`, `holders`, `remarks`. What does not apply is absent.
#[must_use]
pub fn comparison_json(comparison: &Comparison) -> Value {
    let list = |cards: &[CardChange]| cards.iter().map(card).collect::<Vec<_>>();
    let mut object = json!({
        "since": comparison.since,
        "print_again": list(&comparison.print_again), "new": list(&comparison.new),
        "withdraw": list(&comparison.withdraw), "unchanged": comparison.unchanged,
        "holders": comparison.holders.iter().map(holder).collect::<Vec<_>>(),
    });
    if let Some(with) = &comparison.with {
        object["with"] = with.as_str().into();
    }
    if !comparison.not_compared.is_empty() {
        object["not_compared"] = comparison.not_compared.as_slice().into();
    }
    if let Some(stop) = &comparison.incomplete {
        object["remarks"] = json!([stop]);
    }
    object
}

fn card(card: &CardChange) -> Value {
    let mut object = Map::new();
    object.insert("number".into(), card.number.as_str().into());
    object.insert("title".into(), card.title.as_str().into());
    if let Some(issue) = card.issue {
        object.insert("issue".into(), issue.into());
    }
    if let Some(becomes) = card.becomes {
        object.insert("becomes".into(), becomes.into());
    }
    if !card.status_words.is_empty() {
        object.insert("status".into(), card.status_words.as_str().into());
    }
    object.insert("grade".into(), card.grade().word().into());
    object.insert("changes".into(), card.changes.iter().map(change).collect());
    object.insert("notices".into(), card.notices().into());
    object.insert("explained".into(), card.explained.into());
    object.into()
}

fn change(change: &Change) -> Value {
    json!({
        "what": change.what, "was": change.was, "is": change.is, "grade": change.grade.word(),
        "notices": change.notices,
    })
}

fn holder(lists: &HolderLists) -> Value {
    let print = lists.print.iter().map(|copies| json!({ "number": copies.number, "copies": copies.copies }));
    let call_in = lists
        .call_in
        .iter()
        .map(|copies| json!({ "number": copies.number, "issue": copies.issue, "copies": copies.copies }));
    json!({
        "id": lists.id, "name": lists.name,
        "print": print.collect::<Vec<_>>(), "call_in": call_in.collect::<Vec<_>>(),
    })
}

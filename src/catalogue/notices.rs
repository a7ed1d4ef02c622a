//! Notices and the holders of copies.

use super::check::{Check, origin};
use super::model::{Fitting, Holder, Notice, Part, Receipt, Role};
use super::quantities::{prose, text};
use super::record_index::RecordIndex;
use crate::records::{Document, HolderRecord, NoticeRecord, ReceiptRecord};
use std::collections::BTreeMap;

/// The notice that a document states, where it is sound.
pub(super) fn notice(document: &Document<NoticeRecord>, check: &Check<'_>) -> Option<Notice> {
    let record = document.record.as_ref().filter(|_| check.is_sound())?;
    Some(Notice {
        number: record.number.as_ref()?.value.0.clone(),
        date: record.date.as_ref()?.value.0,
        effective: record.effective.as_ref().map(|date| date.value.0),
        action_by: record.action_by.as_ref().map(|date| date.value.0),
        title: record.title.as_ref()?.value.0.clone(),
        reference: text(record.reference.as_ref()),
        summary: prose(record.summary.as_ref()),
        origin: origin(document),
    })
}

/// The holder that a document states, where it is sound: copies are of cards that exist.
pub(super) fn holder(
    document: &Document<HolderRecord>,
    fittings: &RecordIndex<Fitting>,
    parts: &RecordIndex<Part>,
    check: &mut Check<'_>,
) -> Option<Holder> {
    let record = document.record.as_ref()?;
    let mut copies = BTreeMap::new();
    for (number, count) in record.copies.iter().flat_map(|field| &field.value.0) {
        copies.insert(number.clone(), count.value.bare());
        let body = parts.sound.get(number).is_none_or(|part| part.role == Role::Body);
        if number == "*" || fittings.knows(number) || parts.knows(number) && body {
            continue;
        }
        let is_body = |near: &&str| parts.sound.get(*near).is_some_and(|part| part.role == Role::Body);
        let near = fittings.nearest(number).or_else(|| parts.nearest(number).filter(is_body));
        check.fault("unknown-card", count, format!("there is no card `{number}`"), |finding| match near {
            Some(near) => finding.help(format!("did you mean `{near}`?")),
            None => finding
                .help("cards have the number of a fitting or of a shared body; `\"*\"` is every other card"),
        });
    }
    if !check.is_sound() {
        return None;
    }
    let receipts = record.receipts.iter().flat_map(|field| &field.value).map(|field| receipt(&field.value));
    Some(Holder {
        id: record.id.as_ref()?.value.0.clone(),
        name: record.name.as_ref()?.value.0.clone(),
        copies,
        receipts: receipts.collect::<Option<_>>()?,
        origin: origin(document),
    })
}

fn receipt(record: &ReceiptRecord) -> Option<Receipt> {
    Some(Receipt {
        card: record.card.as_ref()?.value.0.clone(),
        issue: record.issue.as_ref()?.value.bare(),
        copies: record.copies.as_ref()?.value.bare(),
        what: record.what.as_ref()?.value,
        date: record.date.as_ref()?.value.0,
        by: record.by.as_ref()?.value.0.clone(),
    })
}

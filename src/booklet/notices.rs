//! A notice's page: what it says and which fittings it concerns.

use super::frame::Draft;
use super::input::Booklet;
use super::view::{body_link, fact, facts, fitting_link, fitting_links, note};
use crate::catalogue::Notice;
use crate::register::{Change, of_notice};
use serde_json::{Value, json};

pub(super) fn page(booklet: &Booklet<'_>, notice: &Notice) -> Draft {
    let date = |date: Option<jiff::civil::Date>| date.map_or_else(String::new, |date| date.to_string());
    let facts = facts([
        fact("Date", notice.date.to_string()),
        fact("In force from", date(notice.effective)),
        fact("To be done by", date(notice.action_by)),
        fact("Reference", notice.reference.as_str()),
    ]);
    let values = json!({
        "number": notice.number,
        "name": notice.title,
        "facts": facts,
        "summary": notice.summary,
        "fittings": fitting_links(booklet, booklet.uses.by_notice.get(&notice.number)),
        "changes": changes(booklet, notice),
        "note": note(booklet, &notice.number),
    });
    Draft { layout: "notice", title: format!("{} {}", notice.number, notice.title), kind: "Notice", values }
}

/// What it changed on the cards that are still there, edition by edition.
fn changes(booklet: &Booklet<'_>, notice: &Notice) -> Vec<Value> {
    let changes = of_notice(booklet.input.history, &notice.number).into_iter();
    let mut rows: Vec<Value> =
        changes.filter_map(|(card, change)| row(booklet, &card.number, change)).collect();
    spanned(&mut rows);
    rows
}

/// Has the first of the rows of one card say how many they are.
fn spanned(rows: &mut [Value]) {
    for of_card in rows.chunk_by_mut(|one, next| one["card"] == next["card"]) {
        of_card[0]["span"] = of_card.len().into();
    }
}

fn row(booklet: &Booklet<'_>, number: &str, change: &Change) -> Option<Value> {
    let catalogue = booklet.input.catalogue;
    let fitting = catalogue.fittings.get(number).map(|fitting| fitting_link(booklet, fitting));
    let link = fitting.or_else(|| catalogue.parts.get(number).map(|body| body_link(booklet, body)))?;
    Some(json!({ "card": link, "what": change.what, "was": change.was, "is": change.is, "span": null }))
}

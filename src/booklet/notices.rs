//! A notice's page: what it says and which fittings it concerns.

use super::frame::Draft;
use super::input::Booklet;
use super::view::{fact, facts, fitting_links, note};
use crate::catalogue::Notice;
use serde_json::json;

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
        "changes": [],
        "note": note(booklet, &notice.number),
    });
    Draft { layout: "notice", title: format!("{} {}", notice.number, notice.title), kind: "Notice", values }
}

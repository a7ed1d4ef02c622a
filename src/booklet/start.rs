//! The first page: what is in force, how to use it, fittings by duty and conductor, marks at a glance.

use super::frame::Draft;
use super::input::Booklet;
use super::long::MOST_LINES;
use super::view::{
    body_link, conductor_link, fact, facts, fitting_link, mark, optional_mark, part_link, sheet_links,
};
use super::{addresses, chapters, conductors};
use crate::catalogue::{Conductor, Duty, Fitting, Part};
use crate::facts::words;
use crate::notes::address;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::sync::Arc;

pub(super) fn page(booklet: &Booklet<'_>) -> Draft {
    let settings = &booklet.input.catalogue.settings;
    let in_force = facts([
        fact("Edition", settings.edition.as_str()),
        fact("Newest edition issued", newest_issued(booklet)),
        fact("Date", settings.date.map_or_else(String::new, |date| date.to_string())),
        fact("Answers for it", settings.owner.as_str()),
        fact("State", booklet.input.state),
    ]);
    let told_apart = booklet.shared_bodies().filter(|body| booklet.has_card(body));
    let values = json!({
        "in_force": in_force,
        "notices": notices(booklet),
        "chapters": chapters::links(booklet),
        "duties": duties(booklet),
        "bodies": short(told_apart.map(|body| body_link(booklet, body))),
        "marks": short(marks(booklet)),
        "numbers": { "href": booklet.link(&addresses::numbers()) },
        "sheets": sheet_links(booklet, booklet.input.sheets),
        "tag_sheets": sheet_links(booklet, booklet.input.tag_sheets),
        "training": settings.training.as_ref().and_then(|_| booklet.link_to_file("training", "index.html")),
        "look_alikes": { "href": booklet.link(&addresses::look_alikes()) },
        "hand": { "href": booklet.link(&addresses::hand()) },
        "current": { "href": booklet.link(&addresses::current()) },
        "closed": { "href": booklet.link(&addresses::closed()) },
    });
    Draft { layout: "start", title: "Start".to_owned(), kind: "Booklet", values }
}

/// The newest edition of the register, where the catalogue is of another.
fn newest_issued(booklet: &Booklet<'_>) -> String {
    let newest = booklet.input.register.newest();
    let other = newest.filter(|newest| newest.name != booklet.input.catalogue.settings.edition);
    other.map_or_else(String::new, |newest| format!("{} of {}", newest.name, newest.date))
}

/// A list, or nothing where it is too long for the first page.
fn short(lines: impl Iterator<Item = Value>) -> Vec<Value> {
    let first: Vec<Value> = lines.take(MOST_LINES + 1).collect();
    if first.len() > MOST_LINES { Vec::new() } else { first }
}

fn notices(booklet: &Booklet<'_>) -> Vec<Value> {
    let mut notices: Vec<_> = booklet.input.catalogue.notices.values().collect();
    notices.sort_by(|a, b| (b.date, &b.number).cmp(&(a.date, &a.number)));
    let date =
        |date: Option<jiff::civil::Date>| date.map_or("not stated".to_owned(), |date| date.to_string());
    let lines = notices.into_iter().map(|notice| {
        json!({
            "href": booklet.link(&address::notice(&notice.number)),
            "number": notice.number,
            "title": notice.title,
            "date": notice.date.to_string(),
            "effective": date(notice.effective),
            "action_by": date(notice.action_by),
        })
    });
    lines.collect()
}

fn duties(booklet: &Booklet<'_>) -> Vec<Value> {
    let mut duties: BTreeMap<Duty, Vec<&Arc<Conductor>>> = BTreeMap::new();
    for conductor in booklet.input.catalogue.conductors.values() {
        duties.entry(conductor.duty).or_default().push(conductor);
    }
    let of_conductor = if booklet.input.catalogue.fittings.len() > MOST_LINES { counted } else { lines };
    let tables = duties.into_iter().map(|(duty, conductors)| {
        let lines: Vec<Value> =
            conductors.into_iter().flat_map(|conductor| of_conductor(booklet, conductor)).collect();
        json!({ "name": words::duty(duty), "lines": lines })
    });
    tables.collect()
}

/// How many fittings there are for a conductor, with where they are.
fn counted(booklet: &Booklet<'_>, conductor: &Arc<Conductor>) -> Vec<Value> {
    let count = booklet.uses.by_conductor.get(&conductor.id).map_or(0, Vec::len);
    let link = conductor_link(booklet, conductor);
    let words = match count {
        0 => "no fitting".to_owned(),
        1 => "1 fitting".to_owned(),
        count => format!("{count} fittings"),
    };
    let build = conductors::build(booklet, conductor);
    vec![json!({ "span": 1, "conductor": link, "build": build, "fitting": null, "count": words })]
}

/// A line a fitting; the first of them carries the conductor.
fn lines(booklet: &Booklet<'_>, conductor: &Arc<Conductor>) -> Vec<Value> {
    let fittings = booklet.uses.by_conductor.get(&conductor.id).map_or(&[][..], Vec::as_slice);
    let mut lines: Vec<Value> = fittings.iter().map(|fitting| line(booklet, fitting)).collect();
    if lines.is_empty() {
        lines.push(json!({ "fitting": null, "stamp": "", "mark": null, "span": null, "count": "" }));
    }
    lines[0]["span"] = lines.len().into();
    lines[0]["conductor"] = conductor_link(booklet, conductor);
    lines[0]["build"] = conductors::build(booklet, conductor).into();
    lines
}

fn line(booklet: &Booklet<'_>, fitting: &Fitting) -> Value {
    let stamp = fitting.gripping().map(|item| item.part.stamp.as_str()).find(|stamp| !stamp.is_empty());
    json!({
        "fitting": fitting_link(booklet, fitting),
        "stamp": stamp.unwrap_or_default(),
        "mark": optional_mark(fitting.mark.as_ref()),
        "span": null,
    })
}

fn marks(booklet: &Booklet<'_>) -> impl Iterator<Item = Value> {
    let parts = booklet.input.catalogue.parts.values().filter(|part| part.role.grips());
    parts.filter_map(|part| marked(booklet, part))
}

fn marked(booklet: &Booklet<'_>, part: &Part) -> Option<Value> {
    let own = booklet.mark_of(part)?;
    let names: Vec<String> =
        booklet.uses.conductors_of(part).iter().map(|conductor| conductor.name.clone()).collect();
    Some(json!({
        "mark": mark(own),
        "stamp": part.stamp,
        "part": part_link(booklet, part),
        "conductors": names.join(", "),
    }))
}

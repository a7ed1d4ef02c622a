//! What *Find* looks through.

use super::entry::Entry;
use super::glossary::WORDS;
use super::input::Booklet;
use super::view::{body_tells, optional_mark, script_json, standing, status};
use super::{addresses, chapters, closed};
use crate::catalogue::{Fitting, Mark, Part};
use crate::facts::words;
use crate::notes::address::{self, Address};
use serde_json::{Value, json};
use std::collections::BTreeMap;

/// The index as a classic script that sets one global: rows of kind, number, name, address, stamp, status, other
/// words, the form of the status, the mark, the look-up, and the stamps of what grips in it. A
/// mark that several have stands in the first row that has it; the others hold the place of that row.
pub(super) fn script(booklet: &Booklet<'_>) -> String {
    let texts = texts(booklet);
    let entries = numbered(booklet).iter().chain(&texts);
    let mut marks: BTreeMap<String, usize> = BTreeMap::new();
    let rows = entries.enumerate().map(|(place, entry)| {
        let mark = match &entry.mark {
            Value::Null => Value::Null,
            mark => match *marks.entry(mark.to_string()).or_insert(place) {
                first if first == place => mark.clone(),
                first => first.into(),
            },
        };
        json!([
            entry.kind,
            entry.number,
            entry.name,
            entry.href,
            entry.stamp,
            entry.status,
            entry.words,
            entry.standing,
            mark,
            entry.asks,
            entry.holds,
        ])
    });
    let rows: Vec<Value> = rows.collect();
    let rows: Vec<String> = rows.iter().map(script_json).collect();
    format!("var bookletIndex = [\n{}\n];\n", rows.join(",\n"))
}

/// All records that have a number.
pub(super) fn numbered<'b>(booklet: &'b Booklet<'_>) -> &'b [Entry] {
    booklet.numbered.get_or_init(|| records(booklet))
}

fn records(booklet: &Booklet<'_>) -> Vec<Entry> {
    let catalogue = booklet.input.catalogue;
    let mut entries: Vec<Entry> = Vec::new();
    entries.extend(catalogue.fittings.values().map(|fitting| of_fitting(booklet, fitting)));
    entries.extend(catalogue.parts.values().map(|part| of_part(booklet, part)));
    entries.extend(catalogue.conductors.values().map(|conductor| {
        let href = booklet.link(&address::conductor(&conductor.id));
        Entry {
            number: conductor.id.clone(),
            words: [words::duty(conductor.duty), &conductor.material.name, &conductor.identity.drum_tag]
                .join(" "),
            ..Entry::new("Conductor", &conductor.name, href)
        }
    }));
    entries.extend(catalogue.notices.values().map(|notice| Entry {
        number: notice.number.clone(),
        words: format!("{} {}", notice.reference, notice.summary),
        ..Entry::new("Notice", &notice.title, booklet.link(&address::notice(&notice.number)))
    }));
    entries
}

fn of_fitting(booklet: &Booklet<'_>, fitting: &Fitting) -> Entry {
    let conductors: Vec<&str> = fitting.conductors.iter().map(|conductor| conductor.name.as_str()).collect();
    let stamps = fitting.gripping().map(|item| item.part.stamp.clone()).filter(|stamp| !stamp.is_empty());
    Entry {
        number: fitting.number.clone(),
        stamp: fitting.stamp.clone(),
        status: words::status(fitting.status, fitting.use_instead.as_deref()),
        standing: standing(fitting.status),
        words: [words::family(fitting.family), &conductors.join(" "), &mark_words(fitting.mark.as_ref())]
            .join(" "),
        mark: optional_mark(fitting.mark.as_ref()),
        holds: stamps.collect(),
        ..Entry::new("Fitting", &fitting.name, booklet.link(&address::fitting(&fitting.number)))
    }
}

fn of_part(booklet: &Booklet<'_>, part: &Part) -> Entry {
    let mark = gripping_mark(booklet, part);
    Entry {
        number: part.number.clone(),
        stamp: part.stamp.clone(),
        status: status(part.status),
        standing: standing(part.status),
        words: format!("part {} {} {}", part.material.name, part.drawing, mark_words(mark)),
        mark: optional_mark(mark),
        asks: closed::address(booklet, part).map_or(
            Value::Null,
            |to| json!({ "tool": "closed", "href": booklet.link(&to), "body": part.number }),
        ),
        ..Entry::new(words::role(part.role), &part.name, booklet.link(&address::part(&part.number)))
    }
}

/// The mark that a gripping part carries.
fn gripping_mark<'a>(booklet: &Booklet<'a>, part: &Part) -> Option<&'a Mark> {
    if part.role.grips() { booklet.mark_of(part) } else { None }
}

fn mark_words(mark: Option<&Mark>) -> String {
    mark.map_or_else(String::new, |mark| format!("{} {}", mark.colour.word(), mark.text))
}

/// Chapters, pages and words.
fn texts(booklet: &Booklet<'_>) -> Vec<Entry> {
    let text = |kind, name: &str, to: &Address, words: &str| Entry {
        words: words.to_owned(),
        ..Entry::new(kind, name, booklet.link(to))
    };
    let mut entries: Vec<Entry> = Vec::new();
    entries.extend(booklet.shared_bodies().map(|body| {
        text(
            "Body",
            &format!("{} {}: {}", body.number, body.name, body_tells(booklet, body)),
            &address::body(&body.number),
            "mix-ups",
        )
    }));
    entries.extend(booklet.chapters().map(|stem| {
        let words = chapters::html(booklet, stem).text;
        text("Chapter", &chapters::title(booklet, stem), &address::chapter(stem), &words)
    }));
    let pages = addresses::everywhere().into_iter().chain(addresses::behind_more());
    entries.extend(pages.map(|(to, name)| {
        let asks = match addresses::sought(&to) {
            "" => Value::Null,
            _ => json!({ "tool": to.name(), "href": booklet.link(&to) }),
        };
        Entry { asks, ..text("Page", name, &to, addresses::sought(&to)) }
    }));
    entries.extend(WORDS.iter().map(|(word, meaning)| text("Word", word, &addresses::word(word), meaning)));
    let materials = booklet.input.catalogue.materials.values();
    entries
        .extend(materials.map(|material| {
            text("Material", &material.name, &address::material(&material.id), &material.id)
        }));
    entries
}

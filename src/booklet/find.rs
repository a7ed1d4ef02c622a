//! What *Find* looks through, and the list of numbers and stamps for paper.

use super::frame::Draft;
use super::glossary::WORDS;
use super::input::Booklet;
use super::view::{optional_mark, part_link, script_json, standing, status};
use super::{addresses, chapters};
use crate::catalogue::{Mark, Part};
use crate::facts::words;
use crate::notes::address::{self, Address};
use serde_json::{Value, json};

/// One thing that can be found.
struct Entry {
    kind: &'static str,
    number: String,
    name: String,
    href: String,
    stamp: String,
    status: String,
    /// The form of its status; empty while it is current.
    standing: &'static str,
    /// Other words that lead to it.
    words: String,
    /// The paint, text and notches that it carries.
    mark: Value,
}

/// The index as a classic script that sets one global: rows of kind, number, name, address, stamp, status, other
/// words, the form of the status, and the mark.
pub(super) fn script(booklet: &Booklet<'_>) -> String {
    let mut entries = records(booklet);
    entries.extend(texts(booklet));
    let rows: Vec<Value> = entries
        .into_iter()
        .map(|entry| {
            json!([
                entry.kind,
                entry.number,
                entry.name,
                entry.href,
                entry.stamp,
                entry.status,
                entry.words,
                entry.standing,
                entry.mark,
            ])
        })
        .collect();
    let rows: Vec<String> = rows.iter().map(script_json).collect();
    format!("var bookletIndex = [\n{}\n];\n", rows.join(",\n"))
}

/// All numbers and stamps.
pub(super) fn page(booklet: &Booklet<'_>) -> Draft {
    let mut numbers = records(booklet);
    numbers.sort_by(|a, b| a.number.cmp(&b.number));
    let lines = numbers.iter().map(|entry| {
        json!({
            "href": entry.href, "number": entry.number, "kind": entry.kind, "name": entry.name,
            "status": entry.status, "standing": entry.standing, "stamp": entry.stamp,
        })
    });
    let mut stamped: Vec<_> =
        booklet.input.catalogue.parts.values().filter(|part| !part.stamp.is_empty()).collect();
    stamped.sort_by(|a, b| (&a.stamp, &a.number).cmp(&(&b.stamp, &b.number)));
    let stamps =
        stamped.into_iter().map(|part| json!({ "stamp": part.stamp, "link": part_link(booklet, part) }));
    let values = json!({ "numbers": lines.collect::<Vec<_>>(), "stamps": stamps.collect::<Vec<_>>() });
    Draft { layout: "numbers", title: "Numbers and stamps".to_owned(), kind: "Booklet", values }
}

fn records(booklet: &Booklet<'_>) -> Vec<Entry> {
    let catalogue = booklet.input.catalogue;
    let mut entries: Vec<Entry> = Vec::new();
    entries.extend(catalogue.fittings.values().map(|fitting| {
        Entry {
            kind: "Fitting",
            number: fitting.number.clone(),
            name: fitting.name.clone(),
            href: booklet.link(&address::fitting(&fitting.number)),
            stamp: fitting.stamp.clone(),
            status: words::status(fitting.status, fitting.use_instead.as_deref()),
            standing: standing(fitting.status),
            mark: optional_mark(fitting.mark.as_ref()),
            words: [
                words::family(fitting.family),
                &fitting
                    .conductors
                    .iter()
                    .map(|conductor| conductor.name.as_str())
                    .collect::<Vec<_>>()
                    .join(" "),
                &mark_words(fitting.mark.as_ref()),
            ]
            .join(" "),
        }
    }));
    entries.extend(catalogue.parts.values().map(|part| Entry {
        kind: words::role(part.role),
        number: part.number.clone(),
        name: part.name.clone(),
        href: booklet.link(&address::part(&part.number)),
        stamp: part.stamp.clone(),
        status: status(part.status),
        standing: standing(part.status),
        words: format!(
            "part {} {} {}",
            part.material.name,
            part.drawing,
            mark_words(gripping_mark(booklet, part))
        ),
        mark: optional_mark(gripping_mark(booklet, part)),
    }));
    entries.extend(catalogue.conductors.values().map(|conductor| Entry {
        kind: "Conductor",
        number: conductor.id.clone(),
        name: conductor.name.clone(),
        href: booklet.link(&address::conductor(&conductor.id)),
        stamp: String::new(),
        status: String::new(),
        standing: "",
        mark: Value::Null,
        words:
            [words::duty(conductor.duty), &conductor.material.name, &conductor.identity.drum_tag].join(" "),
    }));
    entries.extend(catalogue.notices.values().map(|notice| Entry {
        kind: "Notice",
        number: notice.number.clone(),
        name: notice.title.clone(),
        href: booklet.link(&address::notice(&notice.number)),
        stamp: String::new(),
        status: String::new(),
        standing: "",
        mark: Value::Null,
        words: format!("{} {}", notice.reference, notice.summary),
    }));
    entries
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
        kind,
        number: String::new(),
        name: name.to_owned(),
        href: booklet.link(to),
        stamp: String::new(),
        status: String::new(),
        standing: "",
        mark: Value::Null,
        words: words.to_owned(),
    };
    let mut entries: Vec<Entry> = Vec::new();
    entries.extend(booklet.shared_bodies().map(|body| {
        text(
            "Body",
            &format!("{} {}: what goes into it", body.number, body.name),
            &address::body(&body.number),
            "mix-ups",
        )
    }));
    entries.extend(booklet.chapters().map(|stem| {
        let words = chapters::html(booklet, stem).text;
        text("Chapter", &chapters::title(booklet, stem), &address::chapter(stem), &words)
    }));
    let pages = addresses::everywhere().into_iter().chain(addresses::behind_more());
    entries.extend(pages.map(|(to, name)| text("Page", name, &to, addresses::sought(&to))));
    entries.extend(WORDS.iter().map(|(word, meaning)| text("Word", word, &addresses::word(word), meaning)));
    let materials = booklet.input.catalogue.materials.values();
    entries
        .extend(materials.map(|material| {
            text("Material", &material.name, &address::material(&material.id), &material.id)
        }));
    entries
}

//! Chapters from the notes.

use super::frame::Draft;
use super::input::Booklet;
use crate::notes::{self, Html, address};
use serde_json::{Value, json};

pub(super) fn page(booklet: &Booklet<'_>, stem: &str) -> Draft {
    let html = html(booklet, stem);
    let address = address::chapter(stem);
    let contents = html.headings.iter().filter(|heading| heading.level == 2);
    let contents = contents.map(|heading| {
        let to = address.at(heading.id.as_str());
        json!({ "href": booklet.form().link_within(&to), "text": heading.text })
    });
    let contents: Vec<Value> = contents.collect();
    let chapters: Vec<&str> = booklet.chapters().collect();
    let at = chapters.iter().position(|other| *other == stem).unwrap_or_default();
    let earlier = at.checked_sub(1).and_then(|earlier| chapters.get(earlier));
    let values = json!({
        "contents": if contents.len() > 1 { contents } else { Vec::new() },
        "note": html.body,
        "earlier": earlier.map(|stem| link(booklet, stem)),
        "later": chapters.get(at + 1).map(|stem| link(booklet, stem)),
    });
    Draft { layout: "chapter", title: title(booklet, stem), kind: "Chapter", values }
}

/// Links to all chapters, in order.
pub(super) fn links(booklet: &Booklet<'_>) -> Vec<Value> {
    booklet.chapters().map(|stem| link(booklet, stem)).collect()
}

fn link(booklet: &Booklet<'_>, stem: &str) -> Value {
    json!({ "href": booklet.link(&address::chapter(stem)), "text": title(booklet, stem) })
}

/// A chapter as HTML.
pub(super) fn html(booklet: &Booklet<'_>, stem: &str) -> Html {
    let note = booklet.notes.chapter(stem);
    note.map(|note| notes::to_html(note, &booklet.notes, booklet.form()).0).unwrap_or_default()
}

/// The heading that it opens with, else its file name without the number.
pub(super) fn title(booklet: &Booklet<'_>, stem: &str) -> String {
    booklet.notes.title(stem).map(str::to_owned).unwrap_or_else(|| {
        stem.trim_start_matches(|character: char| character.is_ascii_digit() || character == '-')
            .replace('-', " ")
    })
}

//! Chapters from the notes.

use super::Booklet;
use super::frame::Draft;
use crate::catalogue::NoteAbout;
use crate::notes::{self, Html, address};
use serde_json::{Value, json};

pub(super) fn page(booklet: &Booklet<'_>, stem: &str) -> Draft {
    let html = html(booklet, stem);
    let title = title(&html, stem);
    let contents = html.headings.iter().filter(|heading| heading.level == 2);
    let contents: Vec<Value> =
        contents.map(|heading| json!({ "href": format!("#{}", heading.id), "text": heading.text })).collect();
    let links = links(booklet);
    let at = booklet.chapters().position(|other| other == stem).unwrap_or_default();
    let values = json!({
        "contents": if contents.len() > 1 { contents } else { Vec::new() },
        "text": html.body,
        "earlier": at.checked_sub(1).and_then(|earlier| links.get(earlier)),
        "later": links.get(at + 1),
    });
    Draft { layout: "chapter", title, kind: "Chapter", values }
}

/// Links to all chapters, in order.
pub(super) fn links(booklet: &Booklet<'_>) -> Vec<Value> {
    let chapters = booklet.chapters().map(|stem| (stem, html(booklet, stem)));
    chapters
        .map(|(stem, html)| json!({ "href": address::chapter(stem), "text": title(&html, stem), "words": html.text }))
        .collect()
}

fn html(booklet: &Booklet<'_>, stem: &str) -> Html {
    let catalogue = booklet.input.catalogue;
    let note =
        catalogue.notes.iter().find(|note| matches!(&note.about, NoteAbout::Chapter(other) if other == stem));
    note.map(|note| notes::to_html(note, catalogue).0).unwrap_or_default()
}

/// The heading that it opens with, else its file name without the number.
fn title(html: &Html, stem: &str) -> String {
    html.title.clone().unwrap_or_else(|| {
        stem.trim_start_matches(|character: char| character.is_ascii_digit() || character == '-')
            .replace('-', " ")
    })
}

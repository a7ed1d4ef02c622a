//! What every page carries: title, edition, date, state, caution, and where to go.

use super::Booklet;
use crate::typeset::isolated;
use serde_json::{Value, json};
use std::borrow::Cow;

/// A page before its frame.
pub(super) struct Draft {
    /// Name of its layout without `.html`.
    pub layout: &'static str,
    /// What it is about, for the title.
    pub title: String,
    /// What kind of page it is, in words.
    pub kind: &'static str,
    /// Its own values: an object.
    pub values: Value,
}

/// Everything that a page's layout is filled with.
pub(super) fn values(booklet: &Booklet<'_>, address: &str, draft: Draft) -> Value {
    let mut values = draft.values;
    values["frame"] = frame(booklet);
    values["address"] = address.into();
    values["title"] = draft.title.into();
    values["kind"] = draft.kind.into();
    isolate(&mut values);
    values
}

/// Has codes among text from right to left keep their order in browsers. What is HTML or data for scripts
/// stays as it is.
fn isolate(value: &mut Value) {
    match value {
        Value::String(text) if !text.contains(['<', '"']) => {
            if let Cow::Owned(isolated) = isolated(text) {
                *text = isolated;
            }
        }
        Value::Array(values) => values.iter_mut().for_each(isolate),
        Value::Object(values) => values.values_mut().for_each(isolate),
        _ => {}
    }
}

fn frame(booklet: &Booklet<'_>) -> Value {
    let settings = &booklet.input.catalogue.settings;
    json!({
        "language": settings.language,
        "title": settings.title,
        "owner": settings.owner,
        "edition": settings.edition,
        "date": settings.date.map_or("not stated".to_owned(), |date| date.to_string()),
        "state": booklet.input.state,
        "caution": settings.caution,
        "links": links(),
    })
}

fn links() -> Vec<Value> {
    let links = [
        ("index.html", "Start"),
        ("look-alikes.html", "Look-alikes"),
        ("hand.html", "In my hand"),
        ("closed.html", "Inside a closed fitting"),
        ("wear.html", "Wear"),
        ("numbers.html", "Numbers and stamps"),
        ("key.html", "Materials and lines"),
        ("glossary.html", "Glossary"),
    ];
    links.into_iter().map(|(href, text)| json!({ "href": href, "text": text })).collect()
}

//! What every page carries: title, edition, date, state, caution, and where to go.

use super::addresses;
use super::input::Booklet;
use crate::notes::address::{Address, Form};
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

/// What text for readers never stands under: HTML, data for scripts, addresses.
const NO_TEXTS: [&str; 7] = ["back", "body", "data", "front", "href", "id", "note"];

/// Everything that a page's layout is filled with.
pub(super) fn of_page(booklet: &Booklet<'_>, address: &Address, draft: Draft) -> Value {
    let mut values = values(booklet, draft);
    values["address"] = booklet.link(address).into();
    values["page_id"] = address.name().into();
    values["ids"] = booklet.form().id(address, "").into();
    values
}

/// What a layout is filled with that is of no one page.
pub(super) fn values(booklet: &Booklet<'_>, draft: Draft) -> Value {
    let mut values = draft.values;
    values["frame"] = match booklet.outlines {
        // One for all pages, which all others of its values are held against.
        Some(_) => booklet
            .frame
            .get_or_init(|| blake3::hash(frame(booklet).to_string().as_bytes()).to_string())
            .as_str()
            .into(),
        None => frame(booklet),
    };
    values["title"] = draft.title.into();
    values["kind"] = draft.kind.into();
    values["single"] = (booklet.form() == Form::SingleFile).into();
    values["address"] = "".into();
    // What an outline stands for is isolated as its texts are.
    if booklet.outlines.is_none() {
        isolate(&mut values);
    }
    values
}

/// Has codes among text from right to left keep their order in browsers.
fn isolate(value: &mut Value) {
    match value {
        Value::String(text) => {
            if let Cow::Owned(isolated) = isolated(text) {
                *text = isolated;
            }
        }
        Value::Array(values) => values.iter_mut().for_each(isolate),
        Value::Object(values) => {
            let texts = values.iter_mut().filter(|(name, value)| !(value.is_string() && is_no_text(name)));
            texts.for_each(|(_, value)| isolate(value));
        }
        _ => {}
    }
}

fn is_no_text(name: &str) -> bool {
    NO_TEXTS.contains(&name)
}

fn frame(booklet: &Booklet<'_>) -> Value {
    let settings = &booklet.input.catalogue.settings;
    let links = |places: &[(Address, &str)]| {
        let link = |(to, text): &(Address, &str)| json!({ "href": booklet.link(to), "text": text });
        places.iter().map(link).collect::<Vec<_>>()
    };
    json!({
        "language": settings.language,
        "title": settings.title,
        "owner": settings.owner,
        "edition": settings.edition,
        "date": settings.date.map_or("not stated".to_owned(), |date| date.to_string()),
        "state": booklet.input.state,
        "caution": settings.caution,
        "start": { "href": booklet.link(&addresses::start()) },
        "links": links(&addresses::everywhere()),
        "more": links(&addresses::behind_more()),
    })
}

//! A row of what can be found and is listed by its number.

use serde_json::Value;

/// One thing that can be found.
#[derive(Debug, Clone)]
pub(super) struct Entry {
    pub kind: &'static str,
    pub number: String,
    pub name: String,
    pub href: String,
    pub stamp: String,
    pub status: String,
    /// The form of its status; empty while it is current.
    pub standing: &'static str,
    /// Other words that lead to it.
    pub words: String,
    /// The paint, text and notches that it carries.
    pub mark: Value,
    /// The look-up that it names, with its address: of a body, what is inside it.
    pub asks: Value,
    /// Stamps of its gripping parts.
    pub holds: Vec<String>,
}

impl Entry {
    pub(super) fn new(kind: &'static str, name: &str, href: String) -> Self {
        let (number, stamp, status, words) = Default::default();
        let (name, mark, asks) = (name.to_owned(), Value::Null, Value::Null);
        Self { kind, number, name, href, stamp, status, standing: "", words, mark, asks, holds: Vec::new() }
    }
}

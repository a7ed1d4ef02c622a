//! A page before its layout is filled, and the cards that it goes by.

use super::Input;
use crate::cards::form_standing;
use serde_json::{Value, json};

/// A page before its layout is filled.
#[derive(Debug, Clone, PartialEq)]
pub struct Page {
    /// The name of its file.
    pub name: String,
    /// Its layout's path below the layouts folder.
    pub layout: &'static str,
    /// What the layout is filled with.
    pub values: Value,
    /// What it must show, each with what it is called.
    pub shows: Vec<(&'static str, String)>,
}

impl Page {
    /// A page that must show what every page must, once that is known.
    pub(super) fn new(name: String, layout: &'static str, values: Value) -> Self {
        Self { name, layout, values, shows: Vec::new() }
    }
}

/// Cards that a page goes by: number, name, and where each stands.
pub(super) fn cards<'a>(input: Input<'_>, numbers: impl Iterator<Item = &'a str>) -> Vec<Value> {
    let mut numbers: Vec<&str> = numbers.filter(|number| !number.is_empty()).collect();
    numbers.sort_unstable();
    numbers.dedup();
    let row = |number: &&str| {
        let standing = form_standing(&input.standing(number), input.settings());
        let title = input.facts.get(*number).map_or("", |card| card.title.as_str());
        let status = input.facts.get(*number).map_or("", |card| card.status_words.as_str());
        json!({ "number": number, "title": title, "status": status, "standing": standing })
    };
    numbers.iter().map(row).collect()
}

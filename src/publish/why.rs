//! Why a card is made again: what it is made from that is not as it was in the last run.

use super::cache::Memory;
use super::made_from::{SAYS, pictures_from};
use super::options::Why;
use super::prepared::Prepared;
use crate::facts::{CardFacts, PrintedText};
use serde_json::Value;
use std::collections::BTreeMap;

/// The outputs of a card that are made again, each with what has changed.
pub(super) fn of(card: &CardFacts, prepared: &Prepared, memory: &Memory, dpi: f64) -> Vec<Why> {
    let inputs = prepared.card_from(card, "");
    let name = format!("card {}", card.number);
    let pictures = (format!("pictures of {name}"), pictures_from(&inputs, dpi));
    let mut why: Vec<Why> = Vec::new();
    for (output, inputs) in [(name, inputs), pictures] {
        let changed = memory.differences(&output, &inputs);
        let changed =
            changed.into_iter().flat_map(|what| if what == SAYS { texts(card, memory) } else { vec![what] });
        let known = |what: &String| why.iter().any(|why| why.changed.contains(what));
        let changed: Vec<String> = changed.filter(|what| !known(what)).collect();
        if !changed.is_empty() {
            why.push(Why { output, changed });
        }
    }
    why
}

/// The texts of a card that differ from those that the last run's list of all cards has.
fn texts(card: &CardFacts, memory: &Memory) -> Vec<String> {
    let earlier = memory.text("data/catalogue.json").and_then(|text| printed_before(&text, &card.number));
    let now = card.printed();
    let now = by_name(now.iter().map(|printed: &PrintedText| (&*printed.name, &*printed.text)));
    let Some(before) = earlier else { return vec![SAYS.to_owned()] };
    let names = before.keys().chain(now.keys().filter(|name| !before.contains_key(*name)));
    let changed = names.filter(|name| before.get(*name) != now.get(*name));
    let told = |texts: Option<&String>| texts.map_or("nothing".to_owned(), |text| format!("“{text}”"));
    let changed =
        changed.map(|name| format!("{name}: was {}, is {}", told(before.get(name)), told(now.get(name))));
    let changed: Vec<String> = changed.collect();
    if changed.is_empty() { vec![SAYS.to_owned()] } else { changed }
}

fn printed_before(text: &str, number: &str) -> Option<BTreeMap<String, String>> {
    let all: Value = serde_json::from_str(text).ok()?;
    let card = all["cards"].as_array()?.iter().find(|card| card["number"] == number)?;
    let prints = card["prints"].as_array()?;
    Some(by_name(
        prints.iter().filter_map(|printed| Some((printed["name"].as_str()?, printed["text"].as_str()?))),
    ))
}

/// What is printed under each name, one after the other.
fn by_name<'t>(printed: impl Iterator<Item = (&'t str, &'t str)>) -> BTreeMap<String, String> {
    let mut all = BTreeMap::<String, String>::new();
    for (name, text) in printed {
        let texts = all.entry(name.to_owned()).or_default();
        if !texts.is_empty() {
            texts.push_str("; ");
        }
        texts.push_str(text);
    }
    all
}

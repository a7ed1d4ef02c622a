//! The worst wrong gripping parts that a fitting's card names, from the answer of `mixups`.

use super::records::{Records, text};
use super::{Needed, On, words};
use serde_json::Value as Json;
use serde_yaml::Value;
use std::cmp::Reverse;
use std::collections::BTreeSet;

/// A card names this many; how many more there are is said.
const NAMED: usize = 3;

/// From the gravest to the least.
const GRAVITY: [&str; 8] = [
    "closes-without-gripping",
    "core-not-held",
    "tip-contact",
    "marginal",
    "unknown",
    "grips",
    "stands-proud",
    "will-not-enter",
];

pub fn needed(records: &Records, fitting: &Value, small: bool, list: &mut Vec<Needed>) {
    // What must not be used needs no warning of wrong parts in it where there is no room.
    if small && !words::status(fitting).is_empty() {
        return;
    }
    let wrong = wrong(records, fitting);
    for case in wrong.iter().take(NAMED) {
        let part = records.part(case["part"].as_str().unwrap());
        let stamp = text(part, "stamp");
        let called = if stamp.is_empty() { text(part, "number") } else { stamp };
        list.push(Needed::new("wrong part", On::Front, words::verdict(case, part)).behind(&called));
        list.push(Needed::new("wrong part", On::Front, called).behind(text(&part["mark"], "text")));
        if case["hidden"] == true {
            list.push(Needed::new("wrong part", On::Front, "not seen once closed"));
        }
    }
    if wrong.len() > NAMED {
        list.push(Needed::new("more wrong parts", On::Front, format!("and {} more", wrong.len() - NAMED)));
    }
}

/// The wrong parts of a fitting, the worst first; what is proven on its conductor and in use is none.
fn wrong<'a>(records: &'a Records, fitting: &Value) -> Vec<&'a Json> {
    let number = text(fitting, "number");
    let items = records.items(fitting).into_iter();
    let bodies: BTreeSet<String> = items
        .filter(|(part, _)| text(part, "role") == "body")
        .map(|(part, _)| text(part, "number"))
        .collect();
    let in_use = |part: &Value| matches!(text(part, "status").as_str(), "" | "current");
    let mut wrong: Vec<&Json> = all(records, |body| bodies.contains(body))
        .filter(|case| case["fitting"] == *number && case["right"] == false)
        .filter(|case| case["approved"] == false || !in_use(records.part(case["part"].as_str().unwrap())))
        .collect();
    wrong.sort_by_key(|case| {
        let gravity = GRAVITY.iter().position(|verdict| case["verdict"] == *verdict);
        let pair = [&case["part"], &case["conductor"]].map(|name| name.as_str().unwrap());
        (Reverse(case["hidden"] == true), Reverse(case["danger"] == true), gravity, pair)
    });
    wrong.dedup_by_key(|case| (case["part"].clone(), case["conductor"].clone()));
    wrong
}

/// The cases of some bodies.
pub fn all(records: &Records, wanted: impl Fn(&str) -> bool) -> impl Iterator<Item = &Json> {
    let bodies = records.mixups["bodies"].as_array().unwrap().iter();
    let wanted = bodies.filter(move |body| wanted(body["body"].as_str().unwrap()));
    wanted.flat_map(|body| body["cases"].as_array().unwrap())
}

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
const GRAVITY: [&str; 7] = [
    "closes-without-gripping",
    "core-not-held",
    "tip-contact",
    "marginal",
    "unknown",
    "grips",
    "stands-proud",
];

pub fn needed(records: &Records, fitting: &Value, small: bool, list: &mut Vec<Needed>) {
    // What must not be used needs no warning of wrong parts in it where there is no room.
    if small && !words::status(fitting).is_empty() {
        return;
    }
    let wrong = wrong(records, fitting);
    for case in wrong.iter().take(NAMED) {
        let part = records.part(gripping(records, case));
        let called = called(part);
        list.push(Needed::new("wrong part", On::Front, words::summary(case)).behind(&called));
        for with in with(records, fitting, case) {
            list.push(Needed::new("wrong part of a kit", On::Front, with).behind(&called));
        }
        list.push(Needed::new("wrong part", On::Front, called).behind(text(&part["mark"], "text")));
        if case["hidden"] == true {
            let seen =
                if case["seen_by"] == "mark" { "seen by its mark only" } else { "not seen once closed" };
            list.push(Needed::new("wrong part", On::Front, seen));
        }
    }
    if wrong.len() > NAMED {
        list.push(Needed::new("more wrong parts", On::Front, format!("and {} more", wrong.len() - NAMED)));
    }
}

/// The wrong parts of a fitting, the worst first; what is proven on its conductor and in use is none, nor what will not go in.
fn wrong<'a>(records: &'a Records, fitting: &Value) -> Vec<&'a Json> {
    let number = text(fitting, "number");
    let items = records.items(fitting).into_iter();
    let bodies: BTreeSet<String> = items
        .filter(|(part, _)| text(part, "role") == "body")
        .map(|(part, _)| text(part, "number"))
        .collect();
    let kits = all(records, "kits", |body| bodies.contains(body))
        .filter(|kit| kit["parts"].as_array().unwrap().len() > 1);
    let mut wrong: Vec<&Json> = all(records, "cases", |body| bodies.contains(body))
        .chain(kits)
        .filter(|case| case["fitting"] == *number && case["right"] == false)
        .filter(|case| !["proven here too", "will not go in"].contains(&words::summary(case)))
        .collect();
    wrong.sort_by_key(|case| {
        let gravity = GRAVITY.iter().position(|verdict| case["verdict"] == *verdict);
        let kit = case.get("kit").is_some();
        let pair = [name(case), case["conductor"].as_str().unwrap()];
        (Reverse(case["hidden"] == true), Reverse(case["danger"] == true), gravity, kit, pair)
    });
    wrong.dedup_by_key(|case| (name(case).to_owned(), case["conductor"].clone()));
    let mut said: Vec<&Json> = Vec::new();
    for case in wrong {
        let is_known = case.get("kit").is_some() && said.iter().any(|other| comes_to_the_same(case, other));
        if !is_known {
            said.push(case);
        }
    }
    said
}

/// Whether a part of a kit by itself comes to what the kit comes to, and is noticed by the same.
fn comes_to_the_same(kit: &Json, other: &Json) -> bool {
    let same = |key: &str| kit[key] == other[key];
    let tenths = |case: &Json| case["stand_out_mm"].as_f64().map(|mm| format!("{mm:.1}"));
    let is_seen_alike = kit["visible"] != true || tenths(kit) == tenths(other);
    kit["parts"].as_array().unwrap().contains(&other["part"])
        && ["summary", "hidden", "danger", "visible", "seen_by"].into_iter().all(same)
        && is_seen_alike
}

/// What of a kit goes in beside its gripping part and is none of the fitting's own, as a card calls it.
fn with(records: &Records, fitting: &Value, kit: &Json) -> Vec<String> {
    let own: Vec<String> = records.items(fitting).iter().map(|(part, _)| text(part, "number")).collect();
    let parts = kit["parts"].as_array().into_iter().flatten().filter_map(Json::as_str);
    let beside = parts.filter(|part| *part != gripping(records, kit) && !own.iter().any(|own| own == part));
    beside.map(|part| records.part(part)).map(called).collect()
}

/// A part's stamp; its number where it has none.
pub fn called(part: &Value) -> String {
    let stamp = text(part, "stamp");
    if stamp.is_empty() { text(part, "number") } else { stamp }
}

/// The part of a case, or the fitting whose kit it is.
fn name(case: &Json) -> &str {
    case.get("part").or_else(|| case.get("kit")).and_then(Json::as_str).unwrap()
}

/// The part of a case, or the one of a kit that grips.
fn gripping<'a>(records: &Records, case: &'a Json) -> &'a str {
    let grips = |part: &&str| matches!(text(records.part(part), "role").as_str(), "cone" | "wedge");
    let of_kit = || {
        let parts = case["parts"].as_array().unwrap().iter().filter_map(Json::as_str);
        parts.into_iter().find(grips)
    };
    case["part"].as_str().or_else(of_kit).unwrap()
}

/// The cases, or the kits, of some bodies.
pub fn all<'a>(
    records: &'a Records,
    what: &'a str,
    wanted: impl Fn(&str) -> bool,
) -> impl Iterator<Item = &'a Json> {
    let bodies = records.mixups["bodies"].as_array().unwrap().iter();
    let wanted = bodies.filter(move |body| wanted(body["body"].as_str().unwrap()));
    wanted.flat_map(move |body| body[what].as_array().unwrap())
}

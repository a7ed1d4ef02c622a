//! Practical assessment sheets: what somebody must do and say, before an assessor, to be let near a fitting; one a
//! fitting, and one a family.

use super::page::{Page, cards};
use super::quiz_pages::least_right;
use super::{Input, joined};
use crate::catalogue::{Family, Fitting};
use crate::facts::{CardFacts, FittingFacts, words};
use crate::register::Standing;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Something that is looked at.
struct Item {
    text: String,
    /// Whether safety hangs on it: it can't be traded for anything.
    safety: bool,
}

fn safety(text: String) -> Item {
    Item { text, safety: true }
}

/// What is looked at, under a heading; left out where it has no items.
type Section = (&'static str, Vec<Item>);

/// A sheet a fitting that may be built, then one a family; each with what it is about.
pub(super) fn pages(input: Input<'_>) -> Vec<(String, Page)> {
    let mut pages = Vec::new();
    let mut families: BTreeMap<Family, Vec<Built<'_>>> = BTreeMap::new();
    for built in input.built() {
        let (fitting, card, _) = built;
        families.entry(fitting.family).or_default().push(built);
        let sections = of_fitting(input, built);
        let about = format!("{} {}", card.number, card.title);
        let page = sheet(input, format!("assessment-{}.html", card.number), &about, sections, &[built]);
        pages.push((about, page));
    }
    for (family, built) in families {
        let about = format!("Family: {}", words::family(family).to_lowercase());
        let page = sheet(input, format!("family-{}.html", family.word()), &about, of_family(&built), &built);
        pages.push((about, page));
    }
    pages
}

/// A fitting with what its card prints.
type Built<'a> = (&'a Arc<Fitting>, &'a CardFacts, &'a FittingFacts);

fn sheet(input: Input<'_>, name: String, about: &str, sections: Vec<Section>, built: &[Built<'_>]) -> Page {
    let sections: Vec<Section> = sections.into_iter().filter(|(_, items)| !items.is_empty()).collect();
    let all = || sections.iter().flat_map(|(_, items)| items);
    let (of_safety, others) =
        (all().filter(|item| item.safety).count(), all().filter(|item| !item.safety).count());
    let mut number = 0;
    let rows: Vec<Value> = sections
        .iter()
        .map(|(name, items)| {
            let items: Vec<Value> = items
                .iter()
                .map(|item| {
                    number += 1;
                    json!({ "n": number, "text": item.text, "safety": item.safety })
                })
                .collect();
            json!({ "name": name, "items": items })
        })
        .collect();
    let values = json!({
        "heading": format!("Practical assessment. {about}"), "sections": rows, "of_safety": of_safety, "others": others,
        "pass": least_right(others, input.training.pass_percent), "months": input.training.valid_months,
        "cards": cards(input, built.iter().map(|(_, card, _)| card.number.as_str())),
    });
    Page::new(name, "training/assessment.html", values)
}

fn of_fitting(input: Input<'_>, (_, card, facts): Built<'_>) -> Vec<Section> {
    // Whether a step may be left out without danger, no record says.
    let steps = facts.steps.iter().map(|text| safety(text.clone()));
    let checks = facts.checks.iter().map(|check| {
        let what = joined([check.when.clone(), check.what.clone()].into_iter(), ", ");
        safety(format!("Takes the reading or reads it aloud, and says what is right: {what}: {}", check.go))
    });
    let torques = facts.tightening.iter().filter(|line| !line.torque.is_empty()).map(|line| {
        let text = joined([line.torque.clone(), line.grease.clone(), line.passes.clone()].into_iter(), "; ");
        safety(format!("Sets and uses the torque wrench, {}: {text}", line.item))
    });
    let wrong = facts
        .if_wrong_items()
        .map(|(when, text)| safety(format!("Says what is done where a check fails {when}: {text}")));
    let witness = Some(&facts.witness).into_iter().filter(|text| !text.is_empty());
    let tension = facts.line_tension_max.iter();
    vec![
        ("Chooses", choosing(input, card, facts)),
        ("Puts together", steps.collect()),
        ("Tightens", torques.collect()),
        ("Checks", checks.collect()),
        ("Second person", witness.map(|text| safety(text.clone())).collect()),
        ("When something is wrong", wrong.collect()),
        (
            "Rejects",
            facts.reject_if.iter().map(|text| safety(format!("Shown or asked, rejects: {text}"))).collect(),
        ),
        ("Knows", tension.map(|most| safety(format!("Line tension max {most}"))).collect()),
    ]
}

/// What must be right before any part is taken.
fn choosing(input: Input<'_>, card: &CardFacts, facts: &FittingFacts) -> Vec<Item> {
    let state = match input.standing(&card.number) {
        Standing::Issued(issued) => format!("issue {}, check code {}", issued.issue, issued.check_code),
        Standing::Draft => "it is a draft, and not to be worked by".to_owned(),
    };
    let mut items =
        vec![safety(format!("Takes card {} and holds it against the register: {state}", card.number))];
    for held in &facts.conductors {
        let tag = held.identity.iter().map(|(name, text)| format!("{name} {text}"));
        let told = [held.build.clone(), held.diameter.clone()].into_iter().chain(tag);
        items.push(safety(format!("Makes sure of the conductor, {}: {}", held.name, joined(told, ", "))));
    }
    if !facts.gripping_stamp.is_empty() {
        let mark = facts.mark.as_ref().map(|mark| {
            joined([mark.text.clone(), mark.colour.clone(), mark.notches_words.clone()].into_iter(), ", ")
        });
        let mark = mark.map(|mark| format!(", and its mark: {mark}")).unwrap_or_default();
        items.push(safety(format!(
            "Finds the gripping part and reads its stamp aloud: {}{mark}",
            facts.gripping_stamp
        )));
    }
    for wrong in &facts.not_these {
        let noticed = joined([wrong.happens.clone(), wrong.noticed.clone()].into_iter(), "; ");
        let stamp = joined([wrong.number.clone(), wrong.stamp.clone(), wrong.with.clone()].into_iter(), " ");
        items.push(safety(format!("Says why not {stamp}: {noticed}")));
    }
    items
}

/// What fittings of a family have in common, and what must not be mistaken between them.
fn of_family(built: &[Built<'_>]) -> Vec<Section> {
    let choosing = built.iter().filter(|(_, _, facts)| !facts.gripping_stamp.is_empty());
    let choosing = choosing.map(|(_, card, facts)| {
        let held = joined(facts.conductors.iter().map(|held| held.name.clone()), " and ");
        let mark = facts
            .mark
            .as_ref()
            .map(|mark| format!(", mark {} {}", mark.text, mark.colour))
            .unwrap_or_default();
        safety(format!(
            "Given {held}: takes card {} and the part stamped {}{mark}, among all parts of the family",
            card.number, facts.gripping_stamp
        ))
    });
    let hidden = built.iter().flat_map(|(_, card, facts)| {
        facts.not_these.iter().filter(|wrong| wrong.hidden).map(|wrong| {
            let stamp =
                joined([wrong.number.clone(), wrong.stamp.clone(), wrong.with.clone()].into_iter(), " ");
            safety(format!("Says how {stamp} in {} would be found: {}", card.number, wrong.noticed))
        })
    });
    let mut wrong: Vec<String> = Vec::new();
    for (when, text) in built.iter().flat_map(|(_, _, facts)| facts.if_wrong_items()) {
        let text = format!("Says what is done where a check fails {when}: {text}");
        if !wrong.contains(&text) {
            wrong.push(text);
        }
    }
    let mut rejects: Vec<(String, Vec<&str>)> = Vec::new();
    for (_, card, facts) in built {
        for text in &facts.reject_if {
            match rejects.iter_mut().find(|(known, _)| known == text) {
                Some((_, numbers)) => numbers.push(&card.number),
                None => rejects.push((text.clone(), vec![&card.number])),
            }
        }
    }
    let common = rejects.iter().filter(|(_, numbers)| numbers.len() == built.len() || built.len() == 1);
    let keeps = [
        "Lays out and names all parts before the first is fitted",
        "Keeps bore, thread and wire clean, and tools in order",
    ];
    vec![
        ("Tells them apart", choosing.collect()),
        ("Knows what nobody sees", hidden.collect()),
        ("When something is wrong", wrong.into_iter().map(safety).collect()),
        ("Rejects, of every fitting of the family", common.map(|(text, _)| safety(text.clone())).collect()),
        ("Works", keeps.map(|text| Item { text: text.to_owned(), safety: false }).into()),
    ]
}

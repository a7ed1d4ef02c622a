//! Labels of bins in stores: what lies in a bin, how many go into a fitting, and what must never lie beside it; and
//! quarantine labels for parts that nobody may take.

use super::neighbours::Neighbours;
use super::{Input, joined, object};
use crate::cards::{Form, Shape, TAG, form_mark, form_whole};
use crate::catalogue::{Fitting, Part, Role, Status};
use crate::facts::{mark_facts, words};
use crate::mixups;
use crate::register::Standing;
use crate::units::Length;
use serde_json::json;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// A7 (ISO 216), lying, as kit tags are.
pub const LABEL: Shape =
    Shape { size: "A7", orientation: TAG.orientation, trim: (Length::from_mm(105.0), Length::from_mm(74.0)) };

/// So many fittings, parts or cards are named; of more, how many more there are.
const NAMED: usize = 4;
/// So many parts that must never lie beside are named.
const NEVER_NAMED: usize = 6;

/// A label for each part, in the order of their numbers.
#[must_use]
pub fn labels(input: Input<'_>) -> Vec<Form> {
    let neighbours = Neighbours::of(input.catalogue(), input.cards.mixups);
    let marks = mixups::marks(input.catalogue());
    let mut uses = uses(input);
    let mut label = |part: &Arc<Part>| {
        let uses = uses.remove(part.number.as_str()).unwrap_or_default();
        let (mark, stamp) =
            (marks.get(part.number.as_str()).map(|mark| mark_facts(mark)), part.stamp.clone());
        let quarantine = quarantine(part, &uses);
        let (never, never_why) = never(&neighbours, part);
        let cards = cards(input, part, &uses);
        let values = json!({
            "number": part.number, "number_whole": form_whole(&part.number), "title": part.name, "stamp": form_whole(&stamp),
            "mark": mark.as_ref().map(form_mark), "quarantine": quarantine, "made": made(part),
            "uses": uses.words(), "never": never, "never_why": never_why, "fields": fields(&quarantine),
            "caution": input.settings().caution, "cards": cards,
        });
        let shows = vec![
            ("the number", part.number.clone()),
            ("the stamp", stamp.clone()),
            ("the quarantine", quarantine),
            ("what must never lie beside it", never),
            ("the caution", input.settings().caution.clone()),
            ("the cards that it goes by", cards),
        ];
        Form {
            layout: "training/label.xml",
            style: "label",
            shape: LABEL,
            number: part.number.clone(),
            title: format!("{} {}", part.number, part.name),
            called: format!("the bin label of {}", part.number),
            values: object(values),
            shows,
            stamps: Some(stamp).into_iter().filter(|stamp| !stamp.is_empty()).collect(),
            drawings: Vec::new(),
        }
    };
    input.catalogue().parts.values().map(&mut label).collect()
}

/// What each part goes into.
fn uses(input: Input<'_>) -> BTreeMap<&str, Uses<'_>> {
    let mut all: BTreeMap<&str, Uses<'_>> = BTreeMap::new();
    for fitting in input.catalogue().fittings.values() {
        for item in &fitting.items {
            let fittings = &mut all.entry(item.part.number.as_str()).or_default().fittings;
            match fittings.last_mut() {
                Some((last, count)) if last.number == fitting.number => *count += item.quantity,
                _ => fittings.push((fitting, item.quantity)),
            }
        }
    }
    all
}

/// What a part goes into.
#[derive(Default)]
struct Uses<'a> {
    /// Fittings with how many of it each takes.
    fittings: Vec<(&'a Arc<Fitting>, u32)>,
}

impl<'a> Uses<'a> {
    fn built(&self) -> impl Iterator<Item = &(&'a Arc<Fitting>, u32)> {
        self.fittings.iter().filter(|(fitting, _)| fitting.status == Status::Current)
    }

    fn words(&self) -> String {
        let uses = self
            .built()
            .map(|(fitting, count)| format!("{count}\u{a0}×\u{a0}in\u{a0}{}", form_whole(&fitting.number)));
        some(uses.collect(), NAMED)
    }
}

/// Why nobody may take it; empty of what may be taken: its own status, else that of all that it goes into.
fn quarantine(part: &Part, uses: &Uses<'_>) -> String {
    if part.status != Status::Current {
        return words::status(part.status, None);
    }
    if uses.built().next().is_some() || uses.fittings.is_empty() {
        return String::new();
    }
    let only: BTreeSet<String> = uses
        .fittings
        .iter()
        .map(|(fitting, _)| words::status(fitting.status, fitting.use_instead.as_deref()))
        .collect();
    let numbers = uses.fittings.iter().map(|(fitting, _)| fitting.number.clone());
    let numbers = some(numbers.collect(), NAMED);
    format!("Only for {numbers}: {}", only.into_iter().collect::<Vec<_>>().join("; "))
}

fn made(part: &Part) -> String {
    let texts = [words::role(part.role), &part.drawing, &part.material.name];
    joined(texts.into_iter().map(str::to_owned), " · ")
}

/// The parts that must never lie beside it, and why.
fn never(neighbours: &Neighbours<'_>, part: &Part) -> (String, String) {
    let others = neighbours.never_beside(&part.number);
    if others.is_empty() {
        return Default::default();
    }
    let named = others.iter().map(|other| {
        let stamp =
            if other.stamp.is_empty() { String::new() } else { format!(" {}", form_whole(&other.stamp)) };
        format!("{}{stamp}", form_whole(&other.number))
    });
    let why = "One goes in for the other, and nobody sees it from a measurement.".to_owned();
    (some(named.collect(), NEVER_NAMED), why)
}

fn fields(quarantine: &str) -> [&'static str; 3] {
    if quarantine.is_empty() {
        ["batch", "counted, pieces", "by, date"]
    } else {
        ["pieces put aside", "by", "date"]
    }
}

/// The cards that a part goes by: its own, those of a few fittings, else those of their bodies.
fn cards(input: Input<'_>, part: &Part, uses: &Uses<'_>) -> String {
    let numbers: Vec<&str> = if part.role == Role::Body && input.facts.contains_key(&part.number) {
        vec![&part.number]
    } else {
        let all: Vec<&Arc<Fitting>> = uses.fittings.iter().map(|(fitting, _)| *fitting).collect();
        let bodies: BTreeSet<&str> = all
            .iter()
            .flat_map(|fitting| fitting.bodies())
            .map(|item| item.part.number.as_str())
            .filter(|number| input.facts.contains_key(*number))
            .collect();
        if all.len() > 2 && !bodies.is_empty() {
            bodies.into_iter().collect()
        } else {
            all.into_iter().map(|fitting| fitting.number.as_str()).collect()
        }
    };
    let words = numbers.into_iter().map(|number| {
        let state = match input.standing(number) {
            Standing::Issued(issued) => {
                format!("issue\u{a0}{} of {}, check\u{a0}{}", issued.issue, issued.edition, issued.check_code)
            }
            Standing::Draft => "draft, not issued".to_owned(),
        };
        format!("card {} {state}", form_whole(number))
    });
    let settings = input.settings();
    let date = settings.date.map(|date| format!(", {date}")).unwrap_or_default();
    let state = format!("edition {}{date}", settings.edition);
    joined([some(words.collect(), 2), state].into_iter(), " · ")
}

/// The first of these texts, and how many more there are.
fn some(texts: Vec<String>, most: usize) -> String {
    let more = texts.len().saturating_sub(most);
    let mut said: Vec<String> = texts.into_iter().take(most).collect();
    if more > 0 {
        said.push(format!("and {more} more"));
    }
    said.join(", ")
}

//! What card layouts are filled with: the facts as finished texts, by the names that layouts use.

mod body;
mod tag;
mod texts;
mod wear;

use super::sign::Sign;
use crate::catalogue::{Settings, Status};
use crate::facts::{
    CardFacts, CheckFacts, ConductorFacts, Content, FittingFacts, IfWrongFacts, NotThis, PartLine,
    TighteningFacts,
};
use crate::register::Standing;
use serde_json::{Map, Value, json};
use std::collections::BTreeSet;

pub(super) use tag::{of_tag, tag_part};
use texts::{capital, dated, joined, kept_whole, listed, sentence, with_values};
pub(super) use texts::{foot, is_kept_whole, mark, object, prefixed, whole};

/// The values of a card's two faces.
pub(in crate::cards) fn of_card(
    facts: &CardFacts,
    standing: &Standing,
    copy: &str,
    settings: &Settings,
) -> Map<String, Value> {
    let foot_lines = foot_lines(facts, standing, settings);
    let mut values = object(json!({
        "number": facts.number, "title": facts.title, "status": facts.status_words, "caution": facts.caution,
        "barred": facts.status != Status::Current, "before_work": facts.before_work, "in_service": "",
        "owner": settings.owner, "foot": foot(standing, copy, settings), "foot_words": foot_lines.join(" "),
        "foot_lines": foot_lines.iter().map(|text| json!({ "text": text })).collect::<Vec<_>>(),
    }));
    match &facts.content {
        Content::Fitting(fitting) => values.extend(of_fitting(fitting)),
        Content::Body(body) => values.extend(body::of_body(body)),
    }
    values
}

/// How little shows of the wrong parts that can't be measured: each sign once, with what it means.
fn hidden(facts: &FittingFacts) -> Vec<Value> {
    let signs = facts.not_these.iter().filter_map(|wrong| Some((sign(wrong)?, wrong.noticed.as_str())));
    let signs: BTreeSet<(Sign, &str)> = signs.filter(|(_, noticed)| !noticed.is_empty()).collect();
    signs.into_iter().map(|(sign, noticed)| json!({ "sign": sign, "means": noticed })).collect()
}

/// The sign of a wrong part that can't be seen once the fitting is closed, or by its mark only.
fn sign(facts: &NotThis) -> Option<Sign> {
    let by_mark = facts.noticed == Sign::Marked.meaning();
    facts.hidden.then_some(if by_mark { Sign::Marked } else { Sign::Hidden })
}

/// Where the wrong parts are that the front has no room for.
fn more(facts: &FittingFacts) -> String {
    let booklet = if facts.more_kits { ", booklet" } else { "" };
    match (facts.not_these_more, &facts.body_card) {
        (0, _) => String::new(),
        (more, Some(card)) => format!("and {more} more: body card {card}{booklet}"),
        (more, None) => format!("and {more} more: see the booklet"),
    }
}

/// What the foot of the back says, line by line.
fn foot_lines(facts: &CardFacts, standing: &Standing, settings: &Settings) -> Vec<String> {
    let mut lines = vec![facts.caution.clone()];
    let mut history = Vec::new();
    // What is put off may hang on the notice of another fitting.
    let put_off = match standing {
        Standing::Issued(issued) => issued.holds_from.map(|day| day.to_string()).unwrap_or_default(),
        Standing::Draft => String::new(),
    };
    if let Content::Body(_) = &facts.content {
        history.push(prefixed("in force from ", &put_off));
    }
    if let Content::Fitting(fitting) = &facts.content {
        let notices: Vec<&str> = fitting.notices.iter().map(|notice| notice.number.as_str()).collect();
        history.push(prefixed("notice ", &notices.join(", ")));
        history.push(prefixed("in force from ", fitting.in_force_from().max(&put_off)));
        history.push(prefixed("replaces ", &fitting.supersedes.join(", ")));
        // What must not be built says below its status what becomes of those in the line.
        let standing = fitting.in_service.clone().filter(|_| facts.status == Status::Current);
        history.push(standing.unwrap_or_default());
    }
    match standing {
        Standing::Draft => history.push(dated(settings.date)),
        Standing::Issued(issued) => {
            history.push(prefixed("issued again: ", &issued.because));
            history.push(dated(issued.date));
        }
    }
    history.push("printed copy: check the register".to_owned());
    lines.push(capital(&joined(&history.iter().map(String::as_str).collect::<Vec<_>>(), " · ")));
    lines.retain(|line| !line.is_empty());
    lines
}

fn of_fitting(facts: &FittingFacts) -> Map<String, Value> {
    let values = json!({
        "family": facts.family,
        "mark": facts.mark.as_ref().map(mark),
        "conductors": facts.conductors.iter().map(conductor).collect::<Vec<_>>(),
        "gripping": { "name": with_size(&facts.gripping_name), "number": whole(&facts.gripping_number), "role": gripping_role(facts), "stamp": whole(&facts.gripping_stamp), "long": is_long(&facts.gripping_stamp), "others": other_gripping(facts) },
        "stamp": facts.stamp,
        "parts": facts.parts.iter().map(part).collect::<Vec<_>>(),
        "not_these": facts.not_these.iter().map(wrong).collect::<Vec<_>>(),
        "not_these_words": more(facts),
        "hidden_key": hidden(facts),
        "body_card": facts.body_card.clone().unwrap_or_default(),
        "steps": numbered(facts),
        "long_stamps": facts.parts.iter().any(|part| is_long(&part.stamp)),
        "tightening": facts.tightening.iter().map(tightening).collect::<Vec<_>>(),
        "checks": checks(&facts.checks),
        "tension_words": prefixed("Line tension max ", facts.line_tension_max.as_deref().unwrap_or_default()),
        "if_wrong": if_wrong(&facts.if_wrong),
        "witness": facts.witness,
        "line_tension_max": facts.line_tension_max.clone().unwrap_or_default(),
        "greased": greased(&facts.tightening),
        "reject": reject(facts),
        "sizes": sizes(facts),
        "worn": facts.conductors.iter().any(|conductor| conductor.wear.is_some()),
        "notices": facts.notices.iter().map(|notice| notice.number.clone()).collect::<Vec<_>>().join(", "),
        "supersedes": facts.supersedes.join(", "),
        "in_service": facts.in_service.clone().unwrap_or_default(),
    });
    object(values)
}

fn conductor(facts: &ConductorFacts) -> Value {
    let built = listed(&[&facts.material, &facts.build]);
    let measured = listed(&[&facts.diameter, &facts.section]);
    let nominal = prefixed("nominal\u{a0}", facts.nominal.as_deref().unwrap_or_default());
    let neck = prefixed("neck\u{a0}", facts.neck.as_deref().unwrap_or_default());
    let identity = facts.identity.iter().map(|(name, text)| json!({ "name": name, "text": text }));
    json!({
        "id": facts.id, "name": facts.name, "built": built, "measured": measured, "sized": listed(&[&nominal, &neck]),
        "nominal": facts.nominal.clone().unwrap_or_default(), "neck": facts.neck.clone().unwrap_or_default(),
        "identity": identity.collect::<Vec<_>>(), "caution": facts.caution, "alike": facts.alike,
        "wear": facts.wear.as_ref().map(wear::wear),
    })
}

fn part(facts: &PartLine) -> Value {
    let quantity = if facts.quantity > 1 { format!("{}\u{a0}× ", facts.quantity) } else { String::new() };
    json!({
        "item": facts.item.to_string(), "role": format!("{quantity}{}", facts.role), "number": whole(&facts.number),
        "stamp": whole(&facts.stamp), "gripping": facts.gripping, "name": facts.name, "reuse": facts.reuse,
        "quantity": facts.quantity,
    })
}

fn wrong(facts: &NotThis) -> Value {
    let colour = facts.mark.as_ref().map_or_else(String::new, |mark| mark.colour.clone());
    let noticed = if facts.hidden { "" } else { facts.noticed.as_str() };
    let happens = joined(&[&facts.happens, noticed], "; ");
    let called_by = joined(&[&colour, &facts.with], ", ");
    let coloured = joined(&[&called_by, &happens], ": ");
    let called = if facts.stamp.is_empty() { &facts.number } else { &facts.stamp };
    json!({
        "number": facts.number, "stamp": whole(called), "mark": facts.mark.as_ref().map(mark),
        "text": coloured, "happens": joined(&[&facts.with, &facts.happens], ": "), "sign": sign(facts),
    })
}

fn tightening(facts: &TighteningFacts) -> Value {
    json!({ "torque": facts.torque, "item": joined(&[&facts.item, &facts.passes], ", "), "grease": facts.grease })
}

/// What the gripping part does, in a word.
fn gripping_role(facts: &FittingFacts) -> String {
    facts.parts.iter().find(|part| part.gripping).map_or_else(String::new, |part| part.role.clone())
}

/// The gripping parts beside the first, for a card that lists no parts.
fn other_gripping(facts: &FittingFacts) -> String {
    let others = facts.parts.iter().filter(|part| part.gripping && part.number != facts.gripping_number);
    let called = others
        .map(|part| joined(&[&format!("{} {}", part.role, whole(&part.number)), &whole(&part.stamp)], ", "));
    prefixed("and ", &called.collect::<Vec<_>>().join("; "))
}

/// What is looked at and what is right.
fn checks(facts: &[CheckFacts]) -> Vec<Value> {
    let row =
        |check: &CheckFacts| json!({ "what": joined(&[&check.when, &check.what], ": "), "go": check.go });
    facts.iter().map(row).collect()
}

/// What a check that fails calls for, a sentence each.
fn if_wrong(facts: &IfWrongFacts) -> Vec<Value> {
    let when = [("Before load", &facts.before_load), ("Under load", &facts.under_load)];
    let stated = when.into_iter().filter(|(_, text)| !text.is_empty());
    stated
        .map(|(when, text)| json!({ "when": when, "text": format!("{}.", text.trim_end_matches('.')) }))
        .collect()
}

/// What is rejected: each sentence by itself.
fn reject(facts: &FittingFacts) -> Vec<Value> {
    let sentences = facts.reject_if.iter().flat_map(|text| text.split_inclusive(". "));
    sentences.map(|text| json!({ "text": sentence(text.trim()) })).collect()
}

/// The sizes of the assembly that no step says.
fn sizes(facts: &FittingFacts) -> String {
    let said = |text: &String| facts.steps.iter().any(|step| step.contains(text.as_str()));
    let dimensions = facts.dimensions.iter().filter(|(_, text)| !said(text));
    dimensions.map(|(name, text)| format!("{name} {text}")).collect::<Vec<_>>().join(", ")
}

/// Spanners and grease, each once where several tightenings share it, and what torque does not tell.
fn greased(facts: &[TighteningFacts]) -> String {
    let mut how: Vec<&str> = Vec::new();
    for text in facts
        .iter()
        .map(|facts| facts.spanner.as_str())
        .chain(facts.iter().map(|facts| facts.grease.as_str()))
    {
        if !text.is_empty() && !how.contains(&text) {
            how.push(text);
        }
    }
    how.into_iter().chain(["torque does not prove grip"]).map(sentence).collect::<Vec<_>>().join(" ")
}

/// The steps, in which no stamp is broken and every value stands out.
fn numbered(facts: &FittingFacts) -> Vec<Value> {
    let stamps = || facts.parts.iter().map(|part| part.stamp.as_str());
    let step = |((text, values), n): ((&String, &Vec<String>), u32)| json!({ "n": n.to_string(), "text": kept_whole(&with_values(text, values), stamps()) });
    facts.steps.iter().zip(&facts.step_values).zip(1_u32..).map(step).collect()
}

/// The most characters of a stamp that stands beside something else at its size.
const SHORT: usize = 8;

fn is_long(stamp: &str) -> bool {
    stamp.chars().count() > SHORT
}

/// A name whose size stays with the word before it: alone on a line beside the stamp, it would read as part of that.
fn with_size(name: &str) -> String {
    match name.rsplit_once(' ') {
        Some((before, size)) if size.starts_with(|first: char| first.is_ascii_digit()) => {
            format!("{before}\u{a0}{size}")
        }
        _ => name.to_owned(),
    }
}

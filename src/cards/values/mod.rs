//! What card layouts are filled with: the facts as finished texts, by the names that layouts use.

mod body;
mod checks;
mod wear;

use crate::cards::compose::drawing_values;
use crate::catalogue::Settings;
use crate::colour::{ColourCode, Srgb};
use crate::facts::{
    CardFacts, ConductorFacts, Content, FittingFacts, MarkFacts, NotThis, PartLine, TighteningFacts,
};
use crate::register::Standing;
use crate::sketch::Drawing;
use serde_json::{Map, Value, json};

/// The values of a card's two faces. `sections` are the conductors' sections at true size.
pub(in crate::cards) fn of_card(
    facts: &CardFacts,
    standing: &Standing,
    settings: &Settings,
) -> Map<String, Value> {
    let mut values = Map::new();
    values.insert("number".into(), facts.number.clone().into());
    values.insert("title".into(), facts.title.clone().into());
    values.insert("status".into(), facts.status_words.clone().into());
    values.insert("caution".into(), facts.caution.clone().into());
    values.insert("owner".into(), settings.owner.clone().into());
    values.insert("foot".into(), foot(standing, settings));
    let foot_lines = foot_lines(facts, settings);
    values.insert(
        "foot_words".into(),
        joined(&foot_lines.iter().map(String::as_str).collect::<Vec<_>>(), " ").into(),
    );
    values.insert(
        "foot_lines".into(),
        foot_lines.iter().map(|text| json!({ "text": text })).collect::<Vec<_>>().into(),
    );
    match &facts.content {
        Content::Fitting(fitting) => values.extend(of_fitting(fitting)),
        Content::Body(body) => values.extend(body::of_body(body)),
    }
    values
}

/// Issue, edition and check code; a card that no edition holds says so instead.
pub(super) fn foot(standing: &Standing, settings: &Settings) -> Value {
    let date = settings.date.map_or_else(String::new, |date| date.to_string());
    match standing {
        Standing::Draft => json!({
            "draft": true, "standing": "draft, not issued", "edition": format!("edition {}", settings.edition),
            "date": date, "check_code": "",
        }),
        Standing::Issued { issue, edition, check_code } => json!({
            "draft": false, "standing": format!("issue {issue}"), "edition": format!("edition {edition}"),
            "date": date, "check_code": format!("check {check_code}"),
        }),
    }
}

/// Stands before a wrong part that can't be seen once the fitting is closed.
const HIDDEN: &str = "●\u{a0}";

/// What marked wrong parts have in common: how little of them shows, said once.
fn hidden(facts: &FittingFacts) -> String {
    let hidden = facts.not_these.iter().find(|wrong| wrong.hidden && !wrong.noticed.is_empty());
    hidden.map_or_else(String::new, |wrong| format!("{HIDDEN}{}", wrong.noticed))
}

/// Where the wrong parts are that the front has no room for.
fn more(facts: &FittingFacts) -> String {
    match (facts.not_these_more, &facts.body_card) {
        (0, _) => String::new(),
        (more, Some(card)) => format!("and {more} more: body card {card}"),
        (more, None) => format!("and {more} more: see the booklet"),
    }
}

/// What the foot of the back says, line by line.
fn foot_lines(facts: &CardFacts, settings: &Settings) -> Vec<String> {
    let date = settings.date.map_or_else(String::new, |date| date.to_string());
    let mut lines = vec![facts.caution.clone()];
    let mut history = Vec::new();
    if let Content::Fitting(fitting) = &facts.content {
        let notices: Vec<&str> = fitting.notices.iter().map(|notice| notice.number.as_str()).collect();
        history.push(prefixed("notice ", &notices.join(", ")));
        history.push(prefixed("replaces ", &fitting.supersedes.join(", ")));
        history.push(fitting.in_service.clone().unwrap_or_default());
    }
    history.extend([date, "printed copy: check the register".to_owned()]);
    lines.push(capital(&joined(&history.iter().map(String::as_str).collect::<Vec<_>>(), " · ")));
    lines.retain(|line| !line.is_empty());
    lines
}

pub(super) fn prefixed(prefix: &str, text: &str) -> String {
    if text.is_empty() { String::new() } else { format!("{prefix}{text}") }
}

fn of_fitting(facts: &FittingFacts) -> Map<String, Value> {
    let values = json!({
        "family": facts.family,
        "mark": facts.mark.as_ref().map(mark),
        "conductors": facts.conductors.iter().map(conductor).collect::<Vec<_>>(),
        "gripping": { "name": with_size(&facts.gripping_name), "number": facts.gripping_number, "role": gripping_role(facts), "stamp": whole(&facts.gripping_stamp), "others": other_gripping(facts) },
        "stamp": facts.stamp,
        "parts": facts.parts.iter().map(part).collect::<Vec<_>>(),
        "not_these": facts.not_these.iter().map(wrong).collect::<Vec<_>>(),
        "not_these_stacked": stacked_wrong(&facts.not_these),
        "not_these_words": more(facts),
        "hidden_words": hidden(facts),
        "body_card": facts.body_card.clone().unwrap_or_default(),
        "steps": numbered(&facts.steps),
        "tightening": facts.tightening.iter().map(tightening).collect::<Vec<_>>(),
        "tightening_stacked": facts.tightening.iter().map(tightening).flat_map(below_torque).collect::<Vec<_>>(),
        "checks": checks::rows(&facts.checks),
        "check_cells": checks::cells(&facts.checks),
        "no_go": checks::no_go(&facts.checks),
        "checks_stacked": checks::stacked(&facts.checks),
        "tension_words": prefixed("Line tension max ", facts.line_tension_max.as_deref().unwrap_or_default()),
        "witness": facts.witness,
        "line_tension_max": facts.line_tension_max.clone().unwrap_or_default(),
        "greased": greased(&facts.tightening),
        "beside_section": beside_section(facts),
        "worn": facts.conductors.iter().any(|conductor| conductor.wear.is_some()),
        "notices": facts.notices.iter().map(|notice| notice.number.clone()).collect::<Vec<_>>().join(", "),
        "supersedes": facts.supersedes.join(", "),
        "in_service": facts.in_service.clone().unwrap_or_default(),
    });
    object(values)
}

/// A mark with the colours that it is printed in.
pub(super) fn mark(facts: &MarkFacts) -> Value {
    json!({
        "code": facts.code, "colour": facts.colour, "text": whole(&facts.text),
        "notches": facts.notches, "notches_words": plain(&facts.notches_words),
        "fill": paint(facts).hex(), "ink": ink(facts),
    })
}

/// The paint as it is printed; white where the colour is unknown.
fn paint(mark: &MarkFacts) -> Srgb {
    ColourCode::from_letters(&mark.code).map_or(Srgb::WHITE, ColourCode::printed)
}

/// The colour of letters on the paint.
fn ink(mark: &MarkFacts) -> String {
    paint(mark).text_on_it().hex()
}

fn conductor(facts: &ConductorFacts) -> Value {
    let built = listed(&[&facts.material, &facts.build]);
    let measured = listed(&[&facts.diameter, &facts.section]);
    let identity = facts.identity.iter().map(|(name, text)| json!({ "name": name, "text": text }));
    json!({
        "id": facts.id, "name": facts.name, "built": built, "measured": measured,
        "nominal": facts.nominal.clone().unwrap_or_default(), "neck": facts.neck.clone().unwrap_or_default(),
        "identity": identity.collect::<Vec<_>>(), "caution": facts.caution, "wear": facts.wear.as_ref().map(wear::wear),
    })
}

fn part(facts: &PartLine) -> Value {
    let quantity = if facts.quantity > 1 { format!("{}\u{a0}× ", facts.quantity) } else { String::new() };
    json!({
        "item": facts.item.to_string(), "role": format!("{quantity}{}", facts.role), "number": facts.number,
        "stamp": whole(&facts.stamp), "gripping": facts.gripping, "name": facts.name, "reuse": facts.reuse,
        "quantity": facts.quantity,
    })
}

fn wrong(facts: &NotThis) -> Value {
    let colour = facts.mark.as_ref().map_or_else(String::new, |mark| mark.colour.clone());
    let (dot, noticed) = if facts.hidden { (HIDDEN, "") } else { ("", facts.noticed.as_str()) };
    let happens = joined(&[&facts.happens, noticed], "; ");
    let coloured = joined(&[&colour, &happens], ": ");
    let (text, ink) =
        facts.mark.as_ref().map_or_else(Default::default, |mark| (whole(&mark.text), ink(mark)));
    let called = if facts.stamp.is_empty() { &facts.number } else { &facts.stamp };
    json!({
        "number": facts.number, "stamp": whole(called), "mark": facts.mark.as_ref().map(mark),
        "mark_text": text, "ink": ink, "text": format!("{dot}{coloured}"), "happens": format!("{dot}{}", facts.happens),
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
    let called =
        others.map(|part| joined(&[&format!("{} {}", part.role, part.number), &whole(&part.stamp)], ", "));
    prefixed("and ", &called.collect::<Vec<_>>().join("; "))
}

/// What is tightened for a narrow column: below its torque.
fn below_torque(row: Value) -> [Value; 2] {
    [json!({ "torque": row["torque"] }), json!({ "item": row["item"] })]
}

/// What stands beside the enlarged section: sizes, those of the assembly whether or not its drawing has room for
/// them, and what is rejected.
fn beside_section(facts: &FittingFacts) -> Vec<Value> {
    let reject = facts.reject_if.iter().map(|text| sentence(text)).collect::<Vec<_>>().join(" ");
    let mut texts = sizes(facts);
    texts.push(prefixed("Reject if: ", &reject));
    texts.iter().filter(|text| !text.is_empty()).map(|text| json!({ "text": text })).collect()
}

/// The sizes of each conductor, said of which where there are several; the first, whose section is drawn, with those of
/// the assembly.
fn sizes(facts: &FittingFacts) -> Vec<String> {
    let several = facts.conductors.len() > 1;
    let of = |(index, conductor): (usize, &ConductorFacts)| {
        let nominal = prefixed("nominal ", conductor.nominal.as_deref().unwrap_or_default());
        let neck = prefixed("neck ", conductor.neck.as_deref().unwrap_or_default());
        let own = listed(&[&conductor.section, &nominal, &neck]);
        let own = if several { prefixed(&format!("{}: ", conductor.name), &own) } else { own };
        let dimensions = facts.dimensions.iter().filter(|_| index == 0);
        let assembly: Vec<String> = dimensions.map(|(name, text)| format!("{name} {text}")).collect();
        joined(&[&own, &assembly.join(", ")], if several { "; " } else { ", " })
    };
    facts.conductors.iter().enumerate().map(of).collect()
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

fn sentence(text: &str) -> String {
    let text = text.trim_end_matches('.');
    if text.is_empty() { String::new() } else { capital(text) + "." }
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// Height that a mark's swatch takes in a row, in millimetres.
const CHIP: f64 = 3.6;
/// Room between one wrong part and the next for the line that parts them.
const APART: f64 = 0.7;

/// The wrong parts for a narrow column: what happens below mark and stamp.
fn stacked_wrong(facts: &[NotThis]) -> Vec<Value> {
    let apart = |mut row: Value| {
        let (text, happens) = (row["text"].take(), row["happens"].take());
        row["least"] = CHIP.into();
        row["above"] = APART.into();
        [row, json!({ "text": text, "happens": happens })]
    };
    facts.iter().map(wrong).flat_map(apart).collect()
}

fn numbered(texts: &[String]) -> Vec<Value> {
    texts.iter().zip(1_u32..).map(|(text, n)| json!({ "n": n.to_string(), "text": text })).collect()
}

/// The sections at true size, as layouts see them.
pub(in crate::cards) fn sections(drawings: &[Option<Drawing>]) -> Value {
    drawings.iter().map(|drawing| drawing.as_ref().map(drawing_values)).collect::<Vec<_>>().into()
}

fn listed(texts: &[&str]) -> String {
    joined(texts, ", ")
}

pub(super) fn joined(texts: &[&str], between: &str) -> String {
    texts.iter().filter(|text| !text.is_empty()).copied().collect::<Vec<_>>().join(between)
}

/// A stamp or the text of a mark is never broken, not even at its spaces.
pub(super) fn whole(stamp: &str) -> String {
    stamp.replace(' ', "\u{a0}")
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

fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
}

pub(super) fn object(values: Value) -> Map<String, Value> {
    match values {
        Value::Object(values) => values,
        _ => Map::new(),
    }
}

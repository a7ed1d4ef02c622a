//! Assembly slips: what a gang reads, counts and measures while it puts one fitting together, written down beside what
//! its card says.

use super::{Input, joined, object};
use crate::cards::{A5, Form, form_mark, form_standing, form_whole};
use crate::catalogue::{Conductor, Fitting};
use crate::facts::{CardFacts, FittingFacts, TighteningFacts, words};
use crate::grip::Geometry;
use crate::mixups::decides;
use crate::section::Construction;
use serde_json::{Map, Value, json};

/// A slip for each fitting that may be built, in the order of their numbers. It has what the fitting has and no more.
#[must_use]
pub fn slips(input: Input<'_>) -> Vec<Form> {
    input.built().map(|(fitting, card, facts)| slip(input, fitting, card, facts)).collect()
}

fn slip(input: Input<'_>, fitting: &Fitting, card: &CardFacts, facts: &FittingFacts) -> Form {
    let standing = input.standing(&card.number);
    let stamps: Vec<String> =
        Some(facts.gripping_stamp.clone()).into_iter().filter(|s| !s.is_empty()).collect();
    let shows = vec![
        ("the number", card.number.clone()),
        ("the status", card.status_words.clone()),
        ("the caution", card.caution.clone()),
        ("the gripping part's stamp", facts.gripping_stamp.clone()),
    ];
    let form = Form {
        layout: "training/slip.xml",
        style: "slip",
        shape: A5,
        number: card.number.clone(),
        title: format!("{} {}", card.number, card.title),
        called: format!("the assembly slip of {}", card.number),
        values: values(input, fitting, card, facts),
        shows,
        stamps,
        drawings: Vec::new(),
    };
    form.in_force(input.cards, &standing)
}

fn values(input: Input<'_>, fitting: &Fitting, card: &CardFacts, facts: &FittingFacts) -> Map<String, Value> {
    let tightening = facts.tightening.iter().filter(|line| !line.torque.is_empty());
    let torques: Vec<Value> = tightening.map(torque).collect();
    let readings: Vec<Value> = readings(facts);
    object(json!({
        "number": card.number, "title": card.title, "status": card.status_words, "barred": false,
        "caution": card.caution, "owner": input.settings().owner,
        "foot": form_standing(&input.standing(&card.number), input.settings()),
        "mark": facts.mark.as_ref().map(form_mark),
        "gripping": facts.gripping_name, "stamp": form_whole(&facts.gripping_stamp),
        "conductors": joined(facts.conductors.iter().map(|held| held.name.clone()), " and "),
        "before": before_closing(fitting, facts), "torques": torques, "readings": readings,
        "witness": facts.witness,
        "if_wrong_before": facts.if_wrong.before_load, "if_wrong_under": facts.if_wrong.under_load,
    }))
}

/// What is read and counted before the fitting is closed: what the record says of it, and room to write.
fn before_closing(fitting: &Fitting, facts: &FittingFacts) -> Vec<Value> {
    let mut rows = Vec::new();
    let of = |what: &str, name: &str| {
        if facts.conductors.len() > 1 { format!("{what}, {name}") } else { what.to_owned() }
    };
    for held in &facts.conductors {
        let tag = held.identity.iter().find(|(name, _)| name == "drum tag").map_or("", |(_, tag)| tag);
        rows.push(row(&of("Drum tag", &held.name), &form_whole(tag), ""));
    }
    let mut counted = Vec::new();
    for held in &fitting.conductors {
        if !counted.contains(&&held.id) {
            rows.extend(wires(fitting, held).map(|says| row(&of("Wires counted", &held.name), &says, "")));
            counted.push(&held.id);
        }
    }
    if let Some(mark) = &facts.mark {
        let words = [mark.text.as_str(), &mark.colour, &mark.notches_words];
        rows.push(row("Mark, read aloud", &joined(words.into_iter().map(str::to_owned), ", "), ""));
    }
    rows.push(row("Stamp, read aloud", &form_whole(&facts.gripping_stamp), ""));
    rows.extend(other_stamps(fitting, facts));
    rows.retain(|row| row["says"] != "");
    rows
}

/// The stamps of the other parts that decide whether it holds, such as a socket's.
fn other_stamps(fitting: &Fitting, facts: &FittingFacts) -> Vec<Value> {
    let deciding = fitting.items.iter().map(|item| &item.part).filter(|part| decides(part));
    let mut told = vec![facts.gripping_stamp.as_str()];
    let mut rows = Vec::new();
    for part in deciding {
        if !told.contains(&part.stamp.as_str()) {
            told.push(&part.stamp);
            rows.push(row(&format!("{}, read aloud", words::role(part.role)), &form_whole(&part.stamp), ""));
        }
    }
    rows
}

/// How many wires there are to count; with a spreading cone, how many lie round it.
fn wires(fitting: &Fitting, held: &Conductor) -> Option<String> {
    if !matches!(held.construction, Construction::Stranded(_) | Construction::Composite(_)) {
        return None;
    }
    let all: u32 = held.section.layers.iter().map(|layer| layer.wires).sum();
    let through = fitting.gripping().find_map(|item| match &item.part.geometry {
        Some(Geometry::SpreadingCone(cone)) => cone.wires_through_hole,
        _ => None,
    });
    Some(match through.and_then(|through| Some((through, all.checked_sub(through)?))) {
        Some((through, round)) => format!("{round} round the cone, {through} through it"),
        None => all.to_string(),
    })
}

fn torque(line: &TighteningFacts) -> Value {
    let more = [line.passes.as_str(), &line.spanner];
    let mut row = row(&line.item, &line.torque, "N·m");
    row["more"] = joined(more.into_iter().map(str::to_owned), ", ").into();
    row
}

/// What is measured, each with its window and room to write.
fn readings(facts: &FittingFacts) -> Vec<Value> {
    let measured = facts.checks.iter().filter(|check| check.what != "stamp");
    measured.map(|check| row(&format!("{}: {}", check.when, check.what), &check.go, "mm")).collect()
}

fn row(what: &str, says: &str, unit: &str) -> Value {
    json!({ "what": what, "says": says, "more": "", "unit": unit })
}

//! What a fitting's card must print.

use super::records::{Records, list, text, texts};
use super::{Needed, On, conductors, words, wrong_parts};
use serde_yaml::Value;

pub fn needed(records: &Records, number: &str, small: bool) -> Vec<Needed> {
    let fitting = &records.fittings[number];
    let mut list = Vec::new();
    for on in [On::Front, On::Back] {
        list.push(Needed::new("number", on, number));
        list.push(Needed::new("status", on, status(records, fitting)));
    }
    list.push(Needed::new("title", On::Front, text(fitting, "name")));
    mark(records, fitting, &mut list);
    for conductor in records.conductors(fitting) {
        conductors::needed(records, conductor, small, &mut list);
    }
    parts(records, fitting, small, &mut list);
    wrong_parts::needed(records, fitting, small, &mut list);
    checks(records, fitting, &mut list);
    standing(records, fitting, &mut list);
    if !small {
        assembly(records, fitting, &mut list);
    }
    list
}

/// The mark of the fitting; its gripping part's where it states none.
/// Of several that replace each other, the last is what a crew uses.
fn status(records: &Records, fitting: &Value) -> String {
    let mut last = fitting;
    while let Some(next) = records.fittings.get(&text(last, "superseded_by")) {
        last = next;
    }
    let direct = text(fitting, "superseded_by");
    if direct.is_empty() {
        return words::status(fitting);
    }
    words::status(fitting).replace(&direct, &text(last, "number"))
}

pub fn mark_of<'a>(records: &'a Records, fitting: &'a Value) -> Option<&'a Value> {
    let of_parts = gripping(records, fitting).into_iter().map(|part| &part["mark"]);
    [&fitting["mark"]].into_iter().chain(of_parts).find(|mark| mark.is_mapping())
}

fn mark(records: &Records, fitting: &Value, list: &mut Vec<Needed>) {
    let Some(mark) = mark_of(records, fitting) else { return };
    list.push(Needed::new("mark", On::Front, text(mark, "text")));
    list.push(Needed::new("mark", On::Back, text(mark, "text")));
    list.push(Needed::new("mark's colour", On::Front, words::colour(&text(mark, "colour"))));
    list.push(Needed::new("notches", On::Front, words::notches(mark["notches"].as_u64().unwrap_or(0))));
}

/// The parts that hold the conductor.
pub fn gripping<'a>(records: &'a Records, fitting: &Value) -> Vec<&'a Value> {
    let holds =
        |part: &Value| ["cone", "wedge", "sleeve", "ferrule", "rope-grip"].contains(&&*text(part, "role"));
    records.items(fitting).into_iter().map(|(part, _)| part).filter(|part| holds(part)).collect()
}

/// A small card names the gripping parts, a larger one every part.
fn parts(records: &Records, fitting: &Value, small: bool, list: &mut Vec<Needed>) {
    for part in gripping(records, fitting).into_iter().take(if small { usize::MAX } else { 1 }) {
        list.push(Needed::new("gripping part's stamp", On::Front, text(part, "stamp")));
        list.push(Needed::new("gripping part's number", On::Front, text(part, "number")));
        if !small && !text(part, "stamp").is_empty() {
            list.push(Needed::new("gripping part's name", On::Front, text(part, "name")));
        }
    }
    for (part, quantity) in records.items(fitting).into_iter().filter(|_| !small) {
        let number = text(part, "number");
        list.push(Needed::new("part's stamp", On::Front, text(part, "stamp")).behind(&number));
        let role = words::role(part);
        let role = if quantity > 1 { format!("{quantity} × {role}") } else { role };
        list.push(Needed::new("part's number", On::Front, number).behind(role));
    }
}

/// What is measured and read on the back, in every size.
fn checks(records: &Records, fitting: &Value, list: &mut Vec<Needed>) {
    let stand_out = &fitting["stand_out"];
    let measured = match text(stand_out, "from").as_str() {
        "none" => "",
        "screw-gap" => "gap under screw",
        _ => "stand-out",
    };
    for (when, key) in [("Seated", "seated_mm"), ("Tensioned", "tensioned_mm")] {
        if let (Some(go), false) = (window(records, &stand_out[key], 1), measured.is_empty()) {
            list.push(Needed::new("window", On::Back, measured).behind(when));
            list.push(Needed::new("window", On::Back, format!("{go} mm")).behind(when));
        }
    }
    let most = stand_out["draw_in_max_mm"].as_f64().filter(|_| !measured.is_empty());
    let most = most.map(|most| format!("0 to {} mm", records.number(most, 1))).unwrap_or_default();
    list.push(Needed::new("draw-in", On::Back, most).behind("drawn in"));
    failed(records, fitting, list);
    // What must not be built is not closed either.
    if !words::status(fitting).is_empty() {
        return;
    }
    let witness = records.said(fitting, "witness").concat();
    if witness.is_empty() {
        let stamps = gripping(records, fitting).into_iter().map(|part| text(part, "stamp"));
        let stamp = stamps.into_iter().find(|stamp| !stamp.is_empty()).unwrap_or_default();
        list.push(Needed::new("stamp that is read before closing", On::Back, stamp));
    }
    list.push(Needed::new("witness", On::Back, witness));
}

/// What a check that fails calls for. Under tension nobody is sent to open anything.
fn failed(records: &Records, fitting: &Value, list: &mut Vec<Needed>) {
    let roles: Vec<String> = gripping(records, fitting).into_iter().map(|part| text(part, "role")).collect();
    let pressed =
        text(fitting, "family") == "sleeve" || roles.iter().any(|role| role == "ferrule" || role == "sleeve");
    let before = match roles.first().map(String::as_str) {
        _ if pressed => "cut it off, make it anew",
        Some("cone") => "take it apart; the cone is scrap",
        Some("wedge") => "take it apart; the wedge is scrap",
        _ => "take it apart",
    };
    list.push(Needed::new("a check that fails", On::Back, before).behind("Before load:"));
    let slack = texts(&fitting["complete_without"], "keys").iter().any(|key| key == "line_tension_max_kN");
    let under = if slack { "" } else { "stop, do not loosen, keep clear; take the load on a puller first" };
    list.push(Needed::new("a check that fails", On::Back, under).behind("Under load:"));
}

/// What a card says of load, notices and fittings in the line, in every size.
fn standing(records: &Records, fitting: &Value, list: &mut Vec<Needed>) {
    let before = texts(&records.settings, "before_work").into_iter();
    list.extend(before.map(|line| Needed::new("before work", On::Back, line)));
    list.push(Needed::new("caution", On::Back, text(&records.settings, "caution")));
    if let Some(load) = fitting["line_tension_max_kN"].as_f64() {
        list.push(
            Needed::new("line tension", On::Back, format!("{} kN", records.bare(load, 6)))
                .behind("Line tension max"),
        );
    }
    list.extend(texts(fitting, "notices").into_iter().map(|notice| Needed::new("notice", On::Back, notice)));
    let number = text(fitting, "number");
    let replaced = records.fittings.iter().filter(|(_, other)| text(other, "superseded_by") == number);
    list.extend(replaced.map(|(other, _)| Needed::new("what it replaces", On::Back, other)));
    list.push(Needed::new("in service", On::Back, words::in_service(fitting)));
}

/// How it is put together: larger cards alone have room for it.
fn assembly(records: &Records, fitting: &Value, needed: &mut Vec<Needed>) {
    let barred = !words::status(fitting).is_empty();
    for (key, what) in [("steps", "step"), ("reject_if", "reject if")] {
        let lines = records.said(fitting, key).into_iter().filter(|_| !(barred && key == "steps"));
        needed.extend(lines.map(|text| Needed::new(what, On::Back, text)));
    }
    for key in ["insertion_mm", "tail_mm"] {
        if let Some(length) = fitting[key].as_f64() {
            needed.push(Needed::new(key, On::Either, format!("{} mm", records.bare(length, 6))));
        }
    }
    for tightening in list(fitting, "tightening").filter(|_| !barred) {
        let item = format!("{} {}", text(tightening, "item"), text(tightening, "thread"));
        let torque = window(records, &tightening["torque_Nm"], 0);
        let torque = torque.map(|torque| format!("{torque} N·m")).unwrap_or_default();
        needed.push(Needed::new("item that is tightened", On::Back, item).behind(torque));
        if let Some(width) = tightening["spanner_mm"].as_f64() {
            needed.push(Needed::new("spanner", On::Back, format!("spanner {} mm", records.bare(width, 1))));
        }
        let grease = texts(tightening, "grease").join(", ");
        let grease = if grease.is_empty() { grease } else { format!("grease {grease}; nothing else") };
        needed.push(Needed::new("grease", On::Back, grease));
        if let Some(passes) = tightening["passes"].as_u64().filter(|passes| *passes > 1) {
            needed.push(Needed::new("passes", On::Back, format!("{passes} passes")));
        }
    }
}

/// A window with so many decimals at least; one number where its ends are the same.
pub(super) fn window(records: &Records, window: &Value, least: usize) -> Option<String> {
    let written = |value| if least > 0 { records.number(value, least) } else { records.bare(value, 1) };
    let (min, max) = (window["min"].as_f64()?, window["max"].as_f64()?);
    // Below the face: how far it is sunk, the least first.
    if max <= 0.0 && min < 0.0 {
        let (min, max) = (written(-max), written(-min));
        return Some(if min == max { format!("sunk {min}") } else { format!("sunk {min} to {max}") });
    }
    let (min, max) = (written(min), written(max));
    Some(if min == max { min } else { format!("{min} to {max}") })
}

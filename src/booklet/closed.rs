//! What a closed fitting can hold, by its stand-out.

use super::frame::Draft;
use super::input::Booklet;
use super::view::{body_link, capital, fitting_link, part_link, script_json};
use crate::catalogue::Conductor;
use crate::facts::Content;
use crate::facts::words::unmeasured;
use crate::mixups::{BodyMixups, Consequence, Inside, Interval, NONE_FITS, Summary, closed_with};
use crate::units::{Length, Numerals, Range};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// How far a reading with a rule can be off, in millimetres, where the reader says nothing else.
const READING: f64 = 0.5;

/// Intervals are written to a thousandth of a millimetre, rounded outward, so that rounding rules no part out.
const FINE: f64 = 1000.0;
/// What the last bits of a number may be off by, so that no file differs by them.
const LAST_BITS: f64 = 1e-6;

pub(super) fn page(booklet: &Booklet<'_>) -> Draft {
    let found: Vec<&BodyMixups> =
        booklet.input.mixups.bodies.iter().filter(|body| body.parts.len() > 1).collect();
    let choices: Vec<Value> = found
        .iter()
        .flat_map(|body| conductors(body).into_values().map(|conductor| choice(booklet, body, conductor)))
        .collect();
    let values = json!({
        "tolerance": booklet.numerals.shortest(READING, 1),
        "data": script_json(&json!({ "cases": choices })),
        "bodies": found.iter().map(|body| section(booklet, body)).collect::<Vec<_>>(),
    });
    Draft { layout: "closed", title: "What is inside a closed fitting".to_owned(), kind: "Look-up", values }
}

/// The conductors that a body's fittings hold, by their ids.
fn conductors(body: &BodyMixups) -> BTreeMap<&str, &Arc<Conductor>> {
    body.cases.iter().map(|case| (case.conductor.id.as_str(), &case.conductor)).collect()
}

/// A body on a conductor, with all that goes together there: in which state it would read what.
fn choice(booklet: &Booklet<'_>, body: &BodyMixups, conductor: &Conductor) -> Value {
    let inside = closed_with(body, &conductor.id);
    let inside = inside.iter().map(|inside| {
        let link = link(booklet, inside);
        json!({
            "text": link["text"],
            "href": link["href"],
            "words": words(inside),
            "noticed": noticed(body, conductor, inside),
            "right": inside.right,
            "class": class(body, conductor, inside),
            "seated": inside.seated.map(ends),
            "tensioned": inside.tensioned.map(ends),
        })
    });
    json!({
        "text": format!("{} {} on {}", body.body.number, body.body.name, conductor.name),
        "body": body.body.number,
        "conductor": conductor.id,
        "inside": inside.collect::<Vec<_>>(),
        "none": capital(&none_fits(booklet, body, conductor)),
    })
}

/// What is done where nothing fits: as the cards of the fittings say it, where they say it.
fn none_fits(booklet: &Booklet<'_>, body: &BodyMixups, conductor: &Conductor) -> String {
    let fittings =
        body.cases.iter().filter(|case| case.conductor.id == conductor.id).map(|case| &case.fitting);
    let said: BTreeSet<&str> = fittings
        .filter_map(|fitting| match &booklet.input.facts.get(&fitting.number)?.content {
            Content::Fitting(facts) => Some(facts.if_wrong.under_load.trim_end_matches('.')),
            Content::Body(_) => None,
        })
        .filter(|text| !text.is_empty())
        .collect();
    if said.is_empty() { NONE_FITS.to_owned() } else { said.into_iter().collect::<Vec<_>>().join(". ") }
}

fn link(booklet: &Booklet<'_>, inside: &Inside) -> Value {
    match &inside.kit {
        Some(kit) => {
            let mut link = fitting_link(booklet, kit);
            link["text"] = format!("all parts of {}", kit.number).into();
            link
        }
        None => {
            let mut link = part_link(booklet, &inside.part);
            link["text"] = format!("{} {}", inside.part.number, inside.part.name).into();
            link
        }
    }
}

fn words(inside: &Inside) -> String {
    let stamp = &inside.part.stamp;
    let stamp = if stamp.is_empty() { String::new() } else { format!(", stamp {stamp}") };
    format!("{}{stamp}", inside.summary.words())
}

/// Least and most; nothing for a least that nothing stops.
fn ends(interval: Interval) -> Value {
    let least = interval.least.map(|least| (least.mm() * FINE + LAST_BITS).floor() / FINE);
    json!([least, (interval.most.mm() * FINE - LAST_BITS).ceil() / FINE])
}

fn section(booklet: &Booklet<'_>, body: &BodyMixups) -> Value {
    let conductors = conductors(body).into_values().map(|conductor| {
        let inside = closed_with(body, &conductor.id);
        let lines = inside.iter().map(|inside| {
            line(booklet, class(body, conductor, inside), noticed(body, conductor, inside), inside)
        });
        json!({
            "caption": format!("On {}", conductor.name),
            "lines": lines.collect::<Vec<_>>(),
            "none": capital(&none_fits(booklet, body, conductor)),
        })
    });
    json!({
        "number": body.body.number,
        "link": body_link(booklet, &body.body),
        "conductors": conductors.collect::<Vec<_>>(),
    })
}

/// How it is drawn: the right part, a danger that nothing measured shows, another danger, or neither.
fn class(body: &BodyMixups, conductor: &Conductor, inside: &Inside) -> &'static str {
    let found = comes(body, conductor, inside);
    match inside.summary {
        Summary::Right if inside.right => "right-part",
        _ if found.iter().any(|comes| comes.hidden) => "hidden-danger",
        _ if found.iter().any(|comes| comes.danger) => "seen-danger",
        _ => "",
    }
}

/// What it comes to in each fitting of the body on that conductor.
fn comes<'b>(body: &'b BodyMixups, conductor: &Conductor, inside: &Inside) -> Vec<&'b Consequence> {
    match &inside.kit {
        Some(built) => {
            let kits = body.kits.iter().filter(|kit| kit.kit.number == built.number);
            kits.filter(|kit| kit.conductor.id == conductor.id).map(|kit| &kit.comes).collect()
        }
        None => {
            let cases = body.cases.iter().filter(|case| case.part.number == inside.part.number);
            cases.filter(|case| case.conductor.id == conductor.id).map(|case| &case.comes).collect()
        }
    }
}

/// How somebody would notice a danger that nothing measured shows, as cards say it.
fn noticed(body: &BodyMixups, conductor: &Conductor, inside: &Inside) -> &'static str {
    if class(body, conductor, inside) != "hidden-danger" {
        return "";
    }
    comes(body, conductor, inside).into_iter().find_map(unmeasured).unwrap_or_default()
}

fn line(booklet: &Booklet<'_>, class: &str, noticed: &str, inside: &Inside) -> Value {
    let numerals = booklet.numerals;
    json!({
        "class": class,
        "part": link(booklet, inside),
        "seated": in_words(inside.seated, numerals),
        "tensioned": in_words(inside.tensioned, numerals),
        "noticed": noticed,
        "words": words(inside),
    })
}

fn in_words(interval: Option<Interval>, numerals: Numerals) -> String {
    match interval {
        None => "not known".to_owned(),
        Some(Interval { least: None, most }) => format!("at most {}", numerals.length(most, 1)),
        Some(Interval { least: Some(least), most }) => {
            numerals.range(Range::between(least, most).map(Length::mm), 1, "mm")
        }
    }
}

//! What a closed fitting can hold, by its stand-out.

use super::addresses;
use super::frame::Draft;
use super::input::Booklet;
use super::long::MOST_LINES;
use super::view::{body_link, capital, fitting_link, part_link, script_data};
use crate::catalogue::{Conductor, Part, StandOutFrom};
use crate::facts::Content;
use crate::facts::words::unmeasured;
use crate::mixups::{
    BodyMixups, Consequence, Interval, Meaning, NONE_FITS, PossibleInside, STAND_OUT_TOLERANCE,
    closed_by_name, closed_json, closed_with,
};
use crate::notes::address::Address;
use crate::units::Numerals;
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// Where it is looked up what is inside a body; `None` of a part that no more than one part goes into.
pub(super) fn address(booklet: &Booklet<'_>, part: &Part) -> Option<Address> {
    let found = booklet.input.mixups.body(&part.number).filter(|body| is_looked_up(body))?;
    Some(if by_body(booklet) { addresses::closed_body(&found.body.number) } else { addresses::closed() })
}

/// The bodies that have a page of their own; none where all of them go on one page.
pub(super) fn bodies<'a>(booklet: &Booklet<'a>) -> Vec<&'a Arc<Part>> {
    if by_body(booklet) { looked_up(booklet).map(|body| &body.body).collect() } else { Vec::new() }
}

/// The page of all bodies: with what goes into each, or with links to their own pages.
pub(super) fn page(booklet: &Booklet<'_>) -> Draft {
    let all: Vec<&BodyMixups> = looked_up(booklet).collect();
    if by_body(booklet) {
        let links = all.iter().map(|body| {
            let mut link = body_link(booklet, &body.body);
            link["href"] = booklet.link(&addresses::closed_body(&body.body.number)).into();
            link["name"] = body.body.name.as_str().into();
            link
        });
        return draft(booklet, &[], links.collect());
    }
    draft(booklet, &all, Vec::new())
}

/// The page of one body.
pub(super) fn body_page(booklet: &Booklet<'_>, part: &Part) -> Draft {
    let all: Vec<&BodyMixups> = booklet.input.mixups.body(&part.number).into_iter().collect();
    let mut draft = draft(booklet, &all, Vec::new());
    draft.title = format!("What is inside a closed {} {}", part.number, part.name);
    draft
}

fn draft(booklet: &Booklet<'_>, found: &[&BodyMixups], links: Vec<Value>) -> Draft {
    let choices: Vec<Value> = found
        .iter()
        .flat_map(|body| conductors(body).into_values().map(|conductor| choice(booklet, body, conductor)))
        .collect();
    let mut data = closed_json();
    data["cases"] = choices.into();
    data["mark"] = booklet.input.catalogue.settings.decimal_mark.to_string().into();
    let values = json!({
        "tolerance": booklet.numerals.shortest(STAND_OUT_TOLERANCE.mm(), 1),
        "data": script_data(booklet, &data),
        "bodies": found.iter().map(|body| section(booklet, body)).collect::<Vec<_>>(),
        "links": links,
    });
    Draft { layout: "closed", title: "What is inside a closed fitting".to_owned(), kind: "Look-up", values }
}

fn looked_up<'a>(booklet: &Booklet<'a>) -> impl Iterator<Item = &'a BodyMixups> {
    booklet.input.mixups.bodies.iter().filter(|body| is_looked_up(body))
}

fn is_looked_up(body: &BodyMixups) -> bool {
    body.parts.len() > 1
}

/// Whether each body has a page of its own.
fn by_body(booklet: &Booklet<'_>) -> bool {
    let lines = || looked_up(booklet).map(|body| body.cases.len() + body.kits.len()).sum::<usize>();
    *booklet.by_body.get_or_init(|| lines() > MOST_LINES)
}

/// The conductors that a body's fittings hold, by their ids.
fn conductors(body: &BodyMixups) -> BTreeMap<&str, &Arc<Conductor>> {
    body.cases.iter().map(|case| (case.conductor.id.as_str(), &case.conductor)).collect()
}

/// A body on a conductor, with all that goes together there: in which state it would read what.
fn choice(booklet: &Booklet<'_>, body: &BodyMixups, conductor: &Conductor) -> Value {
    let named = closed_by_name(body, &conductor.id);
    let inside = named.iter().map(|ways| {
        let link = link(booklet, &ways[0]);
        let differ = ways.iter().any(|inside| inside.summary != ways[0].summary);
        let ways = ways.iter().map(|inside| {
            let mut way = inside.to_json(booklet.numerals);
            let of = if differ { vec![inside.fitting.number.as_str()] } else { Vec::new() };
            way["words"] = words(inside, &of).into();
            way["noticed"] = noticed(body, conductor, inside).into();
            way["found"] = inside.found.rank().into();
            way["class"] = class(inside).into();
            way["seated"] = inside.seated.map(Interval::to_json).into();
            way["tensioned"] = inside.tensioned.map(Interval::to_json).into();
            way
        });
        json!({ "text": link["text"], "href": link["href"], "ways": ways.collect::<Vec<_>>() })
    });
    json!({
        "text": format!("{} {} on {}", body.body.number, body.body.name, conductor.name),
        "body": body.body.number,
        "conductor": conductor.id,
        "inside": inside.collect::<Vec<_>>(),
        "card": under_load(booklet, body, conductor),
        "unmeasured": unmeasured_once_closed(body, conductor),
    })
}

/// What is said where no fitting of the body on that conductor has a stand-out to be measured from outside; nobody may open
/// one to measure.
fn unmeasured_once_closed(body: &BodyMixups, conductor: &Conductor) -> &'static str {
    let fittings =
        || body.cases.iter().filter(|case| case.conductor.id == conductor.id).map(|case| &case.fitting);
    let from = || fittings().map(|fitting| fitting.stand_out.as_ref().map(|stated| stated.from));
    if from().all(|from| from == Some(StandOutFrom::None)) {
        "Once it is closed, nothing can be measured from outside: loosen nothing to measure."
    } else if from().all(|from| matches!(from, Some(StandOutFrom::None | StandOutFrom::ScrewGap))) {
        "The gap under its screw is measured, not a stand-out: it can't be looked up here. Read stamp and mark."
    } else {
        ""
    }
}

/// What is done where a wrong part can be inside: as the cards of the fittings say it.
fn under_load(booklet: &Booklet<'_>, body: &BodyMixups, conductor: &Conductor) -> String {
    let fittings =
        body.cases.iter().filter(|case| case.conductor.id == conductor.id).map(|case| &case.fitting);
    let said: BTreeSet<&str> = fittings
        .filter_map(|fitting| match &booklet.input.facts.get(&fitting.number)?.content {
            Content::Fitting(facts) => Some(facts.if_wrong.under_load.trim_end_matches('.')),
            Content::Body(_) => None,
        })
        .filter(|text| !text.is_empty())
        .collect();
    said.into_iter().map(capital).collect::<Vec<_>>().join(". ")
}

fn link(booklet: &Booklet<'_>, inside: &PossibleInside) -> Value {
    match &inside.kit {
        Some(kit) => {
            let mut link = fitting_link(booklet, kit);
            link["text"] = format!("all parts of {}", kit.number).into();
            link["name"] = format!("{}: all its parts", kit.name).into();
            link
        }
        None => {
            let mut link = part_link(booklet, &inside.part);
            link["text"] = format!("{} {}", inside.part.number, inside.part.name).into();
            link
        }
    }
}

/// What it comes to, in these fittings where it does not come to the same in all.
fn words(inside: &PossibleInside, fittings: &[&str]) -> String {
    let stamp = &inside.part.stamp;
    let stamp = if stamp.is_empty() { String::new() } else { format!(", stamp {stamp}") };
    let fittings = if fittings.is_empty() { String::new() } else { format!(" in {}", fittings.join(", ")) };
    format!("{}{fittings}{stamp}", inside.summary.words())
}

fn section(booklet: &Booklet<'_>, body: &BodyMixups) -> Value {
    let conductors = conductors(body).into_values().map(|conductor| {
        let lines = lines(booklet, body, conductor);
        let card = under_load(booklet, body, conductor);
        json!({
            "caption": format!("On {}", conductor.name),
            "lines": lines,
            "unmeasured": unmeasured_once_closed(body, conductor),
            "none": if card.is_empty() { capital(NONE_FITS) } else { card },
        })
    });
    json!({
        "number": body.body.number,
        "link": body_link(booklet, &body.body),
        "conductors": conductors.collect::<Vec<_>>(),
    })
}

/// How it is drawn.
fn class(inside: &PossibleInside) -> &'static str {
    match inside.found {
        Meaning::Hidden => "hidden-danger",
        Meaning::Seen => "seen-danger",
        Meaning::Other => "",
        Meaning::Right => "right-part",
    }
}

/// What it comes to in each fitting of the body on that conductor.
fn comes<'b>(body: &'b BodyMixups, conductor: &Conductor, inside: &PossibleInside) -> Vec<&'b Consequence> {
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
fn noticed(body: &BodyMixups, conductor: &Conductor, inside: &PossibleInside) -> &'static str {
    if inside.found != Meaning::Hidden {
        return "";
    }
    comes(body, conductor, inside).into_iter().find_map(unmeasured).unwrap_or_default()
}

/// A line of a table: a part or kit in the fittings in which it comes to the same, with where it stands out in each.
struct Row {
    inside: PossibleInside,
    noticed: &'static str,
    fittings: Vec<String>,
    seated: Vec<String>,
    tensioned: Vec<String>,
}

impl Row {
    fn of(inside: PossibleInside, noticed: &'static str, numerals: Numerals) -> Self {
        Self {
            noticed,
            fittings: vec![inside.fitting.number.clone()],
            seated: vec![in_words(inside.seated, numerals)],
            tensioned: vec![in_words(inside.tensioned, numerals)],
            inside,
        }
    }

    /// Whether both are the same part or kit.
    fn is_of(&self, other: &Self) -> bool {
        let called = |row: &Self| {
            (row.inside.part.number.clone(), row.inside.kit.as_ref().map(|kit| kit.number.clone()))
        };
        called(self) == called(other)
    }

    fn comes_to_the_same(&self, other: &Self) -> bool {
        let (one, two) = (&self.inside, &other.inside);
        self.is_of(other) && (one.summary, one.found, self.noticed) == (two.summary, two.found, other.noticed)
    }

    /// Takes in where another stands out, each window once.
    fn join(&mut self, other: Self) {
        let lists = [
            (&mut self.fittings, other.fittings),
            (&mut self.seated, other.seated),
            (&mut self.tensioned, other.tensioned),
        ];
        for (said, more) in lists {
            let new: Vec<String> = more.into_iter().filter(|one| !said.contains(one)).collect();
            said.extend(new);
        }
    }

    /// As it is filled in; with its fittings where it comes to something else in others.
    fn told(&self, booklet: &Booklet<'_>, all: &[Self]) -> Value {
        let differs = all.iter().filter(|other| other.is_of(self)).count() > 1;
        let fittings = self.fittings.iter().map(String::as_str).filter(|_| differs);
        json!({
            "class": class(&self.inside),
            "part": link(booklet, &self.inside),
            "seated": self.seated.join(" or "),
            "tensioned": self.tensioned.join(" or "),
            "noticed": self.noticed,
            "words": words(&self.inside, &fittings.collect::<Vec<_>>()),
        })
    }
}

/// A line for each way in which a part or kit is right or wrong there. Fittings in which it comes to the same share one.
fn lines(booklet: &Booklet<'_>, body: &BodyMixups, conductor: &Conductor) -> Vec<Value> {
    let mut rows: Vec<Row> = Vec::new();
    for inside in closed_with(body, &conductor.id) {
        let noticed = noticed(body, conductor, &inside);
        let row = Row::of(inside, noticed, booklet.numerals);
        match rows.iter_mut().find(|there| there.comes_to_the_same(&row)) {
            Some(there) => there.join(row),
            None => rows.push(row),
        }
    }
    rows.iter().map(|row| row.told(booklet, &rows)).collect()
}

fn in_words(interval: Option<Interval>, numerals: Numerals) -> String {
    interval.map_or_else(|| "not known".to_owned(), |interval| interval.words(numerals))
}

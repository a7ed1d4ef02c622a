//! What a measured conductor can be: the conductors with what each takes and shows, for the page to look up.

use super::conductors;
use super::frame::Draft;
use super::input::Booklet;
use super::long::MOST_LINES;
use super::view::{conductor_link, fitting_link, fitting_links, script_json};
use crate::catalogue::Conductor;
use crate::facts;
use crate::mixups::{Readings, fittings_for, measured_json};
use serde_json::{Value, json};

/// In a catalogue of many fittings, where there are more for a conductor, its own page lists them.
const MOST_FITTINGS: usize = 2;

pub(super) fn page(booklet: &Booklet<'_>) -> Draft {
    let mut conductors: Vec<&Conductor> =
        booklet.input.catalogue.conductors.values().map(AsRef::as_ref).collect();
    conductors.sort_by(|a, b| {
        (a.section.overall_diameter.total_cmp(&b.section.overall_diameter)).then_with(|| a.id.cmp(&b.id))
    });
    let values = json!({
        "tolerance": booklet.numerals.shortest(Readings::default().tolerance.mm(), 2),
        "data": script_json(&data(booklet)),
        "conductors": conductors.iter().map(|conductor| line(booklet, conductor)).collect::<Vec<_>>(),
    });
    Draft { layout: "hand", title: "What is in my hand".to_owned(), kind: "Look-up", values }
}

fn line(booklet: &Booklet<'_>, conductor: &Conductor) -> Value {
    let printed = facts::conductor(conductor, booklet.numerals);
    let mut line = conductor_link(booklet, conductor);
    line["diameter"] = printed.diameter.into();
    line["build"] = printed.build.into();
    line["material"] = printed.material.into();
    let fittings = booklet.uses.by_conductor.get(&conductor.id);
    let many = fittings.is_some_and(|fittings| too_many(booklet, fittings.len()));
    line["fittings"] = fitting_links(booklet, fittings.filter(|_| !many)).into();
    line["many"] = if many { fittings.map_or(0, Vec::len).into() } else { Value::Null };
    line
}

/// What look-ups go by, with what the page shows of each conductor.
fn data(booklet: &Booklet<'_>) -> Value {
    let catalogue = booklet.input.catalogue;
    let mut data = measured_json(catalogue);
    for entry in data["conductors"].as_array_mut().into_iter().flatten() {
        let conductor = entry["id"].as_str().and_then(|id| catalogue.conductors.get(id));
        let Some(conductor) = conductor else { continue };
        entry["text"] = conductor.name.as_str().into();
        entry["href"] = conductor_link(booklet, conductor)["href"].take();
        entry["measure"] = conductors::build(booklet, conductor).into();
        entry["fittings"] = fittings(booklet, conductor).into();
    }
    data
}

/// The fittings for a conductor; where they are many, where they all stand.
fn fittings(booklet: &Booklet<'_>, conductor: &Conductor) -> Vec<Value> {
    let all: Vec<_> = fittings_for(booklet.input.catalogue, conductor).collect();
    if too_many(booklet, all.len()) {
        let href = conductor_link(booklet, conductor)["href"].take();
        let number = format!("{} of them", all.len());
        return vec![json!({ "number": number, "name": "for this conductor", "status": "", "href": href })];
    }
    let links = all.into_iter().map(|fitting| {
        let mut link = fitting_link(booklet, fitting);
        let (status, href) = (link["status"].take(), link["href"].take());
        json!({ "number": fitting.number, "name": fitting.name, "status": status, "href": href })
    });
    links.collect()
}

/// Whether so many fittings for a conductor are left to its own page.
fn too_many(booklet: &Booklet<'_>, of_conductor: usize) -> bool {
    booklet.input.catalogue.fittings.len() > MOST_LINES && of_conductor > MOST_FITTINGS
}

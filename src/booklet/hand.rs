//! What a measured conductor can be: the conductors with what each takes and shows, for the page to look up.

use super::conductors;
use super::frame::Draft;
use super::input::Booklet;
use super::view::{conductor_link, fitting_link, fitting_links, script_json};
use crate::catalogue::Conductor;
use crate::facts;
use crate::mixups::{Readings, fittings_for, measured_json};
use serde_json::{Value, json};

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
    let diameter = booklet.numerals.shortest(conductor.section.overall_diameter.mm(), 2);
    line["diameter"] = format!("{diameter}\u{a0}mm").into();
    line["build"] = printed.build.into();
    line["material"] = printed.material.into();
    line["fittings"] = fitting_links(booklet, booklet.uses.by_conductor.get(&conductor.id)).into();
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
        entry["fittings"] = fittings_for(catalogue, conductor)
            .map(|fitting| {
                let mut link = fitting_link(booklet, fitting);
                json!({ "number": fitting.number, "name": fitting.name, "status": link["status"].take(), "href": link["href"].take() })
            })
            .collect();
    }
    data
}

//! What a measured conductor can be: the table that the page looks up.

use super::conductors;
use super::frame::Draft;
use super::input::Booklet;
use super::view::{conductor_link, fitting_link, fitting_links, script_json};
use crate::catalogue::Conductor;
use crate::facts;
use crate::mixups::{Readings, Scratch, Shape, features, shape, told_apart};
use crate::section::{Construction, Magnetic};
use crate::units::Length;
use serde_json::{Map, Value, json};

/// Conductors further apart than this are told apart by the caliper alone, in millimetres.
const FAR_APART: f64 = 1.0;

pub(super) fn page(booklet: &Booklet<'_>) -> Draft {
    let mut conductors: Vec<&Conductor> =
        booklet.input.catalogue.conductors.values().map(AsRef::as_ref).collect();
    conductors.sort_by(|a, b| {
        (a.section.overall_diameter.total_cmp(&b.section.overall_diameter)).then_with(|| a.id.cmp(&b.id))
    });
    let data = json!({
        "conductors": conductors.iter().map(|conductor| entry(booklet, conductor)).collect::<Vec<_>>(),
        "apart": apart(booklet, &conductors),
        "mark": booklet.input.catalogue.settings.decimal_mark,
    });
    let values = json!({
        "tolerance": booklet.numerals.shortest(Readings::default().tolerance.mm(), 2),
        "data": script_json(&data),
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

/// Everything that a hand, an eye, a caliper or a magnet finds on a conductor; unknown is null.
fn entry(booklet: &Booklet<'_>, conductor: &Conductor) -> Value {
    let found = features(conductor);
    let link = conductor_link(booklet, conductor);
    let fittings = booklet.uses.by_conductor.get(&conductor.id).into_iter().flatten().map(|fitting| {
        let link = fitting_link(booklet, fitting);
        let status = link["status"].as_str().unwrap_or_default();
        let name = format!("{} {}", fitting.number, fitting.name);
        json!({ "text": if status.is_empty() { name } else { format!("{name} – {status}") }, "href": link["href"] })
    });
    json!({
        "id": conductor.id,
        "text": conductor.name,
        "href": link["href"],
        "measure": conductors::build(booklet, conductor),
        "diameter": microns(conductor.section.overall_diameter),
        "tolerance": microns(conductor.diameter_tolerance.unwrap_or(Length::ZERO)),
        "wires": found.wires,
        "outer": found.outer_wires,
        "wire": found.wire_diameter.map(microns),
        "wireTolerance": microns(conductor.wire_diameter_tolerance.unwrap_or(Length::ZERO)),
        "shape": shape_word(shape(conductor)),
        "magnet": found.magnetic.map(magnet),
        "colour": found.scratch.map(colour),
        "worn": worn(conductor),
        "fittings": fittings.collect::<Vec<_>>(),
    })
}

/// What wear leaves alone, and how far it may go, of a grooved wire.
fn worn(conductor: &Conductor) -> Value {
    let Construction::Grooved(grooved) = &conductor.construction else { return Value::Null };
    let stop = conductor.wear.as_ref().and_then(|limits| limits.stop_height);
    json!({
        "width": microns(grooved.width),
        "height": microns(grooved.height),
        "lowest": microns(stop.unwrap_or(grooved.height / 2.0)),
    })
}

/// What tells each conductor from each that a caliper may take for it.
fn apart(booklet: &Booklet<'_>, conductors: &[&Conductor]) -> Map<String, Value> {
    let mut apart = Map::new();
    for (index, one) in conductors.iter().enumerate() {
        let near = |other: &&&Conductor| {
            (other.section.overall_diameter - one.section.overall_diameter).mm() <= FAR_APART
        };
        for other in conductors[index + 1..].iter().take_while(near) {
            apart.insert(format!("{}|{}", one.id, other.id), told_apart(one, other, booklet.numerals).into());
            apart.insert(format!("{}|{}", other.id, one.id), told_apart(other, one, booklet.numerals).into());
        }
    }
    apart
}

fn shape_word(shape: Shape) -> &'static str {
    match shape {
        Shape::Round => "round",
        Shape::Grooved => "grooved",
        Shape::Rope => "rope",
        Shape::Tube => "tube",
        Shape::Bar => "bar",
    }
}

fn magnet(magnetic: Magnetic) -> &'static str {
    match magnetic {
        Magnetic::No => "no",
        Magnetic::Slight => "slight",
        Magnetic::Yes => "yes",
    }
}

fn colour(scratch: Scratch) -> &'static str {
    match scratch {
        Scratch::Copper => "copper",
        Scratch::Grey => "grey",
    }
}

/// Millimetres to the last thousandth, so that no file differs by a last bit.
fn microns(length: Length) -> f64 {
    (length.mm() * 1000.0).round() / 1000.0
}

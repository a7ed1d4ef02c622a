//! A conductor's page: how to know it, what it can be taken for, its figures, its fittings.

use super::frame::Draft;
use super::input::Booklet;
use super::view::{fact, facts, fitting_links, note, or_else};
use super::{addresses, figures, look_alikes};
use crate::catalogue::Conductor;
use crate::facts::{self, words};
use crate::section::{Citation, Construction, Layer, LayerRole};
use crate::units::{Area, Force, Length, LinearMass, LinearResistance};
use serde_json::{Value, json};

pub(super) fn page(booklet: &Booklet<'_>, conductor: &Conductor) -> Draft {
    let printed = facts::conductor(conductor, booklet.numerals);
    let values = json!({
        "id": conductor.id,
        "name": conductor.name,
        "caution": printed.caution,
        "facts": to_know_it(booklet, conductor),
        "figures": figures::of_conductor(booklet, conductor),
        "fittings": fitting_links(booklet, booklet.uses.by_conductor.get(&conductor.id)),
        "look_alikes": look_alikes::of(booklet, conductor),
        "figures_table": figures_table(booklet, conductor),
        "layers": layers(booklet, conductor),
        "source": citation(&conductor.source),
        "sources": conductor.section.sources,
        "wear": wear(booklet, conductor),
        "note": note(booklet, &conductor.id),
    });
    Draft { layout: "conductor", title: conductor.name.clone(), kind: words::duty(conductor.duty), values }
}

/// The link to its wear table, where it has one.
fn wear(booklet: &Booklet<'_>, conductor: &Conductor) -> Value {
    match conductor.construction {
        Construction::Grooved(_) => json!({ "href": booklet.link(&addresses::wear_of(conductor)) }),
        _ => Value::Null,
    }
}

/// What a lineman can check of a conductor.
pub(super) fn to_know_it(booklet: &Booklet<'_>, conductor: &Conductor) -> Vec<Value> {
    let printed = facts::conductor(conductor, booklet.numerals);
    let mut lines = facts([
        fact("Material", printed.material),
        fact("Build", printed.build),
        fact("Measures", printed.diameter),
        fact("Metal section", printed.section),
        fact("Nominal size", printed.nominal.unwrap_or_default()),
        fact("Neck", printed.neck.unwrap_or_default()),
    ]);
    lines.extend(printed.identity.iter().filter_map(|(name, text)| {
        let mut name = name.clone();
        if let Some(first) = name.get_mut(..1) {
            first.make_ascii_uppercase();
        }
        fact(&name, text.as_str())
    }));
    lines
}

fn figures_table(booklet: &Booklet<'_>, conductor: &Conductor) -> Vec<Value> {
    let (section, stated, numerals) = (&conductor.section, &conductor.stated, booklet.numerals);
    let area = |area: Option<Area>| area.map(|area| numerals.with_unit(area.mm2(), 2, "mm²"));
    let length = |length: Option<Length>| length.map(|length| numerals.length(length, 2));
    let force = |force: Option<Force>| force.map(|force| numerals.with_unit(force.kn(), 2, "kN"));
    let written = |key: &str, value: Option<f64>, unit: &str| {
        let field = format!("stated.{key}");
        value.map(|value| conductor.origin.with_unit(&field, value, unit, numerals))
    };
    let mass = |mass: Option<LinearMass>| mass.map(|mass| numerals.with_unit(mass.kg_per_km(), 1, "kg/km"));
    let resistance = |resistance: Option<LinearResistance>| {
        resistance.map(|resistance| numerals.with_unit(resistance.ohm_per_km(), 4, "Ω/km"))
    };
    let rows = [
        (
            "Metal section",
            area(Some(section.metal)),
            written("section_mm2", stated.section.map(Area::mm2), "mm²"),
        ),
        ("of it, the outer wires", area(section.outer), None),
        ("of it, the core", area(section.core), None),
        (
            "Overall diameter",
            length(Some(section.overall_diameter)),
            written("overall_diameter_mm", stated.overall_diameter.map(Length::mm), "mm"),
        ),
        ("Area of the circle on it; not the section", area(Some(section.circle)), None),
        ("Fill ratio", Some(numerals.fixed(section.fill_ratio, 3)), None),
        ("Neck", length(section.neck), None),
        (
            "Mass",
            mass(section.mass),
            written("mass_kg_per_km", stated.mass.map(LinearMass::kg_per_km), "kg/km"),
        ),
        (
            "Resistance at 20\u{a0}°C",
            resistance(section.resistance_20c),
            written(
                "resistance_20c_ohm_per_km",
                stated.resistance_20c.map(LinearResistance::ohm_per_km),
                "Ω/km",
            ),
        ),
        (
            "Breaking load",
            force(section.breaking_load),
            written("breaking_load_kN", stated.breaking_load.map(Force::kn), "kN"),
        ),
    ];
    let known = rows.into_iter().filter(|(_, computed, stated)| computed.is_some() || stated.is_some());
    let line = |(name, computed, stated): (&str, Option<String>, Option<String>)| {
        json!({
            "name": name,
            "computed": computed.unwrap_or_else(|| "not computed".to_owned()),
            "stated": stated.unwrap_or_else(|| "not stated".to_owned()),
        })
    };
    known.map(line).collect()
}

fn layers(booklet: &Booklet<'_>, conductor: &Conductor) -> Vec<Value> {
    let layers = &conductor.section.layers;
    let composite = matches!(conductor.construction, Construction::Composite(_));
    let line = |(number, layer): (usize, &Layer)| {
        let group = match layer.role {
            LayerRole::Core if composite => ", core",
            _ => "",
        };
        json!({
            "name": if number == 0 { format!("Centre{group}") } else { format!("Layer {number}{group}") },
            "wires": layer.wires.to_string(),
            "wire": booklet.numerals.length(layer.wire_diameter, 2),
            "over": booklet.numerals.length(layer.pitch_radius * 2.0 + layer.wire_diameter, 2),
        })
    };
    layers.iter().enumerate().map(line).collect()
}

/// A source in one line; empty where nothing is stated.
pub(super) fn citation(source: &Citation) -> String {
    let edition =
        if source.edition.is_empty() { String::new() } else { format!("edition {}", source.edition) };
    let texts = [&source.standard, &edition, &source.table, &source.note];
    texts.into_iter().filter(|text| !text.is_empty()).map(String::as_str).collect::<Vec<_>>().join(", ")
}

/// How a conductor is built and what it is made of, in one line.
pub(super) fn build(booklet: &Booklet<'_>, conductor: &Conductor) -> String {
    let printed = facts::conductor(conductor, booklet.numerals);
    [printed.build, printed.diameter, or_else(&printed.material, "material not stated")].join(", ")
}

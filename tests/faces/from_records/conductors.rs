//! What a card says of a conductor: name, material, diameter and metal section.

use super::records::{Records, list, places, text};
use super::{Needed, On, words};
use serde_yaml::Value;
use std::f64::consts::PI;

pub fn needed(records: &Records, conductor: &Value, small: bool, list: &mut Vec<Needed>) {
    let mut add = |on, text: String| list.push(Needed::new("conductor", on, text));
    add(On::Front, text(conductor, "name"));
    add(On::Front, material(records, conductor));
    add(On::Front, diameter(records, conductor));
    add(On::Front, section(records, conductor));
    if let (Some(size), false) = (conductor["nominal_size_mm2"].as_f64(), small) {
        add(On::Front, format!("{} mm²", records.bare(size, 2)));
    }
    add(On::Front, text(conductor, "caution"));
}

fn material(records: &Records, conductor: &Value) -> String {
    let id = text(conductor, "material");
    let stated = records.materials.get(&id).map(|material| text(material, "name"));
    stated.or_else(|| words::built_in_material(&id).map(str::to_owned)).unwrap_or_default()
}

/// The overall diameter that the record states, of the whole or of what it is built from; else from the wires.
fn diameter(records: &Records, conductor: &Value) -> String {
    let construction = &conductor["construction"];
    let size = |kind: &str, key: &str| construction[kind][key].as_f64();
    if let (Some(height), Some(width)) = (size("grooved", "height_mm"), size("grooved", "width_mm")) {
        return format!("{} mm high, {} mm wide", records.number(height, 2), records.number(width, 2));
    }
    let stated = [
        &conductor["stated"]["overall_diameter_mm"],
        &construction["solid"]["diameter_mm"],
        &construction["rope"]["diameter_mm"],
        &construction["tube"]["outside_diameter_mm"],
    ];
    let stated = stated.into_iter().find_map(|value| records.written(value));
    let computed = || across(&construction["stranded"]).map(|diameter| records.number(diameter, 1));
    stated.or_else(computed).map(|diameter| format!("{diameter} mm")).unwrap_or_default()
}

/// Across a strand of equal wires laid in full layers.
fn across(strand: &Value) -> Option<f64> {
    let wire = strand["wire_diameter_mm"].as_f64()?;
    let full = [(1, 1.0), (2, 2.0), (3, 1.0 + 2.0 / 3_f64.sqrt()), (4, 1.0 + 2_f64.sqrt())];
    let full = full.into_iter().chain([(7, 3.0), (19, 5.0), (37, 7.0), (61, 9.0), (91, 11.0)]);
    let count = strand["wires"].as_u64()?;
    full.into_iter().find(|(wires, _)| *wires == count).map(|(_, factor)| factor * wire)
}

/// The metal section that the record states, else from the wires; a grooved wire's or a rope's is left to tests of its own.
fn section(records: &Records, conductor: &Value) -> String {
    if let Some(stated) = records.written(&conductor["stated"]["section_mm2"]) {
        return format!("{stated} mm²");
    }
    let construction = &conductor["construction"];
    let wires = |group: &Value| Some(count(group)? * disc(group["wire_diameter_mm"].as_f64()?));
    let composite = &construction["composite"];
    let tube = &construction["tube"];
    let area = wires(&construction["stranded"])
        .or_else(|| Some(wires(&composite["core"])? + wires(&composite["outer"])?))
        .or_else(|| construction["solid"]["diameter_mm"].as_f64().map(disc))
        .or_else(|| {
            let (outside, wall) = (tube["outside_diameter_mm"].as_f64()?, tube["wall_mm"].as_f64()?);
            Some(disc(outside) - disc(outside - 2.0 * wall))
        });
    area.map(|area| format!("{} mm²", records.number(area, places(area)))).unwrap_or_default()
}

fn count(group: &Value) -> Option<f64> {
    let layers = list(group, "layers").filter_map(Value::as_f64);
    group["wires"].as_f64().or_else(|| Some(layers.sum()).filter(|sum| *sum > 0.0))
}

fn disc(diameter: f64) -> f64 {
    PI * diameter * diameter / 4.0
}

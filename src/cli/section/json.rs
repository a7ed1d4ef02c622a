//! The answer for other programs: numbers unrounded, and what does not apply absent.

use super::answer::{Answer, WornAnswer};
use crate::section::Layer;
use serde_json::{Map, Value, json};

pub(super) fn object(answer: &Answer) -> Value {
    let section = &answer.section;
    let mut object = numbers([
        ("section_mm2", Some(section.metal.mm2())),
        ("section_least_mm2", section.band.map(|band| band.least().mm2())),
        ("section_most_mm2", section.band.map(|band| band.most().mm2())),
        ("overall_diameter_mm", Some(section.overall_diameter.mm())),
        ("circle_area_mm2", Some(section.circle.mm2())),
        ("fill_ratio", Some(section.fill_ratio)),
        ("outer_section_mm2", section.outer.map(|area| area.mm2())),
        ("core_section_mm2", section.core.map(|area| area.mm2())),
        ("mass_kg_per_km", section.mass.map(|mass| mass.kg_per_km())),
        ("resistance_20c_ohm_per_km", section.resistance_20c.map(|resistance| resistance.ohm_per_km())),
        ("temperature_c", answer.temperature.map(|(temperature, _)| temperature.celsius())),
        ("resistance_ohm_per_km", answer.temperature.map(|(_, resistance)| resistance.ohm_per_km())),
        ("breaking_load_kN", section.breaking_load.map(|load| load.kn())),
        ("neck_mm", section.neck.map(|neck| neck.mm())),
    ]);
    if !section.layers.is_empty() {
        object.insert("layers".into(), section.layers.iter().map(layer).collect());
    }
    if let Some(answer) = &answer.worn {
        object.insert("worn".into(), worn(answer));
    }
    object.insert("sources".into(), section.sources.clone().into());
    if !answer.warnings.is_empty() {
        object.insert("warnings".into(), answer.warnings.clone().into());
    }
    Value::Object(object)
}

fn worn(answer: &WornAnswer) -> Value {
    let left = &answer.metal;
    Value::Object(numbers([
        ("height_mm", Some(answer.worn.height.mm())),
        ("section_mm2", Some(answer.worn.section.mm2())),
        ("worn_percent", Some(answer.percent)),
        ("flat_width_mm", Some(answer.worn.flat_width.mm())),
        ("resistance_20c_ohm_per_km", left.resistance_20c.map(|resistance| resistance.ohm_per_km())),
        ("resistance_ohm_per_km", answer.at_temperature.map(|resistance| resistance.ohm_per_km())),
        ("breaking_load_kN", left.breaking_load.map(|load| load.kn())),
    ]))
}

fn numbers<const N: usize>(numbers: [(&str, Option<f64>); N]) -> Map<String, Value> {
    numbers.into_iter().filter_map(|(name, value)| Some((name.to_owned(), value?.into()))).collect()
}

fn layer(layer: &Layer) -> Value {
    json!({
        "wires": layer.wires,
        "pitch_radius_mm": layer.pitch_radius.mm(),
        "wire_diameter_mm": layer.wire_diameter.mm(),
    })
}

//! Conductors as JSON.

use super::construction::construction;
use super::object::Object;
use super::uses::Uses;
use crate::catalogue::{Conductor, Stated, WearLimits};
use crate::section::{Citation, Layer, Section};
use serde_json::Value;

pub(super) fn object(conductor: &Conductor, uses: &Uses<'_>) -> Value {
    let mut object = Object::new();
    object.put("id", conductor.id.as_str());
    object.put("name", conductor.name.as_str());
    object.put("duty", conductor.duty.word());
    object.put("material", conductor.material.id.as_str());
    object.part("construction", construction(&conductor.construction));
    object.mm2("nominal_size_mm2", conductor.nominal_size);
    object.part("tolerance", tolerance(conductor));
    object.part("stated", stated(&conductor.stated));
    object.part("computed", computed(&conductor.section));
    object.part("wear", conductor.wear.as_ref().map_or_else(Object::new, wear));
    object.part("identity", identity(conductor));
    object.part("source", source(&conductor.source));
    object.text("caution", &conductor.caution);
    object.list("fittings", uses.get(conductor.id.as_str()).into_iter().flatten().copied());
    object.into()
}

fn tolerance(conductor: &Conductor) -> Object {
    let mut object = Object::new();
    object.mm("overall_diameter_mm", conductor.diameter_tolerance);
    object.mm("wire_diameter_mm", conductor.wire_diameter_tolerance);
    object
}

fn stated(stated: &Stated) -> Object {
    let mut object = Object::new();
    object.mm2("section_mm2", stated.section);
    object.mm("overall_diameter_mm", stated.overall_diameter);
    object.number("mass_kg_per_km", stated.mass.map(|mass| mass.kg_per_km()));
    object.kn("breaking_load_kN", stated.breaking_load);
    object.number("resistance_20c_ohm_per_km", stated.resistance_20c.map(|value| value.ohm_per_km()));
    object
}

/// The keys that the command `section` gives.
fn computed(section: &Section) -> Object {
    let mut object = Object::new();
    object.mm2("section_mm2", section.metal);
    if let Some(band) = section.band {
        object.mm2("section_least_mm2", band.least());
        object.mm2("section_most_mm2", band.most());
    }
    object.mm("overall_diameter_mm", section.overall_diameter);
    object.mm2("circle_area_mm2", section.circle);
    object.number("fill_ratio", section.fill_ratio);
    object.mm2("outer_section_mm2", section.outer);
    object.mm2("core_section_mm2", section.core);
    object.number("mass_kg_per_km", section.mass.map(|mass| mass.kg_per_km()));
    object.number("resistance_20c_ohm_per_km", section.resistance_20c.map(|value| value.ohm_per_km()));
    object.kn("breaking_load_kN", section.breaking_load);
    if !section.layers.is_empty() {
        object.list("layers", section.layers.iter().map(layer));
    }
    object.mm("neck_mm", section.neck);
    object.list("sources", section.sources.iter().map(String::as_str));
    object
}

fn layer(layer: &Layer) -> Value {
    let mut object = Object::new();
    object.put("wires", layer.wires);
    object.mm("pitch_radius_mm", layer.pitch_radius);
    object.mm("wire_diameter_mm", layer.wire_diameter);
    object.into()
}

fn wear(wear: &WearLimits) -> Object {
    let mut object = Object::new();
    object.number("limit_percent", wear.limit_percent);
    object.put("basis", wear.basis.word());
    object.mm("plan_height_mm", wear.plan_height);
    object.mm("replace_height_mm", wear.replace_height);
    object.mm("stop_height_mm", wear.stop_height);
    object
}

fn identity(conductor: &Conductor) -> Object {
    let mut object = Object::new();
    object.text("drum_tag", &conductor.identity.drum_tag);
    object.text("tracer", &conductor.identity.tracer);
    object.text("grooves", &conductor.identity.grooves);
    object
}

pub(super) fn source(source: &Citation) -> Object {
    let mut object = Object::new();
    object.text("standard", &source.standard);
    object.text("edition", &source.edition);
    object.text("table", &source.table);
    object.text("note", &source.note);
    object
}

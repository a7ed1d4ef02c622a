//! Parts, their marks and their geometry as JSON.

use super::object::Object;
use super::uses::Uses;
use crate::catalogue::{Mark, Part, Proof, Reuse, StampPlace};
use crate::grip::{Geometry, Measured};
use serde_json::Value;

pub(super) fn object(part: &Part, uses: &Uses<'_>) -> Value {
    let mut object = Object::new();
    object.put("number", part.number.as_str());
    object.put("name", part.name.as_str());
    object.put("role", part.role.word());
    object.put("material", part.material.id.as_str());
    object.text("drawing", &part.drawing);
    object.text("stamp", &part.stamp);
    object.known("stamp_on", part.stamp_on.map(StampPlace::word));
    object.known("mark", part.mark.as_ref().map(mark));
    object.known("mark_seen_after_assembly", part.mark_seen_after_assembly);
    object.known("reuse", part.reuse.map(Reuse::word));
    object.put("status", part.status.word());
    object.text("interface", &part.interface);
    object.list("proven_on", part.proven_on.iter().map(proof));
    if let Some(stated) = &part.geometry {
        let mut named = Object::new();
        named.part(stated.key(), geometry(stated));
        object.part("geometry", named);
    }
    object.list("fittings", uses.get(part.number.as_str()).into_iter().flatten().copied());
    object.into()
}

pub(super) fn mark(mark: &Mark) -> Value {
    let mut object = Object::new();
    object.put("colour", mark.colour.letters());
    object.text("text", &mark.text);
    object.put("notches", mark.notches);
    object.into()
}

fn proof(proof: &Proof) -> Value {
    let mut object = Object::new();
    object.put("conductor", proof.conductor.id.as_str());
    object.text("body", &proof.body);
    object.kn("holding_load_kN", proof.holding_load);
    object.text("report", &proof.report);
    object.date("date", proof.date);
    object.into()
}

fn geometry(geometry: &Geometry) -> Object {
    let mut object = Object::new();
    for measurement in geometry.measurements() {
        let key = measurement.key;
        match geometry.measured(key) {
            None => {}
            Some(Measured::Length(length)) => object.mm(key, length),
            Some(Measured::Angle(angle)) => object.degrees(key, Some(angle)),
            Some(Measured::Count(count)) => object.put(key, count),
            Some(Measured::Range(range)) => object.mm_window(key, Some(range)),
            Some(Measured::Oval(width, height)) => {
                let mut oval = Object::new();
                oval.mm("width", width);
                oval.mm("height", height);
                object.part(key, oval);
            }
            Some(Measured::Text(text)) => object.put(key, text),
        }
    }
    object
}

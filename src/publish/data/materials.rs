//! Materials as JSON, with the keys of their records.

use super::conductors::source;
use super::object::Object;
use crate::section::{Magnetic, Material, SizeStep, Strength};
use serde_json::{Value, json};

pub(super) fn object(material: &Material) -> Value {
    let mut object = Object::new();
    object.put("id", material.id.as_str());
    object.put("name", material.name.as_str());
    object.put("group", material.group.word());
    object.number("density_kg_per_m3", material.density.map(|density| density.kg_per_m3()));
    object.number("resistivity_20c_nohm_m", material.resistivity_20c.map(|value| value.nohm_m()));
    object.number("temperature_coefficient_per_k", material.temperature_coefficient_per_k);
    object.known("strength_N_per_mm2", material.strength.as_ref().map(strength));
    object.number("strand_efficiency", material.strand_efficiency);
    object.known("strength_as_core_N_per_mm2", material.strength_as_core.as_ref().map(strength));
    if !material.contact_wire_strength.is_empty() {
        object.list("contact_wire_strength_N_per_mm2", material.contact_wire_strength.iter().map(of_size));
    }
    object.known("magnetic", material.magnetic.map(Magnetic::word));
    object.number("hardness_hb", material.hardness_hb);
    object.text("caution", &material.caution);
    object.part("source", source(&material.source));
    object.into()
}

/// A number, or rows by the diameter of the wire; the last may be open.
fn strength(strength: &Strength) -> Value {
    match strength {
        Strength::Constant(stress) => json!(stress.n_per_mm2()),
        Strength::ByDiameter(steps) => {
            let row = |up_to, strength| {
                let mut row = Object::new();
                row.mm("up_to_mm", up_to);
                row.number("strength", strength);
                Value::from(row)
            };
            steps.iter().map(|step| row(step.up_to, step.strength.n_per_mm2())).collect()
        }
    }
}

fn of_size(step: &SizeStep) -> Value {
    let mut row = Object::new();
    row.mm2("up_to_mm2", step.up_to);
    row.number("strength", step.strength.n_per_mm2());
    row.into()
}

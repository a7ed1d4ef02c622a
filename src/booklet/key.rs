//! Materials with their figures, and what hatching and lines of the drawings mean.

use super::frame::Draft;
use super::input::Booklet;
use super::{conductors, figures};
use crate::section::{Magnetic, Material, MaterialGroup, Strength};
use crate::units::Range;
use serde_json::{Value, json};

pub(super) fn page(booklet: &Booklet<'_>) -> Draft {
    let materials = booklet.input.catalogue.materials.values();
    let values = json!({
        "figures": figures::key(booklet),
        "materials": materials.map(|material| entry(booklet, material)).collect::<Vec<_>>(),
    });
    Draft { layout: "key", title: "Materials and lines".to_owned(), kind: "Booklet", values }
}

fn entry(booklet: &Booklet<'_>, material: &Material) -> Value {
    let numerals = booklet.numerals;
    let stress = |strength: &Option<Strength>| match strength {
        Some(Strength::Constant(stress)) => numerals.with_unit(stress.n_per_mm2(), 0, "N/mm²"),
        Some(Strength::ByDiameter(rows)) => {
            let stresses = rows.iter().map(|row| row.strength.n_per_mm2());
            let (least, most) = stresses.fold((f64::INFINITY, 0.0_f64), |(least, most), stress| {
                (stress.min(least), stress.max(most))
            });
            format!("{}, by wire diameter", numerals.range(Range::between(least, most), 0, "N/mm²"))
        }
        None => String::new(),
    };
    let number = |value: Option<f64>, places, unit: &str| {
        value.map_or_else(String::new, |value| {
            format!("{}\u{a0}{unit}", numerals.shortest(value, places)).trim().to_owned()
        })
    };
    json!({
        "id": material.id, "name": material.name, "caution": material.caution,
        "group": group(material.group),
        "density": number(material.density.map(|density| density.kg_per_m3()), 0, "kg/m³"),
        "resistivity": number(material.resistivity_20c.map(|value| value.nohm_m()), 2, "nΩ·m"),
        "coefficient": number(material.temperature_coefficient_per_k, 5, "per\u{a0}K"),
        "strength": stress(&material.strength),
        "as_core": stress(&material.strength_as_core),
        "magnet": material.magnetic.map_or("", magnet),
        "hardness": number(material.hardness_hb, 0, "HB"),
        "source": conductors::citation(&material.source),
    })
}

fn magnet(magnetic: Magnetic) -> &'static str {
    match magnetic {
        Magnetic::No => "does not pull",
        Magnetic::Slight => "a strong one pulls a little",
        Magnetic::Yes => "holds",
    }
}

fn group(group: MaterialGroup) -> &'static str {
    match group {
        MaterialGroup::Copper => "copper",
        MaterialGroup::Bronze => "bronze",
        MaterialGroup::Aluminium => "aluminium",
        MaterialGroup::Steel => "steel",
        MaterialGroup::Stainless => "stainless steel",
        MaterialGroup::Iron => "iron",
        MaterialGroup::Zinc => "zinc",
        MaterialGroup::Polymer => "polymer",
    }
}

//! What can be confused: mix-ups, look-alikes, measured conductors, closed fittings, ways out.

mod closed;
mod identify;
mod mixups;
mod ways_out;
mod worn;

use crate::fixtures::DEMO;
use fittingcards::catalogue::{Catalogue, load};
use fittingcards::source::{FilePath, MemoryWorld};

const SETTINGS: &str = "title: A\nowner: B\nedition: \"1\"\ndate: 2026-01-01\ncaution: C\n";

const BODY: &str = "number: B-1\nname: Body\nrole: body\nmaterial: aluminium-bronze\n\
    geometry: { body: { half_angle_deg: 5, length_mm: 70 } }\n";

/// A catalogue of four files; the catalogue must be sound.
fn catalogue(conductors: &str, parts: &str, fittings: &str) -> Catalogue {
    let world = MemoryWorld::new()
        .with(FilePath::catalogue("catalogue.yaml"), SETTINGS)
        .with(FilePath::catalogue("conductors/all.yaml"), conductors)
        .with(FilePath::catalogue("parts/all.yaml"), parts)
        .with(FilePath::catalogue("fittings/all.yaml"), fittings);
    let loaded = load(&world).unwrap();
    assert!(!loaded.findings.has_errors(), "{:?}", loaded.findings);
    loaded.catalogue
}

/// The catalogue that comes with the program.
fn demo() -> &'static Catalogue {
    &DEMO.catalogue
}

/// A strand of 19 wires.
fn strand(id: &str, wire: f64, material: &str) -> String {
    format!(
        "---\nid: {id}\nname: {id}\nduty: messenger\nmaterial: {material}\n\
         construction: {{ stranded: {{ wires: 19, wire_diameter_mm: {wire} }} }}\n"
    )
}

/// A collet of 3 slits of 1 mm, with what else its record says.
fn cone(number: &str, bore: f64, more: &str) -> String {
    format!(
        "---\nnumber: {number}\nname: {number}\nrole: cone\nmaterial: bronze-soft\n{more}\
         geometry: {{ collet: {{ bore_mm: {bore}, slits: 3, slit_width_mm: 1.0, half_angle_deg: 5, \
         length_mm: 60, stand_out_at_bore_mm: 6.0 }} }}\n"
    )
}

/// A dead-end of body B-1, with what else its record says.
fn fitting(number: &str, conductor: &str, cone: &str, more: &str) -> String {
    format!(
        "---\nnumber: {number}\nname: {number}\nfamily: cone-dead-end\nconductor: {conductor}\n\
         parts: [B-1, {cone}]\n{more}"
    )
}

//! What `data/catalogue.json` says of a record, against the record.

use super::{options, rendered, world};
use fittingcards::source::FilePath;
use serde_json::Value;
use std::fs;

/// One conductor of each construction, and materials with strengths of both forms.
const CONSTRUCTIONS: [&str; 7] = [
    "{ solid: { diameter_mm: 8.5 } }",
    "{ stranded: { layers: [1, 6, 12], wire_diameter_mm: 2.8, lay_ratios: [13.5, 12.5] } }",
    "{ composite: { core: { wires: 7, wire_diameter_mm: 2.68, material: steel-st1a }, \
       outer: { wires: 26, wire_diameter_mm: 3.45 } } }",
    "{ rope: { construction: 7x19, core: wsc, diameter_mm: 8.5, grade_N_per_mm2: 700.5 } }",
    "{ grooved: { height_mm: 12.34, width_mm: 12.34, apex_width_mm: 6.85, apex_depth_mm: 4.47, fillet_mm: 0.4, \
       lower_flank_deg: 27.5, upper_flank_deg: 51.5 } }",
    "{ tube: { outside_diameter_mm: 100.5, wall_mm: 5.5 } }",
    "{ bar: { width_mm: 40.5, thickness_mm: 10.5, corner_radius_mm: 1.5 } }",
];

const STRENGTH: &str = "[{ up_to_mm: 2.25, strength: 180.5 }, { up_to_mm: 3.25, strength: 175.5 }]";

fn read(text: &str) -> Value {
    serde_yaml::from_str(text).unwrap()
}

/// Sizes are odd on purpose: a value that is mixed up with another, or rounded, is seen.
#[test]
fn constructions_and_strengths_are_those_of_their_records() {
    let record = |nth: usize| {
        let (id, material, built) = (format!("w-{nth}"), ["odd", "odd-too"][nth % 2], CONSTRUCTIONS[nth]);
        format!("id: {id}\nname: {id}\nduty: other\nmaterial: {material}\nconstruction: {built}\n")
    };
    let records: Vec<String> = (0..CONSTRUCTIONS.len()).map(record).collect();
    let materials = format!(
        "id: odd\nname: Odd\ngroup: copper\nstrength_N_per_mm2: {STRENGTH}\n---\n\
         id: odd-too\nname: Odd too\ngroup: copper\nstrength_N_per_mm2: 422.5\nstrength_as_core_N_per_mm2: {STRENGTH}\n"
    );
    let world = world(1)
        .with(FilePath::catalogue("conductors/all.yaml"), records.join("---\n"))
        .with(FilePath::catalogue("materials/odd.yaml"), materials);
    let folder = tempfile::tempdir().unwrap();
    rendered(&world, &options(folder.path()));
    let data = read(&fs::read_to_string(folder.path().join("data/catalogue.json")).unwrap());
    let named = |kind: &str, id: &str| {
        let all = data[kind].as_array().unwrap();
        all.iter().find(|found| found["id"] == id).unwrap().clone()
    };
    for (nth, construction) in CONSTRUCTIONS.iter().enumerate() {
        assert_eq!(named("conductors", &format!("w-{nth}"))["construction"], read(construction));
    }
    let (odd, too) = (named("materials", "odd"), named("materials", "odd-too"));
    assert_eq!((&odd["strength_N_per_mm2"], &too["strength_N_per_mm2"]), (&read(STRENGTH), &read("422.5")));
    assert_eq!(
        (&odd["strength_as_core_N_per_mm2"], &too["strength_as_core_N_per_mm2"]),
        (&Value::Null, &read(STRENGTH))
    );
}

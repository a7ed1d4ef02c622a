//! The table of a full body: six parts by six columns on the smallest card.

use super::from_records::{Records, lost};
use super::made;
use fittingcards::cards::{Face, ItemMark};
use fittingcards::source::{FilePath, MemoryWorld};

const CONDUCTOR: &str = "id: messenger-cu-95\nname: Copper messenger wire 95\nduty: messenger\n\
                         material: copper-hard-drawn\n\
                         construction: { stranded: { wires: 19, wire_diameter_mm: 2.5 } }\n";
const CONE: &str = "number: ST-4136\nname: Gripping cone, copper 12.5\nrole: cone\nmaterial: st-cone-brass\n\
                    stamp: \"CU2 12.5\"\nstamp_on: thick-end\ninterface: collet-seat\n\
                    mark: { colour: GY, text: \"WO\", notches: 6, seen_after_assembly: true }\n\
                    geometry:\n  collet: { bore_mm: 12.8, slits: 3, slit_width_mm: 1.0, half_angle_deg: 5 }\n";
const FITTING: &str = "number: ST-4135\nname: Collet dead-end, copper 95\nfamily: cone-dead-end\n\
                       conductor: messenger-cu-95\nparts: [ST-4101, ST-4102, ST-4136]\nstamp: \"ST 41\"\n\
                       witness: A second person reads the stamp.\n";

/// The demo with one more cone and fitting in its largest body.
fn world(row: &str) -> MemoryWorld {
    let files =
        [("conductors/sixth.yaml", CONDUCTOR), ("parts/sixth.yaml", CONE), ("fittings/sixth.yaml", FITTING)];
    files.into_iter().fold(made::in_size("content", row), |world, (path, text)| {
        world.with(FilePath::catalogue(path), text)
    })
}

/// Each column says its fitting and its conductor, nothing is too much, and no type is smaller than the catalogue's least.
#[test]
fn six_parts_in_six_fittings_stand_on_every_size_with_their_conductors() {
    for row in made::sizes() {
        let world = world(row);
        let made = made::facts_and_cards(&world);
        let found = made.findings.sorted();
        let found = found.iter().filter(|finding| finding.message.contains("card ST-4101"));
        assert_eq!(found.map(|finding| finding.message.as_str()).collect::<Vec<_>>(), [""; 0], "{row}");
        let card = made.cards.iter().find(|card| card.number == "ST-4101").unwrap();
        assert_eq!(lost(&Records::of(&world), card, row.starts_with("ID-1")), [""; 0], "{row}");
        let rows = card.back.blocks.iter().filter(|block| block.name.starts_with("part-"));
        assert_eq!(rows.count(), 6, "{row}");
        assert!(smallest_type(&card.back) >= made.settings.limits.smallest_type.pt() - 0.01, "{row}");
    }
}

fn smallest_type(face: &Face) -> f64 {
    let items = face.blocks.iter().flat_map(|block| &block.items);
    let sizes = items.filter_map(|item| match &item.mark {
        ItemMark::Line { size, .. } => Some(size.pt()),
        _ => None,
    });
    sizes.fold(f64::INFINITY, f64::min)
}

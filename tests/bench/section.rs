//! How long it takes to compute one conductor: printed, never asserted.

use fittingcards::section::{
    Composite, Construction, Grooved, Group, Rope, RopeCore, Strands, compute, materials, profile, wires,
    worn,
};
use fittingcards::units::{Angle, Length, Stress};
use std::hint::black_box;
use std::sync::Arc;
use std::time::Instant;

const ROUNDS: u32 = 10_000;

fn group(wires: u32, diameter: f64) -> Group {
    Group { strands: Strands::Wires(wires), wire_diameter: Length::from_mm(diameter), lay_ratios: Vec::new() }
}

fn contact_wire() -> Grooved {
    Grooved {
        height: Length::from_mm(12.34),
        width: Length::from_mm(12.34),
        apex_width: Length::from_mm(6.80),
        apex_depth: Length::from_mm(4.47),
        fillet: Length::from_mm(0.40),
        lower_flank: Angle::from_degrees(27.0),
        upper_flank: Angle::from_degrees(51.0),
    }
}

fn time(name: &str, work: impl Fn()) {
    let start = Instant::now();
    (0..ROUNDS).for_each(|_| work());
    let each = start.elapsed() / ROUNDS;
    println!("{name:<40} {:>9.3} µs", each.as_secs_f64() * 1e6);
}

fn main() {
    let copper = materials::find("copper-hard-drawn");
    let core_material = materials::built_in().get("steel-st1a").map(Arc::clone);
    let rope = Rope {
        class: "7x19".into(),
        core: RopeCore::Wsc,
        diameter: Length::from_mm(8.0),
        grade: Some(Stress::from_n_per_mm2(1570.0)),
    };
    let constructions = [
        ("solid 8.0", Construction::Solid { diameter: Length::from_mm(8.0) }),
        ("stranded 19/2.80", Construction::Stranded(group(19, 2.80))),
        ("stranded 91/3.74", Construction::Stranded(group(91, 3.74))),
        (
            "composite 26/3.45+7/2.68",
            Construction::Composite(Composite {
                core: group(7, 2.68),
                core_material,
                outer: group(26, 3.45),
            }),
        ),
        ("rope 7x19/8.0", Construction::Rope(rope)),
        ("grooved 12.34", Construction::Grooved(contact_wire())),
    ];
    for (name, construction) in &constructions {
        time(&format!("compute {name}"), || drop(black_box(compute(black_box(construction), copper))));
    }
    for (name, construction) in &constructions {
        time(&format!("wires of {name}"), || drop(black_box(wires(black_box(construction)))));
    }
    let profile = profile(&contact_wire()).expect("a sound profile");
    time("worn grooved 12.34 at 9.3", || drop(black_box(worn(black_box(&profile), Length::from_mm(9.3)))));
}

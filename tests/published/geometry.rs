//! Stranding increments and geometry of round wires.

use super::sections::group;
use super::table::{Tally, rows};
use fittingcards::section::{Composite, Construction, LayerRole, Section, compute, materials};
use fittingcards::units::Length;
use std::sync::Arc;

/// Wires that make the core and the outer group of an EN 50182 conductor, by their numbers.
fn diameters(outer: u32, core: u32) -> (f64, f64) {
    match (outer, core) {
        (14, 7) => (2.0, 2.4),
        (14, 19) => (3.1, 2.25),
        (24, 7) => (3.5, 2.33),
        (26, 7) => (2.44, 1.9),
        (45, 7) => (4.3, 2.87),
        (48, 7) => (3.68, 2.87),
        (54, 19) => (3.35, 2.0),
        _ => (3.0, 3.0),
    }
}

/// Factors that the tables of EN 50182:2001 imply, derived from them.
#[test]
fn stranding_increments_that_en_50182_implies() {
    let aluminium = materials::find("aluminium-al1").expect("built in");
    // The core is not counted, as in the tables.
    let steel = &materials::built_in()["steel-st1a"];
    let (density, resistivity) =
        (aluminium.density.expect("known"), aluminium.resistivity_20c.expect("known"));
    let mut tally = Tally::default();
    for row in rows(include_str!("stranding_increments.csv")) {
        let (outer, core) = (row.count("n_outer"), row.count("n_core"));
        let (outer_wire, core_wire) = diameters(outer, core);
        let outer_group = group(outer, Length::from_mm(outer_wire));
        let construction = match core {
            0 => Construction::Stranded(outer_group),
            _ => {
                let core = group(core, Length::from_mm(core_wire));
                Construction::Composite(Composite {
                    core,
                    core_material: Some(Arc::clone(steel)),
                    outer: outer_group,
                })
            }
        };
        let section = compute(&construction, Some(aluminium)).expect("a sound construction");
        let metal = section.outer.unwrap_or(section.metal);
        let resistance = section.resistance_20c.expect("known") / (resistivity / metal);
        let name = format!("{outer} + {core}");
        tally.compare(&row, &name, "resistance_factor", Some(resistance), 0.0);
        let mass = section.mass.filter(|_| core == 0);
        tally.compare(&row, &name, "mass_factor", mass.map(|mass| mass / (metal * density)), 0.0);
    }
    tally.close("stranding_increments.csv");
}

fn stranded(construction: Construction) -> Section {
    compute(&construction, None).expect("a sound construction")
}

/// Common practice, no source: 19 wires 10.5 mm wide have 2.1 mm wires and 65.8 mm²; a galvanised 19-wire strand of
/// 93.3 mm² has 2.5 mm wires.
#[test]
fn facts_of_the_trade_about_nineteen_wires() {
    let thin = stranded(Construction::Stranded(group(19, Length::from_mm(2.1))));
    assert_eq!(format!("{:.1} {:.1}", thin.overall_diameter.mm(), thin.metal.mm2()), "10.5 65.8");
    let thick = stranded(Construction::Stranded(group(19, Length::from_mm(2.5))));
    assert_eq!(format!("{:.1}", thick.metal.mm2()), "93.3");
}

/// Common practice, no source: a rope of 8.65 mm given as 58.76 mm² is its circle area, cut after two decimals.
#[test]
fn a_rope_given_by_its_circle_area() {
    let circle = Length::from_mm(8.65).circle_area().mm2();
    assert_eq!(format!("{:.2}", (circle * 100.0).floor() / 100.0), "58.76");
}

/// First principles: fill ratio N/(2k+1)² of equal wires in 1 + 6 + 12 + …
#[test]
fn fill_ratios_of_equal_wires() {
    for (wires, ratio) in [(7, 0.7778), (19, 0.7600), (37, 0.7551), (61, 0.7531)] {
        let section = stranded(Construction::Stranded(group(wires, Length::from_mm(2.5))));
        assert!((section.fill_ratio - ratio).abs() < 0.00005, "{wires}: {}", section.fill_ratio);
        assert!(section.layers.iter().all(|layer| layer.role == LayerRole::Outer));
    }
}

/// ASTM B258: d = 0.005 in × 92^((36 − n)/39); areas in circular mils as its table prints them (from memory), each
/// to half its last digit.
#[test]
fn gauge_wires_of_astm_b258() {
    let gauges = [
        (-3, 211_600.0, 50.0),
        (0, 105_500.0, 50.0),
        (4, 41_740.0, 5.0),
        (10, 10_380.0, 5.0),
        (14, 4_110.0, 5.0),
        (18, 1_620.0, 5.0),
    ];
    let circular_mil = Length::from_inches(0.001).circle_area();
    for (gauge, mils, half_digit) in gauges {
        let diameter = Length::from_inches(0.005 * 92_f64.powf(f64::from(36 - gauge) / 39.0));
        let metal = stranded(Construction::Solid { diameter }).metal;
        assert!((metal / circular_mil - mils).abs() <= half_digit, "{gauge}: {}", metal / circular_mil);
    }
}

//! Sections, masses, loads and resistances of stranded conductors against the tables of standards.

use super::table::{Row, Tally, rows};
use fittingcards::section::{Composite, Construction, Group, Material, Section, Strands, compute, materials};
use fittingcards::units::Length;
use std::sync::Arc;

pub fn group(wires: u32, diameter: Length) -> Group {
    Group { strands: Strands::Wires(wires), wire_diameter: diameter, lay_ratios: Vec::new() }
}

/// Diameter of a row's outer wires.
///
/// ASTM B231 makes the wires of a size share its section exactly, by ASTM B258: d = 0.005 in × 92^((36 − n)/39) of a
/// gauge, a thousand circular mils a kcmil. Tables print them to 0.01 mm, and one page prints the wire of another row.
fn outer_wire(row: &Row) -> Length {
    if row.text("standard") != "ASTM B231" {
        return Length::from_mm(row.number("d_outer_mm").expect("a wire diameter"));
    }
    let size = row.text("old_code");
    let number = |text: &str| text.parse::<f64>().expect("a size");
    let gauge = |n: f64| Length::from_inches(0.005 * 92_f64.powf((36.0 - n) / 39.0)).circle_area();
    let area = match size.strip_suffix("/0") {
        Some(noughts) => gauge(1.0 - number(noughts)),
        None if number(size) < 40.0 => gauge(number(size)),
        None => Length::from_inches(0.001).circle_area() * (1000.0 * number(size)),
    };
    (area / f64::from(row.count("n_outer"))).circle_diameter()
}

fn construction(row: &Row) -> Construction {
    let outer = group(row.count("n_outer"), outer_wire(row));
    if row.count("n_core") == 0 {
        return Construction::Stranded(outer);
    }
    let core = group(row.count("n_core"), Length::from_mm(row.number("d_core_mm").expect("a core wire")));
    let core_material = materials::built_in().get(materials_of(row).1).map(Arc::clone);
    Construction::Composite(Composite { core, core_material, outer })
}

/// The ids of a row's materials: of the outer wires and of the core.
fn materials_of(row: &Row) -> (&'static str, &'static str) {
    match row.text("material") {
        "AL1/A20SA" => ("aluminium-al1", "clad-steel-a20sa"),
        "AL3/ST1A" => ("aluminium-al3", "steel-st1a"),
        "A20SA" => ("clad-steel-a20sa", ""),
        "Bz II" => ("bronze-2", ""),
        copper if copper.starts_with("Cu") => ("copper-hard-drawn", ""),
        _ => ("aluminium-al1", "steel-st1a"),
    }
}

fn material(row: &Row) -> &'static Material {
    materials::find(materials_of(row).0).expect("built in")
}

pub fn computed(row: &Row) -> Section {
    compute(&construction(row), Some(material(row))).expect("a sound construction")
}

fn hold(table: &'static str, name: &str) {
    let mut tally = Tally::default();
    for row in rows(table) {
        let name = format!("{} {}", row.text("standard"), row.text("designation"));
        let section = computed(&row);
        let outer = section.outer.unwrap_or(section.metal).mm2();
        let mut compare = |column, value, part| tally.compare(&row, &name, column, value, part);
        compare("area_outer_mm2", Some(outer), 0.0015);
        compare("area_core_mm2", section.core.map(|area| area.mm2()), 0.0015);
        compare("area_total_mm2", Some(section.metal.mm2()), 0.0015);
        compare("diameter_mm", Some(section.overall_diameter.mm()), 0.0015);
        compare("mass_kg_per_km", section.mass.map(|mass| mass.kg_per_km()), 0.0015);
        compare("breaking_kN", section.breaking_load.map(|load| load.kn()), 0.002);
        compare("r_dc20_ohm_per_km", section.resistance_20c.map(|one| one.ohm_per_km()), 0.0015);
    }
    tally.close(name);
}

/// EN 50182:2001, DIN 48201-1, DIN 48204, ASTM B231, BS 7884:1997, read in reprints.
#[test]
fn stranded_conductors_of_five_standards() {
    hold(include_str!("stranded_conductors.csv"), "stranded_conductors.csv");
}

/// EN 50182 with aluminium-clad cores and alloy, ASTM B416, DIN 48201-2; each row says how it is known.
#[test]
fn rated_conductors_of_other_materials() {
    hold(include_str!("rated_conductors.csv"), "rated_conductors.csv");
}

/// DIN 48201-1, read in a reprint: breaking loads to two hundredths of a kilonewton.
#[test]
fn copper_strands_hold_what_din_48201_1_prints() {
    let rows = rows(include_str!("stranded_conductors.csv"));
    let copper: Vec<&Row> = rows.iter().filter(|row| row.text("standard") == "DIN 48201-1").collect();
    assert_eq!(copper.len(), 13);
    for row in copper {
        let load = computed(row).breaking_load.expect("known").kn();
        let printed = row.number("breaking_kN").expect("printed");
        assert!((load - printed).abs() <= 0.02, "{}: {load} {printed}", row.text("designation"));
    }
}

//! Sections, masses, loads and resistances of stranded conductors against the tables of standards.

use super::table::{Row, Tally, rows};
use fittingcards::section::{
    Composite, Construction, Group, LayerRole, Material, Section, Strands, Strength, compute, materials,
};
use fittingcards::units::{Length, Stress};
use std::sync::Arc;

fn group(wires: u32, diameter: f64) -> Group {
    Group { strands: Strands::Wires(wires), wire_diameter: Length::from_mm(diameter), lay_ratios: Vec::new() }
}

fn construction(row: &Row) -> Construction {
    let wires = |count, diameter| group(row.count(count), row.number(diameter).expect("a wire diameter"));
    let outer = wires("n_outer", "d_outer_mm");
    if row.count("n_core") == 0 {
        return Construction::Stranded(outer);
    }
    let core_material = materials::built_in().get("steel-st1a").map(Arc::clone);
    Construction::Composite(Composite { core: wires("n_core", "d_core_mm"), core_material, outer })
}

fn material(row: &Row) -> &'static Material {
    let copper = row.text("material").starts_with("Cu");
    materials::find(if copper { "copper-hard-drawn" } else { "aluminium-al1" }).expect("built in")
}

fn computed(row: &Row) -> Section {
    compute(&construction(row), Some(material(row))).expect("a sound construction")
}

/// EN 50182:2001, DIN 48201-1, DIN 48204, ASTM B231, BS 7884:1997, read in reprints.
#[test]
fn stranded_conductors_of_five_standards() {
    let mut tally = Tally::default();
    for row in rows(include_str!("stranded_conductors.csv")) {
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
    tally.close("stranded_conductors.csv");
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
    let (density, resistivity) =
        (aluminium.density.expect("known"), aluminium.resistivity_20c.expect("known"));
    let mut tally = Tally::default();
    for row in rows(include_str!("stranding_increments.csv")) {
        let (outer, core) = (row.count("n_outer"), row.count("n_core"));
        let (outer_wire, core_wire) = diameters(outer, core);
        let outer_group = group(outer, outer_wire);
        let construction = match core {
            0 => Construction::Stranded(outer_group),
            _ => {
                let core = group(core, core_wire);
                Construction::Composite(Composite { core, core_material: None, outer: outer_group })
            }
        };
        let section = compute(&construction, Some(aluminium)).expect("a sound construction");
        let metal = section.outer.unwrap_or(section.metal);
        let resistance = section.resistance_20c.expect("known") / (resistivity / metal);
        let name = format!("{outer} + {core}");
        tally.compare(&row, &name, "resistance_factor", Some(resistance), 0.0);
        tally.compare(&row, &name, "mass_factor", section.mass.map(|mass| mass / (metal * density)), 0.0);
    }
    tally.close("stranding_increments.csv");
}

/// IEC 60888, regular strength, zinc class 1, read in a reprint.
#[test]
fn steel_wires_have_the_strength_of_iec_60888() {
    let steel = materials::find("steel-st1a").expect("built in");
    let strength = |table: &Option<Strength>, diameter: f64| {
        table.as_ref().and_then(|table| table.of_wire(Length::from_mm(diameter))).map(Stress::n_per_mm2)
    };
    let mut tally = Tally::default();
    for row in rows(include_str!("steel_wire.csv")) {
        if row.text("grade") != "regular" || !row.text("zinc_class").starts_with('1') {
            continue; // other grades are not built in
        }
        let (over, to) = (row.number("d_over_mm").expect("a size"), row.number("d_to_mm").expect("a size"));
        for diameter in [over + 0.01, to] {
            let name = format!("{diameter} mm");
            tally.compare(&row, &name, "uts_min_MPa", strength(&steel.strength, diameter), 0.0);
            tally.compare(
                &row,
                &name,
                "stress_at_1pct_MPa",
                strength(&steel.strength_as_core, diameter),
                0.0,
            );
        }
    }
    tally.close("steel_wire.csv");
}

/// Which built-in material a row of constants is about.
const CONSTANTS: &[(&str, &str, &str)] = &[
    ("Cu annealed (100 % IACS)", "IEC 60028", "copper-annealed"),
    ("Cu", "ASTM (B496 and family)", "copper-annealed"),
    ("Cu / CuAg0.1 contact wire", "EN 50149", "copper-hard-drawn"),
    ("Cu / CuAg0.1 contact wire", "EN 50149", "copper-silver-0.1"),
    ("CuCd0.7", "DIN 43140 RiK", "copper-cadmium-0.7"),
    ("CuCd1.0", "DIN 43140 RiK", "copper-cadmium-1.0"),
    ("CuMg0.2", "EN 50149", "copper-magnesium-0.2"),
    ("CuMg0.5", "EN 50149", "copper-magnesium-0.5"),
    ("CuSn0.2", "EN 50149", "copper-tin-0.2"),
    ("Bz II (CuMg0.5) stranded", "DIN 48201-2", "bronze-2"),
    ("Al 1350 / AL1", "IEC 60889 / EN 60889", "aluminium-al1"),
    ("AL3", "EN 50183", "aluminium-al3"),
    ("Zinc-coated steel ST1A", "IEC 60888 / EN 50189", "steel-st1a"),
    ("Zinc-coated steel ST1A", "IEC 61597", "steel-st1a"),
    ("Aluminium-clad steel A20SA", "IEC 61232 class 20SA", "clad-steel-a20sa"),
    ("Stainless 1.4401 / 316", "EN 10088", "stainless-1.4401"),
    ("Aluminium bronze CuAl10Ni5Fe4 / CuAl9..10", "CW307G", "aluminium-bronze"),
];

/// Densities, resistivities and temperature coefficients; each row names its own basis.
#[test]
fn built_in_materials_have_published_constants() {
    let rows = rows(include_str!("material_constants.csv"));
    let mut tally = Tally::default();
    for (material, standard, id) in CONSTANTS {
        let found = rows
            .iter()
            .filter(|row| row.text("material") == *material && row.text("standard_or_grade") == *standard);
        let built_in = materials::find(id).expect("built in");
        let mut any = false;
        for row in found {
            any = true;
            let mut compare = |column, value| tally.compare(row, id, column, value, 0.0);
            compare("density_g_cm3", built_in.density.map(|density| density.kg_per_m3() / 1000.0));
            compare("resistivity20_nohm_m", built_in.resistivity_20c.map(|resistivity| resistivity.nohm_m()));
            compare("alpha20_per_K", built_in.temperature_coefficient_per_k);
        }
        assert!(any, "no row of {material}");
    }
    tally.close("material_constants.csv");
}

fn stranded(construction: Construction) -> Section {
    compute(&construction, None).expect("a sound construction")
}

/// Common practice, no source: 19 wires 10.5 mm wide have 2.1 mm wires and 65.8 mm²; a galvanised 19-wire strand of
/// 93.3 mm² has 2.5 mm wires.
#[test]
fn facts_of_the_trade_about_nineteen_wires() {
    let thin = stranded(Construction::Stranded(group(19, 2.1)));
    assert_eq!(format!("{:.1} {:.1}", thin.overall_diameter.mm(), thin.metal.mm2()), "10.5 65.8");
    let thick = stranded(Construction::Stranded(group(19, 2.5)));
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
        let section = stranded(Construction::Stranded(group(wires, 2.5)));
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

//! Built-in materials against published constants and strengths.

use super::table::{Tally, rows};
use fittingcards::section::{Strength, materials};
use fittingcards::units::{Length, Stress};

/// IEC 60888, regular strength in both zinc classes and high strength, read in a reprint.
#[test]
fn steel_wires_have_the_strength_of_iec_60888() {
    let strength = |table: &Option<Strength>, diameter: f64| {
        table.as_ref().and_then(|table| table.of_wire(Length::from_mm(diameter))).map(Stress::n_per_mm2)
    };
    let mut tally = Tally::default();
    for row in rows(include_str!("steel_wire.csv")) {
        let steel = match (row.text("grade"), row.text("zinc_class")) {
            ("regular", "1 (A)") => "steel-st1a",
            ("regular", "2 (B)") => "steel-st2b",
            ("high", "1 (A)") => "steel-st4a",
            other => panic!("no built-in steel is {other:?}"),
        };
        let steel = materials::find(steel).expect("built in");
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
    ("AL4", "EN 50183", "aluminium-al4"),
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

/// Matthiessen's rule: alloying copper adds to its resistivity and leaves the slope, 0.00393 × 17.241 nΩ·m/K.
#[test]
fn temperature_coefficients_of_copper_alloys_follow_their_resistivity() {
    let alloys = [
        "copper-silver-0.1",
        "copper-magnesium-0.2",
        "copper-magnesium-0.5",
        "copper-tin-0.2",
        "copper-cadmium-0.7",
        "copper-cadmium-1.0",
        "bronze-1",
        "bronze-2",
        "bronze-3",
        "copper-hard-drawn",
    ];
    for id in alloys {
        let material = materials::find(id).expect("built in");
        let resistivity = material.resistivity_20c.expect("known").nohm_m();
        let slope = resistivity * material.temperature_coefficient_per_k.expect("known");
        assert!((slope / (0.003_93 * 17.241) - 1.0).abs() < 0.005, "{id}: {slope}");
    }
}

/// DIN 48200-2, from memory: conductivities of 48, 36 and 18 MS/m.
#[test]
fn bronzes_conduct_as_their_standard_has_it() {
    for (id, conductivity) in [("bronze-1", 48.0), ("bronze-2", 36.0), ("bronze-3", 18.0)] {
        let resistivity = materials::find(id).and_then(|bronze| bronze.resistivity_20c).expect("known");
        assert!((1000.0 / resistivity.nohm_m() - conductivity).abs() < 0.01, "{id}");
    }
}

/// ASTM B1, hard-drawn copper wire, from memory: thousands of pounds per square inch by inches of diameter. A strand
/// of thick wires is rated by them, and not as a contact wire of that height.
#[test]
fn thick_copper_wires_have_the_strength_of_astm_b1() {
    let rows =
        [(0.1819, 61.2), (0.2043, 60.1), (0.2294, 59.0), (0.2576, 57.6), (0.2893, 56.1), (0.3249, 54.5)];
    let copper = materials::find("copper-hard-drawn").and_then(|one| one.strength.as_ref()).expect("known");
    for (inches, ksi) in rows {
        let strength = copper.of_wire(Length::from_inches(inches)).expect("a wire").n_per_mm2();
        assert!((strength / (ksi * 6.894_76) - 1.0).abs() < 0.002, "{inches} in: {strength}");
    }
}

/// ASTM B415, aluminium-clad steel wire, from memory: thousands of pounds per square inch of gauges 10 to 5.
#[test]
fn clad_steel_wires_have_the_strength_of_astm_b415() {
    let clad = materials::find("clad-steel-a20sa").and_then(|one| one.strength.as_ref()).expect("known");
    let rows = [
        (0.1019, 195.0),
        (0.1144, 195.0),
        (0.1285, 195.0),
        (0.1443, 185.0),
        (0.1620, 175.0),
        (0.1819, 165.0),
    ];
    for (inches, ksi) in rows {
        let strength = clad.of_wire(Length::from_inches(inches)).expect("a wire").n_per_mm2();
        assert!((strength / (ksi * 6.894_76) - 1.0).abs() < 0.005, "{inches} in: {strength}");
    }
}

//! Built-in coppers and bronzes of wires.

use super::row::{cite, constant, material, resistivity, sizes, steps};
use crate::section::{Citation, Material, MaterialGroup};

/// All of them.
pub(super) fn all() -> Vec<Material> {
    [vec![annealed(), hard_drawn()], contact_wires(), cadmium_coppers(), bronzes()].concat()
}

fn copper(id: &str, name: &str, density: f64, source: Citation) -> Material {
    material(id, name, MaterialGroup::Copper, density, source)
}

/// Temperature coefficient of a copper alloy. By Matthiessen's rule the alloying adds to the resistivity and not to
/// its slope: α20·ρ20 is that of annealed copper (IEC 60028: 0.00393 per kelvin at 17.241 nΩ·m).
fn coefficient(nohm_m: f64) -> Option<f64> {
    // Three figures: what the rule is good for.
    Some((0.003_93 * 17.241 / nohm_m * 1e5).round() / 1e5)
}

fn annealed() -> Material {
    Material {
        resistivity_20c: resistivity(17.241),
        temperature_coefficient_per_k: Some(0.00393),
        ..copper("copper-annealed", "Annealed copper", 8890.0, cite("IEC 60028", "", "density of ASTM B496"))
    }
}

fn hard_drawn() -> Material {
    let note = "contact wire by nominal section; round wires to 3.3 mm and 0.95 for stranding back-calculated from \
                DIN 48201-1, thicker ones by ASTM B1 from memory; temperature coefficient from memory";
    Material {
        resistivity_20c: resistivity(17.77),
        temperature_coefficient_per_k: Some(0.00381),
        // From 3.3 mm on the steps of ASTM B1, from memory, where they are under 422 N/mm².
        strength: steps(&[
            (4.63, 422.0),
            (5.19, 414.0),
            (5.83, 407.0),
            (6.55, 397.0),
            (7.35, 387.0),
            (8.26, 376.0),
            (9.27, 364.0),
            (10.41, 352.0),
            (11.69, 338.0),
        ]),
        contact_wire_strength: sizes(&[
            (80.0, 355.0),
            (100.0, 355.0),
            (107.0, 350.0),
            (120.0, 330.0),
            (150.0, 310.0),
        ]),
        strand_efficiency: 0.95,
        ..copper("copper-hard-drawn", "Hard-drawn copper", 8890.0, cite("EN 50149", "2012", note))
    }
}

/// EN 50149 gives their strength as grooved wire, by nominal section; of round wires it says nothing.
fn contact_wires() -> Vec<Material> {
    let wire = |id, name, density, nohm_m, rows: &[(f64, f64)], note: &str| Material {
        resistivity_20c: resistivity(nohm_m),
        temperature_coefficient_per_k: coefficient(nohm_m),
        contact_wire_strength: sizes(rows),
        ..copper(id, name, density, cite("EN 50149", "2012", note))
    };
    let memory = "density and resistivity from memory, temperature coefficient by Matthiessen's rule";
    vec![
        wire(
            "copper-silver-0.1",
            "Copper-silver 0.1",
            8890.0,
            17.77,
            &[(100.0, 375.0), (150.0, 360.0)],
            "temperature coefficient by Matthiessen's rule",
        ),
        wire(
            "copper-magnesium-0.2",
            "Copper-magnesium 0.2",
            8900.0,
            22.4,
            &[(80.0, 460.0), (100.0, 450.0), (107.0, 440.0), (120.0, 430.0), (150.0, 420.0)],
            memory,
        ),
        wire(
            "copper-magnesium-0.5",
            "Copper-magnesium 0.5",
            8900.0,
            27.78,
            &[(80.0, 520.0), (100.0, 510.0), (107.0, 500.0), (120.0, 490.0), (150.0, 470.0)],
            memory,
        ),
        wire("copper-tin-0.2", "Copper-tin 0.2", 8900.0, 23.95, &[], memory),
    ]
}

fn cadmium_coppers() -> Vec<Material> {
    let cadmium = |id, name, nohm_m, rows: &[(f64, f64)]| Material {
        resistivity_20c: resistivity(nohm_m),
        temperature_coefficient_per_k: coefficient(nohm_m),
        contact_wire_strength: sizes(rows),
        caution: "Cadmium copper: no filing, grinding or heating".into(),
        ..copper(id, name, 8900.0, cite("DIN 43140", "", "temperature coefficient by Matthiessen's rule"))
    };
    vec![
        cadmium("copper-cadmium-0.7", "Copper-cadmium 0.7", 20.0, &[(80.0, 410.0), (100.0, 405.0)]),
        cadmium("copper-cadmium-1.0", "Copper-cadmium 1.0", 21.51, &[(80.0, 430.0), (100.0, 425.0)]),
    ]
}

/// Conductivities of 48, 36 and 18 MS/m. The strand of bronze II holds 67.6 kN with 19 wires of 2.80 mm: 0.981 of its
/// wires; the others are taken to keep as much.
fn bronzes() -> Vec<Material> {
    let bronze = |id, name, nohm_m| Material {
        resistivity_20c: resistivity(nohm_m),
        temperature_coefficient_per_k: coefficient(nohm_m),
        strand_efficiency: 0.981,
        ..material(
            id,
            name,
            MaterialGroup::Bronze,
            8900.0,
            cite("DIN 48200-2", "", "from memory; temperature coefficient by Matthiessen's rule"),
        )
    };
    vec![
        Material { strength: constant(490.0), ..bronze("bronze-1", "Bronze I", 20.83) },
        Material { strength: constant(589.0), ..bronze("bronze-2", "Bronze II", 27.78) },
        bronze("bronze-3", "Bronze III", 55.56),
    ]
}

//! Built-in steels of wires: zinc-coated, aluminium-clad, for spiral strands, stainless.

use super::row::{cite, constant, material, resistivity, steps};
use crate::section::{Citation, Magnetic, Material, MaterialGroup};

/// All of them.
pub(super) fn all() -> Vec<Material> {
    [zinc_coated(), zinc_coated_by_name(), vec![clad(), stainless()], spiral_strands()].concat()
}

fn steel(id: &str, name: &str, density: f64, source: Citation) -> Material {
    material(id, name, MaterialGroup::Steel, density, source)
}

/// Diameter up to and including, stress at 1 % elongation, strength.
type ZincCoated = &'static [(f64, f64, f64)];

/// IEC 60888: regular strength with zinc class 1 and 2, high and extra high strength.
const REGULAR_1: ZincCoated = &[(2.25, 1170.0, 1340.0), (3.0, 1140.0, 1310.0), (5.5, 1100.0, 1290.0)];
const REGULAR_2: ZincCoated = &[(2.25, 1100.0, 1240.0), (3.0, 1070.0, 1210.0), (5.5, 1000.0, 1190.0)];
const HIGH: ZincCoated =
    &[(2.25, 1310.0, 1450.0), (3.0, 1280.0, 1410.0), (3.5, 1240.0, 1410.0), (5.5, 1170.0, 1380.0)];
const EXTRA_HIGH: ZincCoated = &[
    (2.25, 1450.0, 1620.0),
    (3.0, 1410.0, 1590.0),
    (3.5, 1380.0, 1550.0),
    (4.75, 1340.0, 1520.0),
    (5.5, 1270.0, 1500.0),
];

fn zinc_coated() -> Vec<Material> {
    let steel = |grade: &str, rows: ZincCoated, note: &str| Material {
        resistivity_20c: resistivity(191.57),
        temperature_coefficient_per_k: Some(0.0045),
        strength: steps(&rows.iter().map(|row| (row.0, row.2)).collect::<Vec<_>>()),
        strength_as_core: steps(&rows.iter().map(|row| (row.0, row.1)).collect::<Vec<_>>()),
        ..steel(
            &format!("steel-{}", grade.to_lowercase()),
            &format!("Zinc-coated steel {grade}"),
            7780.0,
            cite("IEC 60888", "", &format!("{note}; resistivity and its coefficient from memory")),
        )
    };
    vec![
        steel("ST1A", REGULAR_1, "regular strength, class 1"),
        steel("ST2B", REGULAR_2, "regular strength, class 2"),
        steel("ST4A", HIGH, "high strength, class 1; above 2.75 mm from memory"),
        steel("ST6C", EXTRA_HIGH, "extra high strength, from memory"),
    ]
}

/// Grades of EN 50189 of which no strength is at hand.
fn zinc_coated_by_name() -> Vec<Material> {
    ["ST3D", "ST5E"]
        .map(|grade| {
            steel(
                &format!("steel-{}", grade.to_lowercase()),
                &format!("Zinc-coated steel {grade}"),
                7780.0,
                cite("EN 50189", "", "density from memory; strength not known"),
            )
        })
        .to_vec()
}

/// Strength of the wire by ASTM B415, 0.90 in a strand by ASTM B416; stress at 1 % by IEC 61232.
fn clad() -> Material {
    let note = "class 20SA; strength by diameter from memory of ASTM B415, 0.90 in the strand of B416; stress at 1 % \
                elongation from memory";
    Material {
        resistivity_20c: resistivity(84.8),
        temperature_coefficient_per_k: Some(0.00366),
        strength: steps(&[
            (3.27, 1340.0),
            (3.46, 1310.0),
            (3.67, 1275.0),
            (3.93, 1240.0),
            (4.12, 1205.0),
            (4.39, 1170.0),
            (4.63, 1140.0),
            (4.78, 1100.0),
            (5.5, 1070.0),
        ]),
        strand_efficiency: 0.9,
        strength_as_core: steps(&[
            (3.25, 1200.0),
            (3.45, 1180.0),
            (3.65, 1140.0),
            (4.1, 1100.0),
            (4.4, 1070.0),
            (4.6, 1030.0),
            (5.5, 1000.0),
        ]),
        ..steel("clad-steel-a20sa", "Aluminium-clad steel A20SA", 6590.0, cite("IEC 61232", "", note))
    }
}

/// Wires of spiral strands by EN 12385-10. What spinning leaves of them falls from 0.90 with one layer to 0.85 with
/// five: the least is taken.
fn spiral_strands() -> Vec<Material> {
    [1570.0, 1770.0]
        .map(|grade: f64| Material {
            strength: constant(grade),
            strand_efficiency: 0.85,
            ..steel(
                &format!("steel-spiral-{grade}"),
                &format!("Steel of spiral strands {grade}"),
                7850.0,
                cite("EN 12385-10", "", "from memory; 0.85 for spinning is that of five layers, the least"),
            )
        })
        .to_vec()
}

fn stainless() -> Material {
    Material {
        resistivity_20c: resistivity(750.0),
        magnetic: Some(Magnetic::Slight),
        ..material(
            "stainless-1.4401",
            "Stainless steel 1.4401",
            MaterialGroup::Stainless,
            7900.0,
            cite("EN 10088", "", "a drawn wire is slightly magnetic, from memory"),
        )
    }
}

//! Built-in aluminiums of wires.

use super::row::{cite, constant, material, open_steps, resistivity, steps};
use crate::section::{Citation, Material, MaterialGroup};

/// All of them: AL1 to AL7 of EN 50182.
pub(super) fn all() -> Vec<Material> {
    [vec![al1()], alloys(), alloys_by_name()].concat()
}

fn aluminium(id: &str, name: &str, density: f64, source: Citation) -> Material {
    material(id, name, MaterialGroup::Aluminium, density, source)
}

fn al1() -> Material {
    let note = "wire strength to 2.00 mm from memory, above back-calculated from EN 50182:2001";
    Material {
        resistivity_20c: resistivity(28.264),
        temperature_coefficient_per_k: Some(0.00403),
        strength: open_steps(
            &[
                (1.5, 195.0),
                (1.75, 190.0),
                (2.0, 185.0),
                (2.25, 180.0),
                (2.5, 175.0),
                (3.0, 170.0),
                (3.5, 165.0),
            ],
            160.0,
        ),
        ..aluminium("aluminium-al1", "Aluminium AL1", 2703.0, cite("EN 60889", "", note))
    }
}

fn alloys() -> Vec<Material> {
    let alloy = |id, name, nohm_m, note: &str| Material {
        resistivity_20c: resistivity(nohm_m),
        temperature_coefficient_per_k: Some(0.0036),
        ..aluminium(id, name, 2700.0, cite("EN 50183", "", note))
    };
    vec![
        Material {
            strength: steps(&[(3.5, 325.0), (5.5, 315.0)]),
            ..alloy("aluminium-al2", "Aluminium alloy AL2", 32.84, "from memory; density that of AL3")
        },
        Material {
            strength: constant(295.0),
            ..alloy(
                "aluminium-al3",
                "Aluminium alloy AL3",
                32.53,
                "density and resistivity derived from its tables; strength from memory, as 243-AL3/39-ST1A has it",
            )
        },
        alloy(
            "aluminium-al4",
            "Aluminium alloy AL4",
            32.6,
            "resistivity derived from a table that is not verified; density that of AL3; strength not known",
        ),
    ]
}

/// Alloys of which no figure is at hand but what all alloys of the standard share.
fn alloys_by_name() -> Vec<Material> {
    ["5", "6", "7"]
        .map(|number| Material {
            temperature_coefficient_per_k: Some(0.0036),
            ..aluminium(
                &format!("aluminium-al{number}"),
                &format!("Aluminium alloy AL{number}"),
                2700.0,
                cite("EN 50183", "", "density and temperature coefficient from memory; the rest not known"),
            )
        })
        .to_vec()
}

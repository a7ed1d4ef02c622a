//! Built-in materials of wires.

use crate::section::{Citation, Magnetic, Material, MaterialGroup, Strength, StrengthStep};
use crate::units::{Density, Length, Resistivity, Stress};

const COPPER_STRENGTH: &str = "strength of wires to 3.3 mm and 0.95 for stranding back-calculated from DIN 48201-1, \
                               of thicker ones as contact wire by section; profile heights and temperature \
                               coefficient from memory";

/// All of them.
pub(super) fn all() -> Vec<Material> {
    [coppers(), cadmium_coppers(), bronzes(), aluminiums(), steels()].concat()
}

fn coppers() -> Vec<Material> {
    vec![
        Material {
            resistivity_20c: resistivity(17.241),
            temperature_coefficient_per_k: Some(0.00393),
            ..copper(
                "copper-annealed",
                "Annealed copper",
                8890.0,
                cite("IEC 60028", "", "density of ASTM B496"),
            )
        },
        Material {
            resistivity_20c: resistivity(17.77),
            temperature_coefficient_per_k: Some(0.00381),
            strength: steps(&[(3.3, 422.0), (12.1, 355.0), (12.5, 350.0), (13.5, 330.0), (15.0, 310.0)]),
            strand_efficiency: 0.95,
            ..copper(
                "copper-hard-drawn",
                "Hard-drawn copper",
                8890.0,
                cite("EN 50149", "2012", COPPER_STRENGTH),
            )
        },
        Material {
            resistivity_20c: resistivity(17.77),
            strength: steps(&[(12.1, 375.0), (15.0, 360.0)]),
            ..copper("copper-silver-0.1", "Copper-silver 0.1", 8890.0, contact_wire())
        },
        Material {
            resistivity_20c: resistivity(22.4),
            strength: steps(&[(11.0, 460.0), (12.1, 450.0), (12.5, 440.0), (13.5, 430.0), (15.0, 420.0)]),
            ..copper("copper-magnesium-0.2", "Copper-magnesium 0.2", 8900.0, contact_wire_from_memory())
        },
        Material {
            resistivity_20c: resistivity(27.78),
            strength: steps(&[(11.0, 520.0), (12.1, 510.0), (12.5, 500.0), (13.5, 490.0), (15.0, 470.0)]),
            ..copper("copper-magnesium-0.5", "Copper-magnesium 0.5", 8900.0, contact_wire_from_memory())
        },
        Material {
            resistivity_20c: resistivity(23.95),
            ..copper(
                "copper-tin-0.2",
                "Copper-tin 0.2",
                8900.0,
                cite("EN 50149", "2012", "density and resistivity from memory"),
            )
        },
    ]
}

fn cadmium_coppers() -> Vec<Material> {
    let cadmium = |id, name, nohm_m, rows: &[(f64, f64)]| Material {
        resistivity_20c: resistivity(nohm_m),
        strength: steps(rows),
        caution: "Cadmium copper: no filing, grinding or heating".into(),
        ..copper(id, name, 8900.0, cite("DIN 43140", "", "strength by section, heights from memory"))
    };
    vec![
        cadmium("copper-cadmium-0.7", "Copper-cadmium 0.7", 20.0, &[(11.0, 410.0), (12.1, 405.0)]),
        cadmium("copper-cadmium-1.0", "Copper-cadmium 1.0", 21.51, &[(11.0, 430.0), (12.1, 425.0)]),
    ]
}

fn bronzes() -> Vec<Material> {
    let bronze =
        |id, name, source| Material { group: MaterialGroup::Bronze, ..copper(id, name, 8900.0, source) };
    let from_memory = || cite("DIN 48200-2", "", "density from memory");
    vec![
        bronze("bronze-1", "Bronze I", from_memory()),
        Material {
            resistivity_20c: resistivity(27.78),
            strength: Some(Strength::Constant(Stress::from_n_per_mm2(589.0))),
            ..bronze("bronze-2", "Bronze II", cite("DIN 48201-2", "", "from memory"))
        },
        bronze("bronze-3", "Bronze III", from_memory()),
    ]
}

fn aluminiums() -> Vec<Material> {
    let base = |id, name, density, source| Material {
        group: MaterialGroup::Aluminium,
        ..copper(id, name, density, source)
    };
    vec![
        Material {
            resistivity_20c: resistivity(28.264),
            temperature_coefficient_per_k: Some(0.00403),
            strength: aluminium_strength(),
            ..base(
                "aluminium-al1",
                "Aluminium AL1",
                2703.0,
                cite(
                    "EN 60889",
                    "",
                    "wire strength to 2.00 mm from memory, above back-calculated from EN 50182:2001",
                ),
            )
        },
        Material {
            resistivity_20c: resistivity(32.53),
            temperature_coefficient_per_k: Some(0.0036),
            ..base(
                "aluminium-al3",
                "Aluminium alloy AL3",
                2700.0,
                cite("EN 50183", "", "derived from its tables"),
            )
        },
    ]
}

/// AL1 by wire diameter.
fn aluminium_strength() -> Option<Strength> {
    let rows =
        [(1.5, 195.0), (1.75, 190.0), (2.0, 185.0), (2.25, 180.0), (2.5, 175.0), (3.0, 170.0), (3.5, 165.0)];
    let mut steps: Vec<StrengthStep> = rows.iter().map(step).collect();
    steps.push(StrengthStep { up_to: None, strength: Stress::from_n_per_mm2(160.0) });
    Some(Strength::ByDiameter(steps))
}

fn steels() -> Vec<Material> {
    let base = |id, name, density, source| Material {
        group: MaterialGroup::Steel,
        magnetic: Some(Magnetic::Yes),
        ..copper(id, name, density, source)
    };
    vec![
        Material {
            resistivity_20c: resistivity(84.8),
            temperature_coefficient_per_k: Some(0.00366),
            strength: Some(Strength::Constant(Stress::from_n_per_mm2(1340.0))),
            ..base(
                "clad-steel-a20sa",
                "Aluminium-clad steel A20SA",
                6590.0,
                cite("IEC 61232", "", "class 20SA; wire strength back-calculated from rated strengths"),
            )
        },
        Material {
            resistivity_20c: resistivity(191.57),
            temperature_coefficient_per_k: Some(0.0045),
            strength: steps(&[(2.25, 1340.0), (3.0, 1310.0), (5.5, 1290.0)]),
            strength_as_core: steps(&[(2.25, 1170.0), (3.0, 1140.0), (5.5, 1100.0)]),
            ..base(
                "steel-st1a",
                "Zinc-coated steel ST1A",
                7780.0,
                cite(
                    "IEC 60888",
                    "",
                    "regular strength, class 1; resistivity and its coefficient from memory",
                ),
            )
        },
        Material {
            group: MaterialGroup::Stainless,
            resistivity_20c: resistivity(750.0),
            magnetic: Some(Magnetic::Slight),
            ..base(
                "stainless-1.4401",
                "Stainless steel 1.4401",
                7900.0,
                cite("EN 10088", "", "a drawn wire is slightly magnetic, from memory"),
            )
        },
    ]
}

/// What every material starts from: its name, family, density and source; nothing else is known yet.
fn copper(id: &str, name: &str, density: f64, source: Citation) -> Material {
    Material {
        id: id.into(),
        name: name.into(),
        group: MaterialGroup::Copper,
        density: Some(Density::from_kg_per_m3(density)),
        resistivity_20c: None,
        temperature_coefficient_per_k: None,
        strength: None,
        strand_efficiency: 1.0,
        strength_as_core: None,
        magnetic: Some(Magnetic::No),
        hardness_hb: None,
        caution: String::new(),
        source,
    }
}

/// EN 50149 gives the strength by section; it is held here by the height of the standard's profiles. Thinner wires
/// count at the first row's strength: less than they have, on the safe side.
fn contact_wire() -> Citation {
    cite("EN 50149", "2012", "strength of contact wire by section, profile heights from memory")
}

fn contact_wire_from_memory() -> Citation {
    cite(
        "EN 50149",
        "2012",
        "strength of contact wire by section; profile heights, density and resistivity from memory",
    )
}

fn resistivity(nohm_m: f64) -> Option<Resistivity> {
    Some(Resistivity::from_nohm_m(nohm_m))
}

fn steps(rows: &[(f64, f64)]) -> Option<Strength> {
    Some(Strength::ByDiameter(rows.iter().map(step).collect()))
}

fn step((up_to, strength): &(f64, f64)) -> StrengthStep {
    StrengthStep { up_to: Some(Length::from_mm(*up_to)), strength: Stress::from_n_per_mm2(*strength) }
}

fn cite(standard: &str, edition: &str, note: &str) -> Citation {
    Citation { standard: standard.into(), edition: edition.into(), table: String::new(), note: note.into() }
}

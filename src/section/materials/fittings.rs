//! Built-in materials of parts.

use crate::section::{Citation, Magnetic, Material, MaterialGroup};
use crate::units::{Density, Resistivity};

/// All of them: densities from memory, since no source at hand gives them.
pub(super) fn all() -> Vec<Material> {
    use Magnetic::{No, Slight, Yes};
    use MaterialGroup::{Aluminium, Bronze, Iron, Polymer, Steel};
    vec![
        part("bronze-soft", "Soft bronze", Bronze, 8800.0, No),
        Material {
            resistivity_20c: Some(Resistivity::from_nohm_m(192.0)),
            source: Citation {
                standard: "EN 12163 CW307G".into(),
                note: "from memory".into(),
                ..Citation::default()
            },
            ..part("aluminium-bronze", "Aluminium bronze", Bronze, 7600.0, Slight)
        },
        part("brass", "Brass", Bronze, 8500.0, No),
        part("cast-aluminium", "Cast aluminium", Aluminium, 2680.0, No),
        part("malleable-iron", "Malleable cast iron", Iron, 7350.0, Yes),
        part("ductile-iron", "Ductile cast iron", Iron, 7100.0, Yes),
        part("steel-galvanised", "Hot-dip galvanised steel", Steel, 7850.0, Yes),
        part("polymer", "Polymer", Polymer, 1140.0, No),
    ]
}

fn part(id: &str, name: &str, group: MaterialGroup, density: f64, magnetic: Magnetic) -> Material {
    Material {
        id: id.into(),
        name: name.into(),
        group,
        density: Some(Density::from_kg_per_m3(density)),
        resistivity_20c: None,
        temperature_coefficient_per_k: None,
        strength: None,
        strand_efficiency: 1.0,
        strength_as_core: None,
        magnetic: Some(magnetic),
        hardness_hb: None,
        caution: String::new(),
        source: Citation { note: "from memory".into(), ..Citation::default() },
    }
}

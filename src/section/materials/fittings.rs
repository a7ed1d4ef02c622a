//! Built-in materials of parts.

use super::row::material;
use crate::section::{Citation, Magnetic, Material, MaterialGroup};
use crate::units::Resistivity;

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
    let source = Citation { note: "from memory".into(), ..Citation::default() };
    Material { magnetic: Some(magnetic), ..material(id, name, group, density, source) }
}

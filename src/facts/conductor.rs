//! A conductor in words that a lineman can check.

use super::{ConductorFacts, wear};
use crate::catalogue::Conductor;
use crate::section::{Construction, Grooved, Group, RopeCore, Strands};
use crate::units::{Length, Numerals};

/// The words for a conductor.
#[must_use]
pub fn conductor(conductor: &Conductor, numerals: Numerals) -> ConductorFacts {
    let caution = if conductor.caution.is_empty() { &conductor.material.caution } else { &conductor.caution };
    ConductorFacts {
        id: conductor.id.clone(),
        name: conductor.name.clone(),
        material: conductor.material.name.clone(),
        build: build(&conductor.construction, numerals),
        diameter: diameter(conductor, numerals),
        section: numerals.area(conductor.section.metal),
        nominal: conductor.nominal_size.map(|size| format!("{}\u{a0}mm²", numerals.shortest(size.mm2(), 2))),
        neck: conductor.section.neck.map(|neck| numerals.length(neck, 2)),
        identity: identity(conductor),
        caution: caution.clone(),
        wear: conductor.wear.as_ref().map(|limits| wear::facts(conductor, limits, numerals)),
    }
}

fn build(construction: &Construction, numerals: Numerals) -> String {
    match construction {
        Construction::Solid { .. } => "solid".to_owned(),
        Construction::Stranded(group) => wires(group, numerals),
        Construction::Composite(composite) => {
            let made = composite.core_material.as_ref().map_or("", |material| material.group.word());
            let core = format!("{made} core {}", wires(&composite.core, numerals));
            format!("{} + {}", wires(&composite.outer, numerals), core.trim_start())
        }
        Construction::Rope(rope) => format!("rope {}, {}", rope.class, core(rope.core)),
        Construction::Grooved(_) => "grooved".to_owned(),
        Construction::Tube { wall, .. } => format!("tube, wall {}", size(*wall, numerals)),
        Construction::Bar { width, thickness, .. } => {
            format!("bar {} × {}", numerals.shortest(width.mm(), 2), size(*thickness, numerals))
        }
    }
}

fn wires(group: &Group, numerals: Numerals) -> String {
    let count: u32 = match &group.strands {
        Strands::Wires(count) => *count,
        Strands::Layers(layers) => layers.iter().sum(),
    };
    format!("{count}\u{a0}×\u{a0}{}", numerals.length(group.wire_diameter, 2))
}

fn core(core: RopeCore) -> &'static str {
    match core {
        RopeCore::Wsc => "strand core",
        RopeCore::Iwrc => "rope core",
        RopeCore::Fibre => "fibre core",
    }
}

fn diameter(conductor: &Conductor, numerals: Numerals) -> String {
    match &conductor.construction {
        Construction::Grooved(Grooved { height, width, .. }) => {
            format!("{} high, {} wide", numerals.length(*height, 2), numerals.length(*width, 2))
        }
        _ => format!("⌀\u{a0}{}", numerals.length(conductor.section.overall_diameter, 1)),
    }
}

fn size(length: Length, numerals: Numerals) -> String {
    format!("{}\u{a0}mm", numerals.shortest(length.mm(), 2))
}

fn identity(conductor: &Conductor) -> Vec<(String, String)> {
    let identity = &conductor.identity;
    [("drum tag", &identity.drum_tag), ("tracer", &identity.tracer), ("grooves", &identity.grooves)]
        .into_iter()
        .filter(|(_, text)| !text.is_empty())
        .map(|(name, text)| (name.to_owned(), text.clone()))
        .collect()
}

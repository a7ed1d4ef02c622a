//! A conductor in words that a lineman can check.

use super::{ConductorFacts, wear};
use crate::catalogue::Conductor;
use crate::mixups::{Clue, LookAlike};
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
        build: build(conductor, numerals),
        diameter: diameter(conductor, numerals),
        section: section(conductor, numerals),
        nominal: conductor
            .nominal_size
            .map(|size| conductor.origin.with_unit("nominal_size_mm2", size.mm2(), "mm²", numerals)),
        neck: conductor.section.neck.map(|neck| numerals.length(neck, 2)),
        identity: identity(conductor),
        caution: caution.clone(),
        alike: String::new(),
        wear: conductor.wear.as_ref().map(|limits| wear::facts(conductor, limits, numerals)),
    }
}

fn build(conductor: &Conductor, numerals: Numerals) -> String {
    match &conductor.construction {
        Construction::Solid { .. } => "solid".to_owned(),
        Construction::Stranded(group) => wires(conductor, "stranded", group, numerals),
        Construction::Composite(composite) => {
            let made = composite.core_material.as_ref().map_or("", |material| material.group.word());
            let core =
                format!("{made} core {}", wires(conductor, "composite.core", &composite.core, numerals));
            format!(
                "{} + {}",
                wires(conductor, "composite.outer", &composite.outer, numerals),
                core.trim_start()
            )
        }
        Construction::Rope(rope) => format!("rope {}, {}", rope.class, core(rope.core)),
        Construction::Grooved(_) => "grooved".to_owned(),
        Construction::Tube { wall, .. } => {
            format!("tube, wall {}", size(conductor, "tube.wall_mm", *wall, numerals))
        }
        Construction::Bar { width, thickness, .. } => {
            let width = conductor.origin.written("construction.bar.width_mm", width.mm(), numerals);
            format!("bar {width} × {}", size(conductor, "bar.thickness_mm", *thickness, numerals))
        }
    }
}

fn wires(conductor: &Conductor, path: &str, group: &Group, numerals: Numerals) -> String {
    let count: u32 = match &group.strands {
        Strands::Wires(count) => *count,
        Strands::Layers(layers) => layers.iter().sum(),
    };
    let field = format!("construction.{path}.wire_diameter_mm");
    format!(
        "{count}\u{a0}×\u{a0}{}",
        conductor.origin.with_unit(&field, group.wire_diameter.mm(), "mm", numerals)
    )
}

fn core(core: RopeCore) -> &'static str {
    match core {
        RopeCore::Wsc => "strand core",
        RopeCore::Iwrc => "rope core",
        RopeCore::Fibre => "fibre core",
    }
}

/// The overall diameter: as the specification states it, or the construction; else computed.
fn diameter(conductor: &Conductor, numerals: Numerals) -> String {
    let size = |key: &str, length: Length| size(conductor, key, length, numerals);
    match &conductor.construction {
        Construction::Grooved(Grooved { height, width, .. }) => {
            format!("{} high, {} wide", size("grooved.height_mm", *height), size("grooved.width_mm", *width))
        }
        // Nobody reads the circle round a bar.
        Construction::Bar { width, thickness, .. } => {
            format!("{} wide, {} thick", size("bar.width_mm", *width), size("bar.thickness_mm", *thickness))
        }
        construction => format!("⌀\u{a0}{}", overall(conductor, construction, numerals)),
    }
}

fn overall(conductor: &Conductor, construction: &Construction, numerals: Numerals) -> String {
    if let Some(stated) = conductor.stated.overall_diameter {
        return conductor.origin.with_unit("stated.overall_diameter_mm", stated.mm(), "mm", numerals);
    }
    let overall = conductor.section.overall_diameter;
    match construction {
        Construction::Solid { .. } => size(conductor, "solid.diameter_mm", overall, numerals),
        Construction::Rope(_) => size(conductor, "rope.diameter_mm", overall, numerals),
        Construction::Tube { .. } => size(conductor, "tube.outside_diameter_mm", overall, numerals),
        _ => numerals.length(overall, 1),
    }
}

/// The metal section: as the specification states it, else computed.
fn section(conductor: &Conductor, numerals: Numerals) -> String {
    conductor.stated.section.map_or_else(
        || numerals.area(conductor.section.metal),
        |stated| conductor.origin.with_unit("stated.section_mm2", stated.mm2(), "mm²", numerals),
    )
}

/// A length of the construction with the digits of its record.
fn size(conductor: &Conductor, key: &str, length: Length, numerals: Numerals) -> String {
    conductor.origin.with_unit(&format!("construction.{key}"), length.mm(), "mm", numerals)
}

fn identity(conductor: &Conductor) -> Vec<(String, String)> {
    let identity = &conductor.identity;
    [("drum tag", &identity.drum_tag), ("tracer", &identity.tracer), ("grooves", &identity.grooves)]
        .into_iter()
        .filter(|(_, text)| !text.is_empty())
        .map(|(name, text)| (name.to_owned(), text.clone()))
        .collect()
}

/// A conductor's words with what it can be taken for: told on the cards of both, from what is known of the two.
pub(super) fn with_alike(held: &Conductor, alikes: &[LookAlike], numerals: Numerals) -> ConductorFacts {
    let of_it = alikes.iter().filter_map(|alike| match held.id.as_str() {
        id if id == alike.one.id => Some((alike.other.name.as_str(), what_settles(held, alike))),
        id if id == alike.other.id => Some((alike.one.name.as_str(), what_settles(held, alike))),
        _ => None,
    });
    let of_it: Vec<(&str, String)> = of_it.collect();
    let told = |what: &str| {
        let names: Vec<&str> = of_it.iter().filter(|(_, does)| does == what).map(|(name, _)| *name).collect();
        (!names.is_empty()).then(|| format!("Looks like {}{what}.", names.join(", ")))
    };
    let mut whats = vec![LINE_RECORD, THE_TAG];
    for (_, what) in &of_it {
        if !whats.contains(&what.as_str()) {
            whats.push(what);
        }
    }
    let texts: Vec<String> = whats.into_iter().filter_map(told).collect();
    ConductorFacts { alike: texts.join(" "), ..conductor(held, numerals) }
}

const LINE_RECORD: &str = ": read the line record";
const THE_TAG: &str = ": read the drum tag";

/// What settles which of two conductors it is: the surest sign by hand. A drum tag does not where the other's reads the same.
fn what_settles(held: &Conductor, alike: &LookAlike) -> String {
    match alike.clues.first() {
        Some(clue) if held.id == alike.one.id => tell_by(clue),
        Some(clue) => tell_by(&clue.turned()),
        None if held.identity.drum_tag.is_empty() || alike.tags_read_alike() => LINE_RECORD.to_owned(),
        None => THE_TAG.to_owned(),
    }
}

fn tell_by(clue: &Clue) -> String {
    format!(". Tell it by the {}", clue.words())
}

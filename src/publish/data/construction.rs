//! How a conductor is built, as JSON, with the keys of its record.

use super::object::Object;
use crate::section::{Composite, Construction, Grooved, Group, Rope, Strands};
use crate::units::Length;

/// One key, which names the kind of construction, with its measurements.
pub(super) fn construction(construction: &Construction) -> Object {
    let (kind, measurements) = match construction {
        Construction::Solid { diameter } => ("solid", lengths(&[("diameter_mm", *diameter)])),
        Construction::Stranded(group) => ("stranded", wires(group)),
        Construction::Composite(built) => ("composite", composite(built)),
        Construction::Rope(built) => ("rope", rope(built)),
        Construction::Grooved(profile) => ("grooved", grooved(profile)),
        Construction::Tube { outside_diameter, wall } => {
            ("tube", lengths(&[("outside_diameter_mm", *outside_diameter), ("wall_mm", *wall)]))
        }
        Construction::Bar { width, thickness, corner_radius } => {
            let sides =
                [("width_mm", *width), ("thickness_mm", *thickness), ("corner_radius_mm", *corner_radius)];
            ("bar", lengths(&sides))
        }
    };
    let mut object = Object::new();
    object.part(kind, measurements);
    object
}

fn lengths(stated: &[(&str, Length)]) -> Object {
    let mut object = Object::new();
    for (key, length) in stated {
        object.mm(key, *length);
    }
    object
}

fn wires(group: &Group) -> Object {
    let mut object = Object::new();
    match &group.strands {
        Strands::Wires(count) => object.put("wires", *count),
        Strands::Layers(layers) => object.list("layers", layers.iter().copied()),
    }
    object.mm("wire_diameter_mm", group.wire_diameter);
    if !group.lay_ratios.is_empty() {
        object.list("lay_ratios", group.lay_ratios.iter().copied());
    }
    object
}

fn composite(composite: &Composite) -> Object {
    let mut core = wires(&composite.core);
    core.known("material", composite.core_material.as_ref().map(|material| material.id.as_str()));
    let mut object = Object::new();
    object.part("core", core);
    object.part("outer", wires(&composite.outer));
    object
}

fn rope(rope: &Rope) -> Object {
    let mut object = Object::new();
    object.put("construction", rope.class.as_str());
    object.put("core", rope.core.word());
    object.mm("diameter_mm", rope.diameter);
    object.number("grade_N_per_mm2", rope.grade.map(|grade| grade.n_per_mm2()));
    object
}

fn grooved(profile: &Grooved) -> Object {
    let mut object = lengths(&[
        ("height_mm", profile.height),
        ("width_mm", profile.width),
        ("apex_width_mm", profile.apex_width),
        ("apex_depth_mm", profile.apex_depth),
        ("fillet_mm", profile.fillet),
    ]);
    object.degrees("lower_flank_deg", Some(profile.lower_flank));
    object.degrees("upper_flank_deg", Some(profile.upper_flank));
    object
}

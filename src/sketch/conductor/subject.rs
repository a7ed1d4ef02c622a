//! What a section is drawn of.

use crate::catalogue::Conductor;
use crate::section::{Construction, LayerRole, Material, MaterialGroup, RopeCore, Section};
use crate::units::{Length, Numerals};

/// A construction with what was computed of it; more where it comes from a record.
#[derive(Debug, Clone, Copy)]
pub struct Subject<'a> {
    /// Its name.
    pub name: &'a str,
    /// How it is built.
    pub construction: &'a Construction,
    /// What was computed of it.
    pub section: &'a Section,
    /// What it is made of, where known.
    pub material: Option<&'a Material>,
    /// Tolerance on the overall diameter.
    pub diameter_tolerance: Option<Length>,
    /// Tolerance on the wire diameter.
    pub wire_diameter_tolerance: Option<Length>,
    /// Remaining height, where a contact wire is drawn worn.
    pub worn_to: Option<Length>,
    /// Identification grooves in the head of a contact wire.
    pub identification_grooves: u32,
}

impl<'a> Subject<'a> {
    /// A bare construction.
    #[must_use]
    pub fn new(name: &'a str, construction: &'a Construction, section: &'a Section) -> Self {
        Self {
            name,
            construction,
            section,
            material: None,
            diameter_tolerance: None,
            wire_diameter_tolerance: None,
            worn_to: None,
            identification_grooves: 0,
        }
    }

    /// A conductor of the catalogue.
    #[must_use]
    pub fn of(conductor: &'a Conductor) -> Self {
        Self {
            material: Some(&conductor.material),
            diameter_tolerance: conductor.diameter_tolerance,
            wire_diameter_tolerance: conductor.wire_diameter_tolerance,
            identification_grooves: said_number(&conductor.identity.grooves),
            ..Self::new(&conductor.name, &conductor.construction, &conductor.section)
        }
    }

    /// The family of its material; a light neutral one where it isn't known.
    pub(crate) fn group(&self) -> MaterialGroup {
        self.material.map_or(MaterialGroup::Aluminium, |material| material.group)
    }

    /// The family of a composite's core.
    pub(crate) fn core_group(&self) -> MaterialGroup {
        match self.construction {
            Construction::Composite(composite) => {
                composite.core_material.as_ref().map_or(MaterialGroup::Steel, |material| material.group)
            }
            _ => self.group(),
        }
    }

    /// Number and diameter of the wires of a group.
    pub(crate) fn wires(&self, role: LayerRole) -> Option<(u32, Length)> {
        let layers = || self.section.layers.iter().filter(move |layer| layer.role == role);
        let diameter = layers().next()?.wire_diameter;
        Some((layers().map(|layer| layer.wires).sum(), diameter))
    }

    /// What the drawing shows, in sentences.
    pub(crate) fn words(&self, numerals: Numerals) -> String {
        let overall = numerals.length(self.section.overall_diameter, 1);
        let built = match self.construction {
            Construction::Solid { .. } => format!("One round wire of {overall}."),
            Construction::Stranded(_) | Construction::Composite(_) => {
                let counts: Vec<String> =
                    self.section.layers.iter().map(|layer| layer.wires.to_string()).collect();
                format!(
                    "Wires in layers of {} from the centre out. Overall diameter {overall}.",
                    counts.join(", ")
                )
            }
            Construction::Rope(rope) => {
                format!("Wire rope {} with {}. Diameter {overall}.", rope.class, core_words(rope.core))
            }
            Construction::Grooved(grooved) => {
                let marked = match self.identification_grooves {
                    0 => String::new(),
                    1 => " One identification groove in its head.".to_owned(),
                    count => format!(" {count} identification grooves in its head."),
                };
                format!("Grooved contact wire, {} high.{marked}", numerals.length(grooved.height, 2))
            }
            Construction::Tube { .. } => format!("Round tube of {overall} outside."),
            Construction::Bar { width, thickness, .. } => {
                let [width, thickness] = [width, thickness].map(|side| numerals.shortest(side.mm(), 3));
                format!("Bar of {width} × {thickness}\u{a0}mm.")
            }
        };
        match (self.material, self.worn_to) {
            (_, Some(height)) => format!("{built} Worn to {}.", numerals.length(height, 2)),
            (Some(material), None) => format!("{built} {}.", material.name),
            (None, None) => built,
        }
    }
}

/// The number that a text begins with, in figures or as a word.
fn said_number(text: &str) -> u32 {
    let word = text.split_whitespace().next().unwrap_or_default().to_lowercase();
    let named = ["no", "one", "two", "three"].iter().position(|name| *name == word);
    let number = word.parse().ok().or(named.and_then(|index| u32::try_from(index).ok()));
    number.filter(|count| *count <= 3).unwrap_or(0)
}

/// The core of a rope in words.
pub(crate) fn core_words(core: RopeCore) -> &'static str {
    match core {
        RopeCore::Wsc => "strand core",
        RopeCore::Iwrc => "wire rope core",
        RopeCore::Fibre => "fibre core",
    }
}

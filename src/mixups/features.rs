//! What a hand, an eye, a magnet or a scratch finds on a conductor.

use crate::catalogue::Conductor;
use crate::section::{Construction, Layer, Magnetic, MaterialGroup, RopeCore};
use crate::units::{Length, Numerals};

/// What a conductor looks like from its end.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shape {
    /// Round: one wire, or wires in layers.
    Round,
    /// A contact wire with grooves.
    Grooved,
    /// Strands of wires.
    Rope,
    /// Hollow.
    Tube,
    /// Flat.
    Bar,
}

impl Shape {
    /// In words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Round => "round",
            Self::Grooved => "grooved",
            Self::Rope => "strands of wires",
            Self::Tube => "hollow",
            Self::Bar => "flat",
        }
    }
}

/// The colour of the metal under a fresh scratch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Scratch {
    /// Copper-coloured: copper and bronze alike.
    Copper,
    /// Grey: aluminium, steel, zinc.
    Grey,
}

impl Scratch {
    /// In words.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Copper => "copper-coloured",
            Self::Grey => "grey",
        }
    }
}

/// Something that tells one conductor from another.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Clue {
    /// What to look at, such as "wires in the outer layer".
    pub what: &'static str,
    /// What the one shows.
    pub this: String,
    /// What the other shows.
    pub that: String,
}

impl Clue {
    /// In words: "wires in the outer layer: 12, not 18".
    #[must_use]
    pub fn words(&self) -> String {
        format!("{}: {}, not {}", self.what, self.this, self.that)
    }
}

/// What is done where nothing by hand tells conductors apart.
pub const STOP: &str = "can't be settled by hand: stop; read the line record or the drum tag";

/// What tells one conductor from another by hand, surest first; empty where nothing does.
///
/// Copper and bronze have no clue of their own: a fresh scratch shows the same colour on both.
#[must_use]
pub fn clues(one: &Conductor, other: &Conductor, numerals: Numerals) -> Vec<Clue> {
    let mut clues = Vec::new();
    let mut add = |what, this: Option<String>, that: Option<String>| {
        if let (Some(this), Some(that)) = (this, that)
            && this != that
        {
            clues.push(Clue { what, this, that });
        }
    };
    let number = |number: u32| number.to_string();
    let (a, b) = (shape(one), shape(other));
    add("shape", Some(a.words().into()), Some(b.words().into()));
    if a == b {
        add("strands in the outer layer", strands(one).map(number), strands(other).map(number));
        add("wires in the outer layer", outer_wires(one).map(number), outer_wires(other).map(number));
        add("core at the cut end", core(one), core(other));
        if wires_differ(one, other) {
            let diameter = |wire: &Conductor| wire_diameter(wire).map(|wire| numerals.length(wire, 2));
            add("wire diameter", diameter(one), diameter(other));
        }
        add("identification grooves", stated(&one.identity.grooves), stated(&other.identity.grooves));
    }
    add("magnet", magnet(one), magnet(other));
    let scratched = |wire: &Conductor| scratch(wire).map(|scratch| scratch.words().to_owned());
    add("fresh scratch", scratched(one), scratched(other));
    clues
}

/// What labels tell them apart by: tracer and drum tag, where both records state them. A label tells
/// what the maker put in, not what is in the line.
#[must_use]
pub fn labels(one: &Conductor, other: &Conductor) -> Vec<Clue> {
    let texts = [
        ("drum tag", &one.identity.drum_tag, &other.identity.drum_tag),
        ("tracer", &one.identity.tracer, &other.identity.tracer),
    ];
    texts
        .into_iter()
        .filter(|(_, this, that)| !this.is_empty() && !that.is_empty() && this != that)
        .map(|(what, this, that)| Clue { what, this: this.clone(), that: that.clone() })
        .collect()
}

/// What tells one conductor from another in words: by hand, else that nothing does; then by labels.
#[must_use]
pub fn told_apart(one: &Conductor, other: &Conductor, numerals: Numerals) -> String {
    let by_hand = clues(one, other, numerals);
    let stop = if copper_and_bronze(one, other) {
        format!("copper and bronze look and feel the same, it {STOP}")
    } else {
        format!("it {STOP}")
    };
    let mut words: Vec<String> = by_hand.iter().map(Clue::words).collect();
    if words.is_empty() {
        words.push(stop);
    }
    words.extend(labels(one, other).iter().map(Clue::words));
    words.join("; ")
}

fn copper_and_bronze(one: &Conductor, other: &Conductor) -> bool {
    use MaterialGroup::{Bronze, Copper};
    matches!((one.material.group, other.material.group), (Copper, Bronze) | (Bronze, Copper))
}

/// What is found on a conductor besides its size and shape; `None` where it is not known or says nothing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Features {
    /// Wires altogether; a rope's by its class.
    pub wires: Option<u32>,
    /// Wires seen from outside.
    pub outer_wires: Option<u32>,
    /// Diameter of an outer wire.
    pub wire_diameter: Option<Length>,
    /// What a magnet finds.
    pub magnetic: Option<Magnetic>,
    /// The colour under a fresh scratch.
    pub scratch: Option<Scratch>,
}

/// What is found on a conductor besides its size and shape.
#[must_use]
pub fn features(conductor: &Conductor) -> Features {
    Features {
        wires: wires(conductor),
        outer_wires: outer_wires(conductor),
        wire_diameter: wire_diameter(conductor),
        magnetic: magnetic(conductor),
        scratch: scratch(conductor),
    }
}

/// What a conductor looks like from its end.
#[must_use]
pub fn shape(conductor: &Conductor) -> Shape {
    match conductor.construction {
        Construction::Solid { .. } | Construction::Stranded(_) | Construction::Composite(_) => Shape::Round,
        Construction::Grooved(_) => Shape::Grooved,
        Construction::Rope(_) => Shape::Rope,
        Construction::Tube { .. } => Shape::Tube,
        Construction::Bar { .. } => Shape::Bar,
    }
}

/// How many wires it has altogether; a rope's by its class.
pub(super) fn wires(conductor: &Conductor) -> Option<u32> {
    match &conductor.construction {
        Construction::Rope(rope) => class(&rope.class).map(|(strands, wires)| strands * wires),
        Construction::Solid { .. } => Some(1),
        Construction::Stranded(_) | Construction::Composite(_) => {
            Some(conductor.section.layers.iter().map(|layer| layer.wires).sum())
        }
        _ => None,
    }
}

/// How many wires are seen from outside; `None` for ropes and whole profiles.
#[must_use]
pub fn outer_wires(conductor: &Conductor) -> Option<u32> {
    outer_layer(conductor).map(|layer| layer.wires)
}

pub(super) fn wire_diameter(conductor: &Conductor) -> Option<Length> {
    outer_layer(conductor).map(|layer| layer.wire_diameter)
}

/// The colour under a fresh scratch; `None` where it says nothing, as on plastic.
pub(super) fn scratch(conductor: &Conductor) -> Option<Scratch> {
    match conductor.material.group {
        MaterialGroup::Copper | MaterialGroup::Bronze => Some(Scratch::Copper),
        MaterialGroup::Polymer => None,
        _ => Some(Scratch::Grey),
    }
}

/// What a magnet finds: the outer wires, or the core under them; `None` where either is not known and
/// the other does not settle it.
pub(super) fn magnetic(conductor: &Conductor) -> Option<Magnetic> {
    let outer = conductor.material.magnetic;
    let Construction::Composite(composite) = &conductor.construction else { return outer };
    let core = composite.core_material.as_ref().and_then(|material| material.magnetic);
    match (outer, core) {
        (Some(outer), Some(core)) => Some(outer.max(core)),
        (known, other) => known.or(other).filter(|known| *known == Magnetic::Yes),
    }
}

fn outer_layer(conductor: &Conductor) -> Option<&Layer> {
    match shape(conductor) {
        Shape::Round => conductor.section.layers.last(),
        _ => None,
    }
}

/// A clear yes against a clear no; a slight pull settles nothing.
fn magnet(conductor: &Conductor) -> Option<String> {
    match magnetic(conductor)? {
        Magnetic::No => Some("does not stick".into()),
        Magnetic::Slight => None,
        Magnetic::Yes => Some("sticks".into()),
    }
}

fn wires_differ(one: &Conductor, other: &Conductor) -> bool {
    let caliper = Length::from_mm(0.1);
    match (wire_diameter(one), wire_diameter(other)) {
        (Some(one), Some(other)) => (one - other).abs() >= caliper,
        _ => false,
    }
}

/// A text that a record states; what it leaves empty is unknown.
fn stated(text: &str) -> Option<String> {
    (!text.is_empty()).then(|| text.to_owned())
}

fn core(conductor: &Conductor) -> Option<String> {
    match &conductor.construction {
        Construction::Rope(rope) if rope.core == RopeCore::Fibre => Some("fibre".into()),
        Construction::Rope(_) => Some("steel".into()),
        _ => None,
    }
}

fn strands(conductor: &Conductor) -> Option<u32> {
    match &conductor.construction {
        Construction::Rope(rope) => match class(&rope.class)? {
            (1, wires) => Some(wires),
            // A class of seven strands has one of them in the middle.
            (7, _) => Some(6),
            (strands, _) => Some(strands),
        },
        _ => None,
    }
}

fn class(class: &str) -> Option<(u32, u32)> {
    let (strands, wires) = class.split_once('x')?;
    let digits: String = wires.chars().take_while(char::is_ascii_digit).collect();
    Some((strands.parse().ok()?, digits.parse().ok()?))
}

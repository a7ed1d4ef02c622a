//! What a filled layout says: which blocks a face has, and what stands in them.

use super::face::BlockKind;
use super::sign::Sign;
use super::type_class::TypeClass;
use crate::colour::Srgb;
use crate::diagnostics::Place;
use crate::typeset::FontStyle;
use serde::Deserialize;
use std::collections::BTreeSet;
use std::sync::{Arc, OnceLock};

/// An element of a layout. Lengths are millimetres.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Node {
    /// Where in the layout it stands.
    pub at: Place,
    /// What it is to a reader, where it is a block of its own.
    pub block: Option<BlockHead>,
    pub room: Sizing,
    /// Where what stands side by side in it meets.
    pub level: Level,
    /// The frame that it is painted with, by its name in the style.
    pub frame: String,
    pub content: Content,
    pub children: Vec<Node>,
}

/// What makes a block of an element.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct BlockHead {
    /// Its name, once on the face.
    pub name: String,
    pub kind: BlockKind,
    /// The record's field that makes it as large as it is.
    pub field: String,
    /// How the names of the printed texts begin that it says.
    pub says: Vec<String>,
}

impl BlockHead {
    /// Whether it says a printed text of this name: one that is named so, or begins so, or is of what stands after
    /// "in".
    pub fn says(&self, name: &str) -> bool {
        let begins = |name: &str, start: &str| {
            name.strip_prefix(start)
                .is_some_and(|rest| rest.is_empty() || rest.starts_with([' ', ':', ',', '\'']))
        };
        let within = name.split_once(" in ").map(|(_, within)| within);
        self.says
            .iter()
            .any(|start| begins(name, start) || within.is_some_and(|within| begins(within, start)))
    }
}

/// What an element says of the room that it takes.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Sizing {
    pub width: Option<Measure>,
    /// The least that it may be narrowed to.
    pub least_width: Option<Measure>,
    pub height: Option<Measure>,
    /// Whether it takes the width that is left over beside its neighbours.
    pub grows: bool,
    /// Space above it: closes up first, and widens where there is room to spare.
    pub above: f64,
    /// Space from one child to the next below: closes up.
    pub gap: f64,
    /// Space from one child to the next beside.
    pub between: f64,
    /// How many columns of a table it takes.
    pub span: u16,
    /// Whether it stands at the lower end of the face.
    pub at_foot: bool,
    /// The edges of the card that its paint runs over.
    pub edges: Edges,
}

/// A length, or a part of what the element stands in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Measure {
    Mm(f64),
    Percent(f64),
}

/// Edges of the card.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Edges {
    pub top: bool,
    pub right: bool,
    pub bottom: bool,
    pub left: bool,
}

/// Where the children of an element that stand side by side meet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize)]
#[serde(rename_all = "lowercase")]
pub(super) enum Level {
    #[default]
    Base,
    Top,
    Middle,
}

/// What an element is.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Content {
    /// Children below each other.
    Stack,
    /// Children side by side; `divided` with a fine line between them.
    Row {
        wraps: bool,
        divided: bool,
    },
    /// Two children side by side; the part of the width that the first takes, from least to most, is settled so
    /// that both are as low as can be.
    Columns {
        share: (f64, f64),
    },
    /// Children in columns of these widths, row by row.
    Table {
        columns: Vec<Track>,
    },
    /// A row of a table; `divided` with a fine line above it.
    TableRow {
        divided: bool,
    },
    /// Children of which the first that leaves room for all is taken.
    Forms,
    /// A mark's paint, with its notches in the free edge.
    Swatch(Swatch),
    Text(Text),
    Sign(Sign),
    /// A line over the whole width.
    Rule {
        line: f64,
        colour: Srgb,
    },
    Drawing(DrawingRoom),
    /// SVG elements as the layout has them, one unit a millimetre.
    Svg {
        source: Arc<str>,
        /// What its texts are for.
        class: TypeClass,
    },
    /// Nothing.
    Space,
    /// Two lines over the whole face, from corner to corner: what must not be used. It takes no room.
    Strike,
}

/// How wide a column of a table is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Track {
    Mm(f64),
    /// As wide as what stands in it.
    Auto,
    /// This part of the width that is left over.
    Part(f64),
}

/// A mark's paint.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Swatch {
    pub fill: Srgb,
    /// The colour of letters on it.
    pub ink: Srgb,
    pub notches: u32,
    /// The shape of its notches, by its name in the style.
    pub notch: String,
}

/// A text with its class and style.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Text {
    pub words: String,
    pub class: TypeClass,
    pub font_style: FontStyle,
    /// Its colour, where that is not the one of what it stands in.
    pub ink: Option<Srgb>,
    pub align: Align,
    /// Whether it runs upward.
    pub upward: bool,
    /// Whether it is set in one line, and smaller than its class where that line has no room for it.
    pub shrinks: bool,
    /// How narrow and how wide it is, in sizes of type, once it has been measured.
    pub extents: OnceLock<(f64, f64)>,
}

/// Where a text stands in its room.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Deserialize)]
#[serde(rename_all = "lowercase")]
pub(super) enum Align {
    #[default]
    Start,
    Middle,
    End,
}

/// The room that a layout gives to a drawing.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct DrawingRoom {
    /// Which drawing.
    pub of: String,
    /// How high it is: as it comes, or from least to most in the room that is left over.
    pub heights: Option<Heights>,
}

/// How high a drawing may be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Heights {
    pub least: f64,
    /// What texts make way for by closing up and shrinking.
    pub wanted: f64,
    pub most: f64,
}

impl Node {
    /// How many forms the layout has.
    pub fn forms(&self) -> usize {
        let own = if self.content == Content::Forms { self.children.len() } else { 1 };
        self.children.iter().map(Node::forms).fold(own, usize::max)
    }

    /// What stands in it in one of its forms: what a form holds stands there in its place.
    pub fn children_in(&self, form: usize) -> Vec<&Self> {
        let mut all = Vec::with_capacity(self.children.len());
        for child in &self.children {
            match (&child.content, child.children.get(form).or(child.children.last())) {
                (Content::Forms, Some(chosen)) => all.extend(chosen.children_in(form)),
                _ => all.push(child),
            }
        }
        all
    }

    /// Whether all blocks in it, or it itself, name what follows.
    pub fn is_heading(&self) -> bool {
        match &self.block {
            Some(block) => block.kind == BlockKind::Heading,
            None => !self.children.is_empty() && self.children.iter().all(Node::is_heading),
        }
    }

    /// The drawings in it that are as large as they come.
    pub fn drawn(&self) -> BTreeSet<&str> {
        let own = match &self.content {
            Content::Drawing(room) if room.heights.is_none() => Some(room.of.as_str()),
            _ => None,
        };
        own.into_iter().chain(self.children.iter().flat_map(Self::drawn)).collect()
    }

    /// The first drawing whose height the program settles.
    pub fn flexible_drawing(&self) -> Option<&DrawingRoom> {
        match &self.content {
            Content::Drawing(room) if room.heights.is_some() => Some(room),
            _ => self.children.iter().find_map(Node::flexible_drawing),
        }
    }
}

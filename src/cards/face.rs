//! A card that is laid out: two faces, each made of blocks, each made of items.

use super::sign::Sign;
use super::type_class::TypeClass;
use crate::colour::Srgb;
use crate::diagnostics::Place;
use crate::units::Length;
use kurbo::Rect;
use serde::Deserialize;
use std::sync::Arc;

/// A card ready to print.
#[derive(Debug, Clone)]
pub struct Card {
    /// The number of the fitting or body it is about.
    pub number: String,
    /// Its title in words.
    pub title: String,
    /// The side that settles which.
    pub front: Face,
    /// The side that settles how.
    pub back: Face,
}

/// A tag for the parts of a fitting, ready to print on one side.
#[derive(Debug, Clone)]
pub struct Tag {
    /// The number of the fitting.
    pub number: String,
    /// Its name.
    pub title: String,
    /// Which of the fitting's tags it is.
    pub turn: Turn,
    /// What is printed.
    pub face: Face,
}

/// Which of several it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Turn {
    /// Counted from 1.
    pub number: usize,
    /// How many there are.
    pub of: usize,
}

impl Turn {
    /// What a tag in this turn is called, by the fitting's number.
    pub(super) fn called(self, number: &str) -> String {
        match self.of {
            1 => format!("the tag of {number}"),
            of => format!("tag {} of {of} of {number}", self.number),
        }
    }

    /// Whether no other comes after it.
    #[must_use]
    pub fn is_last(self) -> bool {
        self.number == self.of
    }

    /// In words, such as "1 of 2"; empty where there is only one.
    #[must_use]
    pub fn words(self) -> String {
        if self.of > 1 { format!("{}\u{a0}of\u{a0}{}", self.number, self.of) } else { String::new() }
    }
}

/// Front or back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[allow(missing_docs, reason = "the names say it")]
pub enum Side {
    Front,
    Back,
}

impl Side {
    /// The word for it.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Back => "back",
        }
    }
}

/// One side of a card, laid out and drawn with its bleed.
#[derive(Debug, Clone)]
pub struct Face {
    /// Which side.
    pub side: Side,
    /// Width and height of the trimmed card.
    pub trim: (Length, Length),
    /// How far the drawing runs past the trim on every side.
    pub bleed: Length,
    /// Its blocks in reading order, which is also the order of drawing.
    pub blocks: Vec<Block>,
}

/// A part of a face that is read as one.
#[derive(Debug, Clone)]
pub struct Block {
    /// Its name in the layout, unique on the face.
    pub name: String,
    /// What it is to a reader.
    pub kind: BlockKind,
    /// What a drawing shows, in words; empty for other kinds.
    pub alternative: String,
    /// Where the layout has it.
    pub at: Place,
    /// What stands in it, in the order of drawing.
    pub items: Vec<Item>,
    /// What it is drawn with, from below: mostly one layer.
    pub layers: Vec<Layer>,
}

/// Something on a face, in millimetres from the upper left corner of the trimmed card.
#[derive(Debug, Clone, PartialEq)]
pub struct Item {
    /// The room of its ink.
    pub bounds: Rect,
    /// Where the layout has it.
    pub at: Place,
    /// What it is.
    pub mark: ItemMark,
}

/// What an item on a face is.
#[derive(Debug, Clone, PartialEq)]
pub enum ItemMark {
    /// One line of a text.
    Line {
        /// What it says.
        words: String,
        /// What it is for.
        class: TypeClass,
        /// The size that it is set in.
        size: Length,
        /// Whether it is bold.
        bold: bool,
        /// Its colour, and that of what it stands on.
        colours: (Srgb, Srgb),
    },
    /// A painted box.
    Frame(String),
    /// A mark's paint with so many notches.
    Swatch {
        /// The paint.
        fill: Srgb,
        /// How many notches are cut into it.
        notches: u32,
    },
    /// A drawn sign.
    Sign(Sign),
    /// A straight line.
    Rule,
    /// Lines over the whole face.
    Strike,
    /// A bar beside what has changed since the card's last issue.
    ChangeBar,
    /// A drawing of the program's, by its name, and its scale.
    Drawing(String, String),
    /// SVG of the layout's own.
    Svg(SvgItem),
}

/// SVG of the layout's own on a face.
#[derive(Debug, Clone, PartialEq)]
pub struct SvgItem {
    /// The index of the layer that it is drawn in.
    pub layer: usize,
    /// The id of its group there.
    pub id: String,
    /// What its texts are for.
    pub class: TypeClass,
    /// What it stands on.
    pub ground: Srgb,
    /// What the layout has.
    pub source: Arc<str>,
}

/// Elements of a block that are drawn as one tree.
#[derive(Debug, Clone)]
pub struct Layer {
    /// The elements as SVG, at their place on the face with its bleed.
    pub source: Arc<str>,
    /// They alone on the whole face: one unit is one millimetre, and (0, 0) is the corner of the bleed, so that
    /// all trees of a face drawn over each other make it.
    pub tree: Arc<usvg::Tree>,
    /// Whether it is one line of a script whose syllables are several glyphs, which a PDF must hold together.
    pub by_syllables: bool,
}

/// What a block is to a reader.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum BlockKind {
    /// Text.
    #[default]
    Text,
    /// Text that names what follows.
    Heading,
    /// A drawing with an alternative text.
    Drawing,
    /// Nothing to read: rules, tints, crop aids.
    Ornament,
}

impl Face {
    /// The lines of text on it, in reading order.
    pub fn lines(&self) -> impl Iterator<Item = &str> {
        self.blocks.iter().flat_map(Block::lines)
    }
}

impl Block {
    /// What it says, with a space from line to line; none where it says nothing.
    #[must_use]
    pub fn words(&self) -> Option<String> {
        let lines: Vec<&str> = self.lines().collect();
        (!lines.is_empty()).then(|| lines.join(" "))
    }

    /// The lines of text in it, in reading order.
    pub fn lines(&self) -> impl Iterator<Item = &str> {
        self.items.iter().filter_map(|item| match &item.mark {
            ItemMark::Line { words, .. } => Some(words.as_str()),
            ItemMark::Sign(sign) => Some(sign.meaning()),
            _ => None,
        })
    }
}

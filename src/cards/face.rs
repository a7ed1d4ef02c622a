//! A card as it is drawn: two faces, each made of blocks.

use crate::units::Length;
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

/// One side of a card, drawn with its bleed.
#[derive(Debug, Clone)]
pub struct Face {
    /// Which side.
    pub side: Side,
    /// Width and height of the cut card.
    pub cut: (Length, Length),
    /// How far the drawing runs past the cut on every side.
    pub bleed: Length,
    /// Its blocks in reading order, which is also the order of drawing.
    pub blocks: Vec<Block>,
}

/// A part of a face that is read as one: one drawing tree, one tag in the PDF.
#[derive(Debug, Clone)]
pub struct Block {
    /// Its name in the layout, unique on the face.
    pub name: String,
    /// What it is to a reader.
    pub kind: BlockKind,
    /// What a drawing shows, in words; empty for other kinds.
    pub alternative: String,
    /// Its elements as SVG, at their place on the face with its bleed.
    pub source: Arc<str>,
    /// The block alone on the whole face: one unit is one millimetre, and (0, 0) is the corner of the
    /// bleed, so that trees of all blocks drawn over each other make the face.
    pub tree: Arc<usvg::Tree>,
}

/// What a block is to a reader.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum BlockKind {
    /// Text that names what follows.
    Heading,
    /// Text.
    Text,
    /// A drawing with an alternative text.
    Drawing,
    /// Nothing to read: rules, tints, crop aids.
    Ornament,
}

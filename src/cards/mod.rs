//! Faces of cards: blocks that are filled, fitted and proved to print.

mod face;

pub use face::{Block, BlockKind, Card, Face, Side};

//! Faces of cards: blocks that are filled, fitted and proved to print.

mod compose;
mod drawings;
mod face;
mod make;
mod picture;
mod plan;
mod preflight;
mod room;
mod setting;
mod tags;
mod type_class;
mod values;

pub use face::{Block, BlockKind, Card, Face, Side, Tag, Turn};
pub use make::{Input, make, make_all};
pub use picture::PictureError;
pub use setting::helpers;
pub use tags::{TAG, TagPlan, plan_tags};

#[cfg(test)]
mod tags_tests;
#[cfg(test)]
mod tests;

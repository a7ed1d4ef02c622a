//! Faces of cards: typed blocks that are laid out, fitted, drawn and proved to print.

mod arrange;
mod boxes;
mod columns;
mod complete;
mod compose;
mod corner;
mod description;
mod design;
mod draw;
mod drawings;
mod elements;
mod face;
mod flow;
mod form;
mod input;
mod make;
mod margins;
mod measure;
mod must_show;
mod paint;
mod picture;
mod png_file;
mod preflight;
mod read;
mod setting;
mod shape;
mod sign;
mod style;
mod svg_source;
mod tags;
mod tightness;
mod too_full;
mod type_class;
mod values;

pub use complete::{incomplete, incomplete_tag};
pub use compose::{FaceJob, FittedFace};
pub use design::Design;
pub use drawings::wrong_part;
pub use face::{Block, BlockKind, Card, Face, Item, ItemMark, Layer, Side, SvgItem, Tag, Turn};
pub use form::{Form, FormFace, form_mark, form_standing, form_whole, make_form};
pub use input::Input;
pub use make::{check, jobs, make, make_all, make_copy};
pub use picture::PictureError;
pub use shape::{A5, Shape};
pub use sign::Sign;
pub use tags::{TAG, TagPlan, plan_tags};
pub use too_full::{FaceError, TooFull};
pub use type_class::TypeClass;

#[cfg(test)]
mod flow_tests;
#[cfg(test)]
mod layout_tests;
#[cfg(test)]
mod tags_tests;
#[cfg(test)]
mod tests;

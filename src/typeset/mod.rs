//! Fonts, and the measuring and breaking of text: what a text takes on paper before it is drawn.

mod breaking;
mod choosing;
mod coverage;
mod direction;
mod drawing_options;
mod font_fault;
mod fonts;
mod glue;
mod line;
mod script;
mod sfnt;
mod shaping;
mod style;
mod trial;
mod trial_texts;
mod values;

pub use direction::isolated;
pub use fonts::{FontSource, Fonts};
pub use line::{Ink, Line, Run};
pub use script::{is_joined, without_marks};
pub use style::{FontStyle, Style};
pub use values::marked_value;

#[cfg(test)]
mod damaged_tests;
#[cfg(all(test, feature = "debian-fonts"))]
mod devanagari_tests;
#[cfg(test)]
mod tests;

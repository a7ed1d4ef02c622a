//! Fonts, and the measuring and breaking of text: what a text takes on paper before it is drawn.

mod breaking;
mod fonts;
mod glue;
mod measure;
mod style;

pub use fonts::{FontSource, Fonts};
pub use measure::Run;
pub use style::{Cut, Style};

#[cfg(test)]
mod tests;

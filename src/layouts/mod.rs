//! Layouts of cards and pages: finding them, compiling them, filling them, and what goes wrong in them.

mod built_in;
mod fault;
mod helper;
mod load;
mod marks;

pub use helper::{Helper, HelperFn};
pub use load::Layouts;
pub use marks::{MARK, marked_place, place_before, unmarked};

#[cfg(test)]
mod tests;

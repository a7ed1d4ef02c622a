//! Layouts of cards and pages: finding them, compiling them, filling them, and what goes wrong in them.

mod budget;
mod built_in;
mod counted;
mod fault;
mod helper;
mod load;
mod marks;
mod tags;
mod unused;

pub use fault::place_in;
pub use helper::{Helper, HelperFn};
pub use load::Layouts;
pub use marks::{MARK, marked_place, place_before, unmarked};
pub use unused::{is_given_out, unused};

#[cfg(test)]
mod tests;

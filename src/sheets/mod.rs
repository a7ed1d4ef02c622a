//! Cards and tags laid out on sheets of paper, and the PDF that is printed from.

mod document;
mod fault;
mod impose;
mod margin;
mod options;
mod page;
mod points;
mod print_item;
mod proof;
mod syllables;

pub use document::{SheetFile, files, pdf};
pub use fault::SheetFault;
pub use impose::{Rectangle, SheetPlan, Slot, capacity, impose};
pub use options::Options;
pub use print_item::{PrintItem, PrintKind};
pub use proof::proof;

#[cfg(test)]
mod tests;

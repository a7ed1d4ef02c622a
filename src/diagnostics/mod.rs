//! What the program has to say about records: findings as data, and their printers.

mod finding;
mod json;
mod text;

pub use finding::{Finding, Findings, Related, Severity};
pub use json::to_json;
pub use text::{Colour, print};

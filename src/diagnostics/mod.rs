//! What the program has to say about records: findings as data, and their printers.

mod finding;
mod json;
mod nearest;
mod text;
mod unread;
mod visible;

/// The places that findings point at, for modules that find things but read no file.
pub use crate::source::{FilePath, Place};
pub use finding::{Finding, Findings, Related, Severity};
pub use json::to_json;
pub use nearest::{KnownNames, nearest};
pub use text::{Colour, print};
pub use visible::{is_hidden, shortened, visible, visible_json, visible_lines};

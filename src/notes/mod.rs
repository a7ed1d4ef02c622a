//! Notes: Markdown to HTML that is safe to show, with links to records.

pub mod address;
mod check;
mod headings;
mod html;
mod index;
mod letters;
mod links;
mod parse;
mod positions;
mod tables;
#[cfg(test)]
mod tests;
mod values;
mod writer;

pub use check::check;
pub use headings::Heading;
pub use html::{Html, to_html};
pub use index::Notes;

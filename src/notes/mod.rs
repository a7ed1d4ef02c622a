//! Notes: Markdown to HTML that is safe to show, with links to records.

pub mod address;
mod headings;
mod html;
mod links;
mod markdown;
#[cfg(test)]
mod tests;
mod writer;

pub use headings::Heading;
pub use html::{Html, check, to_html};

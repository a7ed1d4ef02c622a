//! Markdown to safe HTML, with links to records.

//! What comes out asks nothing of a network and runs nothing but the booklet's own scripts: `page-not-offline`.
//!
//! Why: a layout of the user's may bring anything; a page that is opened from a disk in a depot must neither fail
//! without a network nor tell anybody that it was opened.
//!
//! To put it right: addresses of the booklet's own files alone, scripts and styles in files of the layouts folder, and
//! the policy as the built-in layouts have it, first in the head.

mod address;
mod elements;
mod html;
mod state;
mod style;

pub(super) use html::{Expected, page};
pub(super) use style::sheet;

/// The policy of a page that is a file.
pub(super) const POLICY: &str = "default-src 'none'; style-src 'self' file:; script-src 'self' file:; img-src 'self' file:; base-uri 'none'; form-action 'none'";

/// The policy of the single file, whose styles and scripts stand in it and carry this nonce.
pub(super) fn policy_of_single_file(nonce: &str) -> String {
    format!(
        "default-src 'none'; style-src 'nonce-{nonce}'; script-src 'nonce-{nonce}'; img-src data:; base-uri 'none'; form-action 'none'"
    )
}

/// What is wrong with a page or style sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct OnlineUse {
    /// In words.
    pub said: String,
    /// As it stands in the page, to be looked for in the layouts; empty where something is missing.
    pub written: String,
    /// Whether something is not there that the page must show.
    pub is_lack: bool,
    /// How many bytes of a style sheet stand before it; 0 of a page.
    pub at: usize,
}

impl OnlineUse {
    fn new(said: impl Into<String>, written: impl Into<String>) -> Self {
        Self { said: said.into(), written: written.into(), is_lack: false, at: 0 }
    }
}

//! The layouts and the style that cards are made with.

use super::style::{STYLE, Styles};
use crate::diagnostics::Findings;
use crate::layouts::{Helper, Layouts};
use crate::source::{World, WorldError};

/// The layouts and the style of cards, kit tags and whatever else is made of blocks, with the pages that go with it.
#[derive(Debug, Clone)]
pub struct Design {
    /// The layouts.
    pub layouts: Layouts,
    pub(super) styles: Styles,
}

impl Design {
    /// The built-in layouts and style, and the user's own in their place, with functions that layouts may call.
    ///
    /// # Errors
    /// Where the user's layouts can't be read.
    pub fn load(world: &dyn World, helpers: &[Helper]) -> Result<(Self, Findings), WorldError> {
        let (layouts, mut findings) =
            Layouts::load_together(world, &["cards", "training", "paper"], helpers)?;
        let built_in = Layouts::built_in(STYLE).unwrap_or_default();
        let (styles, found) = Styles::read(built_in, layouts.text(STYLE).unwrap_or(built_in));
        findings.extend(found);
        Ok((Self { layouts, styles }, findings))
    }

    /// The files that the user brings and that are not as the built-in ones, with their texts, sorted.
    pub fn own(&self) -> impl Iterator<Item = (&str, &str)> {
        self.layouts.own()
    }
}

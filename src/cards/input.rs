//! What cards are made from.

use super::design::Design;
use crate::catalogue::Catalogue;
use crate::mixups::Mixups;
use crate::register::Register;
use crate::typeset::Fonts;

/// What cards are made from.
#[derive(Debug, Clone, Copy)]
pub struct Input<'a> {
    /// The records, for what is drawn.
    pub catalogue: &'a Catalogue,
    /// What can be confused, for what is drawn.
    pub mixups: &'a Mixups,
    /// The editions, for what the foot says.
    pub register: &'a Register,
    /// The layouts and the style.
    pub design: &'a Design,
    /// The fonts.
    pub fonts: &'a Fonts,
}

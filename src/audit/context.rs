//! What rules look at.

use crate::catalogue::Catalogue;
use crate::mixups::Mixups;

/// What rules look at.
#[derive(Debug, Clone, Copy)]
pub struct Context<'a> {
    /// The records that are sound.
    pub catalogue: &'a Catalogue,
    /// What can be confused.
    pub mixups: &'a Mixups,
}

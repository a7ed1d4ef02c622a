//! What an inspector would say of a catalogue: one file a rule.

use crate::catalogue::Catalogue;
use crate::diagnostics::Findings;
use crate::mixups::Mixups;

/// What rules look at.
#[derive(Debug, Clone, Copy)]
pub struct Context<'a> {
    /// The records that are sound.
    pub catalogue: &'a Catalogue,
    /// What can be confused.
    pub mixups: &'a Mixups,
}

/// A rule adds what it finds.
type Rule = fn(Context<'_>, &mut Findings);

/// Every rule, in the order of its file's name.
const RULES: &[Rule] = &[];

/// Everything that the rules find.
#[must_use]
pub fn check(context: Context<'_>) -> Findings {
    let mut findings = Findings::new();
    for rule in RULES {
        rule(context, &mut findings);
    }
    findings
}

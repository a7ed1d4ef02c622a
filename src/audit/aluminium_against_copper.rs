//! `aluminium-against-copper`: a gripping part of copper or bronze on an aluminium conductor, or the
//! other way round.
//!
//! Why: in rain the two metals make a cell, and the aluminium is eaten away under the grip.
//!
//! To put it right: take a gripping part of the conductor's own metal, or a fitting made for the pair.

use super::Context;
use super::inspected::{built, on_fitting};
use crate::diagnostics::{Findings, Severity};
use crate::mixups::own;
use crate::section::MaterialGroup;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in built(context) {
        for own in own(fitting, &context.catalogue.settings.limits) {
            let (part, wire) = (&own.part.material, &own.conductor.material);
            if !eats(part.group, wire.group) && !eats(wire.group, part.group) {
                continue;
            }
            let message = format!(
                "{} of {} bears on {} of {}",
                own.part.number, part.name, own.conductor.id, wire.name
            );
            let finding =
                on_fitting(Severity::Warning, "aluminium-against-copper", fitting, "parts", message);
            findings.push(
                finding.help("take a gripping part of the conductor's metal, or one made for the pair"),
            );
        }
    }
}

fn eats(one: MaterialGroup, other: MaterialGroup) -> bool {
    one == MaterialGroup::Aluminium && matches!(other, MaterialGroup::Copper | MaterialGroup::Bronze)
}

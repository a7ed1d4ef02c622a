#![doc = include_str!("../explain/codes/aluminium-against-copper.md")]

use super::Context;
use super::inspected::{built, on_fitting};
use super::touching::touching;
use crate::diagnostics::{Findings, Severity};
use crate::section::MaterialGroup;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in built(context) {
        for (part, wire) in touching(fitting) {
            let (one, other) = (part.material.group, wire.material.group);
            if !eats(one, other) && !eats(other, one) {
                continue;
            }
            let message = format!(
                "{} of {} bears on {} of {}",
                part.number, part.material.name, wire.id, wire.material.name
            );
            let finding =
                on_fitting(Severity::Warning, "aluminium-against-copper", fitting, "parts", message);
            findings.push(finding.help("take a part of the conductor's metal, or one made for the pair"));
        }
    }
}

fn eats(one: MaterialGroup, other: MaterialGroup) -> bool {
    one == MaterialGroup::Aluminium && matches!(other, MaterialGroup::Copper | MaterialGroup::Bronze)
}

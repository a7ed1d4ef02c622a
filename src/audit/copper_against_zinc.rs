#![doc = include_str!("../explain/codes/copper-against-zinc.md")]

use super::Context;
use super::inspected::{built, on_fitting};
use super::touching::touching;
use crate::diagnostics::{Findings, Severity};
use crate::section::MaterialGroup;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in built(context) {
        for (part, wire) in touching(fitting) {
            let coated = matches!(wire.material.group, MaterialGroup::Steel | MaterialGroup::Zinc);
            if !coated || !matches!(part.material.group, MaterialGroup::Copper | MaterialGroup::Bronze) {
                continue;
            }
            let message = format!(
                "{} of {} bears on {} of {}",
                part.number, part.material.name, wire.id, wire.material.name
            );
            let finding = on_fitting(Severity::Warning, "copper-against-zinc", fitting, "parts", message);
            findings.push(finding.help("take a part of steel or iron, or one made for the pair"));
        }
    }
}

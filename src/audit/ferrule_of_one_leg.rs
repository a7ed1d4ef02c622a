#![doc = include_str!("../explain/codes/ferrule-of-one-leg.md")]

use super::Context;
use super::inspected::on_fitting;
use crate::catalogue::{Family, Role};
use crate::diagnostics::{Findings, Severity};
use crate::grip::{Ferrule, Geometry};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let eyes = context.catalogue.fittings.values().filter(|fitting| fitting.family == Family::RopeThimble);
    for fitting in eyes {
        for part in fitting.items.iter().map(|item| &item.part).filter(|part| part.role == Role::Ferrule) {
            let Some(Geometry::Ferrule(Ferrule { legs, .. })) = &part.geometry else { continue };
            if *legs == Some(2) {
                continue;
            }
            let message = format!("both legs of the eye lie in {}, and it is made for one", part.number);
            let finding = on_fitting(Severity::Warning, "ferrule-of-one-leg", fitting, "parts", message)
                .found(legs.map_or_else(|| "no `legs`".to_owned(), |legs| format!("`legs: {legs}`")))
                .expected("`legs: 2`, and the oval of its bore")
                .related(part.origin.of("geometry.ferrule"), "the ferrule");
            findings
                .push(finding.help("state both in the ferrule's record, or take the ferrule for two legs"));
        }
    }
}

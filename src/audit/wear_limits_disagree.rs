#![doc = include_str!("../explain/codes/wear-limits-disagree.md")]

use super::Context;
use super::conductors::{each, warning};
use super::inspected::numerals;
use crate::catalogue::Conductor;
use crate::diagnostics::Findings;
use crate::section::{Construction, height_at_loss, profile};
use crate::units::Length;

/// How far the two heights may lie apart: rounding, and who counts from the nominal section. Common practice, no source.
const APART: Length = Length::from_mm(0.4);

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    each(context, findings, |conductor, _| {
        let wear = conductor.wear.as_ref()?;
        let (plan, percent) = (wear.plan_height?, wear.limit_percent?);
        let limit = height_at(conductor, percent)?;
        if limit - plan <= APART {
            return None;
        }
        let message =
            format!("at this height more than {} % of the section are gone", numerals.shortest(percent, 1));
        let finding =
            warning(conductor, "wear-limits-disagree", "construction.grooved.wear.plan_height_mm", message)
                .found(numerals.length(plan, 1))
                .expected(format!("more than about {}", numerals.length(limit, 1)))
                .related(
                    conductor.origin.of("construction.grooved.wear.limit_percent"),
                    "the loss that is allowed",
                );
        Some(finding.help(
            "plan the replacement before the wire must be replaced; compare both with the specification",
        ))
    });
    each(context, findings, |conductor, _| {
        let wear = conductor.wear.as_ref()?;
        let (replace, percent) = (wear.replace_height?, wear.limit_percent?);
        let limit = height_at(conductor, percent)?;
        if (limit - replace).abs() <= APART {
            return None;
        }
        let field = "construction.grooved.wear.replace_height_mm";
        let message = format!(
            "{} % of the section are gone at another height than this",
            numerals.shortest(percent, 1)
        );
        let finding = warning(conductor, "wear-limits-disagree", field, message)
            .found(numerals.length(replace, 1))
            .expected(format!("about {}", numerals.length(limit, 1)))
            .related(
                conductor.origin.of("construction.grooved.wear.limit_percent"),
                "the loss that is allowed",
            );
        Some(finding.help("compare both with the specification: one of them may be mistyped"))
    });
}

/// The height at which so much of the section is gone.
fn height_at(conductor: &Conductor, percent: f64) -> Option<Length> {
    let Construction::Grooved(grooved) = &conductor.construction else { return None };
    height_at_loss(&profile(grooved).ok()?, conductor.wear_basis() * (percent / 100.0)).ok()
}

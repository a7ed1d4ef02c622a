#![doc = include_str!("../explain/codes/tail-too-short.md")]

use super::Context;
use super::inspected::{built, numerals, on_fitting};
use crate::catalogue::{Fitting, Role};
use crate::diagnostics::{Findings, Severity};
use crate::grip::Geometry;
use crate::units::Length;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let numerals = numerals(context);
    for fitting in built(context) {
        let (Some(tail), Some(needed)) = (fitting.tail, row_of_grips(fitting)) else { continue };
        if tail >= needed {
            continue;
        }
        let message = "the grips are longer, one behind the other, than the tail".to_owned();
        let finding = on_fitting(Severity::Warning, "tail-too-short", fitting, "tail_mm", message)
            .found(numerals.length(tail, 0))
            .expected(format!("{} or more", numerals.length(needed, 0)));
        findings.push(finding.help("check tail, the number of grips and their spacing"));
    }
}

/// From the first grip to the last; nothing where their spacing is not stated.
fn row_of_grips(fitting: &Fitting) -> Option<Length> {
    let grips = fitting.items.iter().filter(|item| item.part.role == Role::RopeGrip);
    let count: u32 = grips.clone().map(|item| item.quantity).sum();
    let spacing = grips.clone().find_map(|item| match item.part.geometry.as_ref()? {
        Geometry::RopeGrip(grip) => grip.spacing,
        _ => None,
    })?;
    Some(spacing * f64::from(count.checked_sub(1)?))
}

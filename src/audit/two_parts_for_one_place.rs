#![doc = include_str!("../explain/codes/two-parts-for-one-place.md")]

use super::Context;
use super::inspected::{built, on_fitting};
use crate::catalogue::{Family, Fitting, Part, Role};
use crate::diagnostics::{Finding, Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    findings.extend(built(context).filter_map(|fitting| doubled(fitting)));
}

fn doubled(fitting: &Fitting) -> Option<Finding> {
    let is_dead_end = matches!(fitting.family, Family::ConeDeadEnd | Family::WedgeDeadEnd);
    if !is_dead_end || fitting.conductors.len() != 1 {
        return None;
    }
    let placed: Vec<&Part> =
        fitting.items.iter().map(|item| item.part.as_ref()).filter(|part| has_a_place(part)).collect();
    let (one, two) = placed.iter().enumerate().find_map(|(nth, one)| {
        let two =
            placed[nth + 1..].iter().find(|two| (two.role, &two.interface) == (one.role, &one.interface))?;
        Some((*one, *two))
    })?;
    let message =
        format!("{} and {} are both a {} for the same place", one.number, two.number, one.role.word());
    let finding = on_fitting(Severity::Error, "two-parts-for-one-place", fitting, "parts", message)
        .related(one.origin.of("role"), "one of them")
        .related(two.origin.of("role"), "the other");
    Some(finding.help("keep the one that belongs there; parts that go in together have an `interface` each"))
}

/// Of other parts, such as screws and pins, a fitting may have several of a kind.
fn has_a_place(part: &Part) -> bool {
    part.role.grips() || matches!(part.role, Role::Socket | Role::Body)
}

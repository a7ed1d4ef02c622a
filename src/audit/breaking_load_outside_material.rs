#![doc = include_str!("../explain/codes/breaking-load-outside-material.md")]

use super::Context;
use super::conductors::{each, error, warning};
use crate::diagnostics::Findings;
use crate::section::stated::{judge_load, load_window};

/// Outside the window by more than this no difference between standards explains it.
const FAR: f64 = 1.15;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    each(context, findings, |conductor, against| {
        let stated = conductor.stated.breaking_load?;
        let group = conductor.material.group;
        if !judge_load(stated, against.section, group).differs() {
            return None;
        }
        let window = load_window(against.section, group);
        let far = stated > window.most() * FAR || stated * FAR < window.least();
        let report = if far { error } else { warning };
        let side = if stated > window.most() { "more" } else { "less" };
        let stress = (stated / against.section.metal).n_per_mm2();
        let message = format!(
            "the stated breaking load of {} kN is {side} than {} of this section has: {stress:.0} N/mm²",
            stated.kn(),
            conductor.material.name
        );
        let finding = report(conductor, "breaking-load-outside-material", "stated.breaking_load_kN", message)
            .found(format!("{} kN", stated.kn()))
            .expected(format!("{:.1} to {:.1} kN", window.least().kn(), window.most().kn()))
            .help("check the load, the material and its strength against the specification");
        Some(finding)
    });
}

#![doc = include_str!("../explain/codes/breaking-load-outside-material.md")]

use super::Context;
use super::conductors::{each, error, warning};
use crate::catalogue::Conductor;
use crate::diagnostics::{Finding, Findings};
use crate::section::stated::{judge_load, load_window, most_load};
use crate::section::{Construction, Section};
use crate::units::{Force, Numerals};

/// Outside the window by more than this no difference between standards explains it.
const FAR: f64 = 1.15;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    each(context, findings, |conductor, against| too_strong(conductor, against.section));
    each(context, findings, |conductor, against| {
        let stated = conductor.stated.breaking_load?;
        let group = conductor.material.group;
        if !judge_load(stated, against.section, group).differs() {
            return None;
        }
        let window = load_window(against.section, group);
        let numerals = Numerals::default();
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
            .expected(numerals.window(window.map(Force::kn), 1, "kN"))
            .help("check the load, the material and its strength against the specification");
        Some(finding)
    });
}

/// A strength of the record's own, or a rope grade, that no metal of this family has.
fn too_strong(conductor: &Conductor, section: &Section) -> Option<Finding> {
    let (load, group) = (section.breaking_load?, conductor.material.group);
    let most = most_load(section, group);
    if load <= most {
        return None;
    }
    let field = match conductor.construction {
        Construction::Rope(_) => "construction.rope.grade_N_per_mm2",
        _ => "material",
    };
    let stress = |load: Force| format!("{:.0} N/mm²", (load / section.metal).n_per_mm2());
    let message = format!("the computed breaking load is more than any {} of this section has", group.word());
    let finding = error(conductor, "breaking-load-outside-material", field, message)
        .found(format!("{:.1} kN, {}", load.kn(), stress(load)))
        .expected(format!("at most {:.1} kN, {}", most.kn(), stress(most)))
        .help("check the material, its strength and the grade of a rope against the specification");
    Some(finding)
}

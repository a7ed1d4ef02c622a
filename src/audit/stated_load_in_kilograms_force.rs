#![doc = include_str!("../explain/codes/stated-load-in-kilograms-force.md")]

use super::Context;
use super::conductors::{each, error};
use crate::diagnostics::Findings;
use crate::section::stated::{LoadConfusion, judge_load, load_window};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    each(context, findings, |conductor, against| {
        let stated = conductor.stated.breaking_load?;
        let group = conductor.material.group;
        let confusion = judge_load(stated, against.section, group).confusion()?;
        let window = load_window(against.section, group);
        let message = format!(
            "the stated breaking load of {} kN looks like kilograms-force typed as newtons or kilonewtons",
            stated.kn()
        );
        (confusion == LoadConfusion::KilogramsForce).then(|| {
            error(conductor, "stated-load-in-kilograms-force", "stated.breaking_load_kN", message)
                .found(format!(
                    "{} kN, {:.0} N/mm² of the metal",
                    stated.kn(),
                    (stated / against.section.metal).n_per_mm2()
                ))
                .expected(format!(
                    "{:.1} to {:.1} kN for this metal",
                    window.least().kn(),
                    window.most().kn()
                ))
                .help("compare it with the standard first: a digit may be too many; kilograms-force divided by 102 are kilonewtons (1 kgf is 9.80665 N)")
        })
    });
}

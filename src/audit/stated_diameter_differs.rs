#![doc = include_str!("../explain/codes/stated-diameter-differs.md")]

use super::Context;
use super::conductors::{each, error};
use crate::diagnostics::Findings;
use crate::section::stated::judge_diameter;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    each(context, findings, |conductor, against| {
        let stated = conductor.stated.overall_diameter?;
        let computed = against.section.overall_diameter;
        let message = format!(
            "the stated diameter of {} mm differs by {:+.2} mm from the {:.2} mm that the construction has",
            stated.mm(),
            (stated - computed).mm(),
            computed.mm()
        );
        judge_diameter(stated, against).differs().then(|| {
            error(conductor, "stated-diameter-differs", "stated.overall_diameter_mm", message)
                .found(format!("{} mm", stated.mm()))
                .expected(format!("{:.2} mm ± {} mm", computed.mm(), against.diameter_tolerance.mm()))
                .help("check the wires' number and diameter against the specification; measure a sample")
        })
    });
}

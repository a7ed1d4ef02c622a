#![doc = include_str!("../explain/codes/stated-diameter-from-section.md")]

use super::Context;
use super::conductors::{each, error};
use crate::diagnostics::Findings;
use crate::section::stated::{DiameterConfusion, judge_diameter};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    each(context, findings, |conductor, against| {
        let stated = conductor.stated.overall_diameter?;
        let DiameterConfusion::FromSection(area) = judge_diameter(stated, against).confusion()? else {
            return None;
        };
        let computed = against.section.overall_diameter.mm();
        let message = format!(
            "the stated diameter of {} mm is that of a solid circle of {:.2} mm²; the conductor is {computed:.2} mm wide",
            stated.mm(),
            area.mm2()
        );
        let finding = error(conductor, "stated-diameter-from-section", "stated.overall_diameter_mm", message)
            .found(format!("{} mm", stated.mm()))
            .expected(format!("{computed:.2} mm, round the outermost wires"))
            .help("state the diameter that a caliper measures");
        Some(finding)
    });
}

#![doc = include_str!("../explain/codes/stated-section-is-outer-group.md")]

use super::Context;
use super::conductors::{each, error};
use crate::diagnostics::Findings;
use crate::section::stated::{SectionConfusion, judge_section};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    each(context, findings, |conductor, against| {
        let stated = conductor.stated.section?;
        let confusion = judge_section(stated, against).confusion()?;
        let metal = against.section.metal.mm2();
        let message = format!(
            "the stated section of {} mm² is of the outer group only; all metal is {metal:.2} mm²",
            stated.mm2()
        );
        (confusion == SectionConfusion::OuterGroupOnly).then(|| {
            error(conductor, "stated-section-is-outer-group", "stated.section_mm2", message)
                .found(format!("{} mm²", stated.mm2()))
                .expected(format!("{metal:.2} mm², outer group and core"))
                .help("state the section of all metal, or leave `section_mm2` out")
        })
    });
}

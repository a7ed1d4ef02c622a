#![doc = include_str!("../explain/codes/stated-section-is-circle-area.md")]

use super::Context;
use super::conductors::{each, error};
use crate::diagnostics::Findings;
use crate::section::stated::{SectionConfusion, judge_section};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    each(context, findings, |conductor, against| {
        let stated = conductor.stated.section?;
        let SectionConfusion::CircleArea(diameter) = judge_section(stated, against).confusion()? else {
            return None;
        };
        let metal = against.section.metal.mm2();
        let message = format!(
            "the stated section of {} mm² is the area of the circle on {:.2} mm; the metal section is {metal:.2} mm²",
            stated.mm2(),
            diameter.mm()
        );
        let finding = error(conductor, "stated-section-is-circle-area", "stated.section_mm2", message)
            .found(format!("{} mm²", stated.mm2()))
            .expected(format!("{metal:.2} mm², computed from the construction"))
            .help("state the metal section, or leave `section_mm2` out");
        Some(finding)
    });
}

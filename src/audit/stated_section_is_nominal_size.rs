#![doc = include_str!("../explain/codes/stated-section-is-nominal-size.md")]

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
            "the stated section of {} mm² is the nominal size; the metal section is {metal:.2} mm²",
            stated.mm2()
        );
        (confusion == SectionConfusion::NominalSize).then(|| {
            error(conductor, "stated-section-is-nominal-size", "stated.section_mm2", message)
                .found(format!("{} mm²", stated.mm2()))
                .expected(format!("{metal:.2} mm², computed from the construction"))
                .help("check the sizes of the construction first; then state the metal section, or leave `section_mm2` out: the name belongs in `nominal_size_mm2`")
        })
    });
}

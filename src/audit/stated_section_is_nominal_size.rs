//! `stated-section-is-nominal-size`: a stated section that is the nominal size.
//!
//! Why: the nominal size is a name; the metal is less or more, and a load worked out from the name is
//! wrong by as much.
//!
//! To put it right: state the metal section, or leave `stated.section_mm2` out; the name belongs in
//! `nominal_size_mm2`.

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
                .help("state the metal section, or leave `section_mm2` out; the name belongs in `nominal_size_mm2`")
        })
    });
}

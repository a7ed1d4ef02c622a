#![doc = include_str!("../explain/codes/stated-diameter-in-inches.md")]

use super::Context;
use super::conductors::{each, error};
use crate::diagnostics::Findings;
use crate::section::stated::{DiameterConfusion, judge_diameter};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    each(context, findings, |conductor, against| {
        let stated = conductor.stated.overall_diameter?;
        let confusion = judge_diameter(stated, against).confusion()?;
        let message = format!(
            "the stated diameter of {} mm is a number of inches; the conductor is {:.2} mm wide",
            stated.mm(),
            against.section.overall_diameter.mm()
        );
        (confusion == DiameterConfusion::Inches).then(|| {
            error(conductor, "stated-diameter-in-inches", "stated.overall_diameter_mm", message)
                .found(format!("{} mm", stated.mm()))
                .expected(format!("{:.2} mm", stated.mm() * 25.4))
                .help("multiply by 25.4: the field is in millimetres")
        })
    });
}

//! `stated-diameter-from-section`: a stated diameter that was got back from an area, d = √(4S/π).
//!
//! Why: a stranded conductor is wider than a solid wire of the same metal; a cone or a wedge bored for
//! the smaller figure does not take it.
//!
//! To put it right: state the diameter of the circle round the conductor, as a caliper measures it.

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

#![doc = include_str!("../explain/codes/stated-section-differs.md")]

use super::Context;
use super::conductors::{each, error, warning};
use crate::diagnostics::Findings;
use crate::section::Construction;
use crate::section::stated::judge_section;

/// A rope's section is its class's factor, from which makers' ropes depart by so much.
const ROPES_DEPART: f64 = 0.10;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    each(context, findings, |conductor, against| {
        let stated = conductor.stated.section?;
        let metal = against.section.metal;
        let is_rope = matches!(conductor.construction, Construction::Rope(_));
        let usual = is_rope && (stated / metal - 1.0).abs() <= ROPES_DEPART;
        let report = if usual { warning } else { error };
        let message = format!(
            "the stated section of {} mm² differs by {:+.2} % from the metal section of {:.2} mm²",
            stated.mm2(),
            100.0 * (stated / metal - 1.0),
            metal.mm2()
        );
        judge_section(stated, against).differs().then(|| {
            report(conductor, "stated-section-differs", "stated.section_mm2", message)
                .found(format!("{} mm²", stated.mm2()))
                .expected(format!("{:.2} mm² ± {} %", metal.mm2(), against.section_tolerance_percent))
                .help("check the wires' number and diameter against the specification")
        })
    });
}

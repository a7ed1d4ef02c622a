#![doc = include_str!("../explain/codes/nominal-size-differs.md")]

use super::Context;
use super::conductors::{each, warning};
use crate::diagnostics::Findings;
use crate::section::stated::judge_nominal_size;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let tolerance = context.catalogue.settings.limits.nominal_tolerance_percent;
    each(context, findings, |conductor, against| {
        let nominal = conductor.nominal_size?;
        let judged = judge_nominal_size(nominal, against.section, tolerance)?;
        let cause =
            if judged.is_circle_area { ": it is the area of the circle on the overall diameter" } else { "" };
        let message = format!(
            "the nominal size of {} mm² differs by {:+.1} % from the metal section{cause}",
            nominal.mm2(),
            judged.departs_percent
        );
        let finding = warning(conductor, "nominal-size-differs", "nominal_size_mm2", message)
            .found(format!("{} mm²", nominal.mm2()))
            .expected(format!("{:.2} mm² ± {tolerance} %", judged.nearest.mm2()))
            .help("check the nominal size and the wires against the specification");
        Some(finding)
    });
}

#![doc = include_str!("../explain/codes/stated-resistance-differs.md")]

use super::Context;
use super::conductors::{each, warning};
use crate::diagnostics::Findings;
use crate::section::stated::judge_resistance;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    each(context, findings, |conductor, against| {
        let (stated, computed) = (conductor.stated.resistance_20c?, against.section.resistance_20c?);
        let message = format!(
            "the stated resistance of {} Ω/km differs by {:+.1} % from the computed one",
            stated.ohm_per_km(),
            100.0 * (stated / computed - 1.0)
        );
        (!judge_resistance(stated, computed)).then(|| {
            warning(conductor, "stated-resistance-differs", "stated.resistance_20c_ohm_per_km", message)
                .found(format!("{} Ω/km", stated.ohm_per_km()))
                .expected(format!("{:.4} Ω/km ± 4 % at 20 °C", computed.ohm_per_km()))
                .help("check the resistance, the material and the wires against the specification")
        })
    });
}

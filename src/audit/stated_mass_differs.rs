#![doc = include_str!("../explain/codes/stated-mass-differs.md")]

use super::Context;
use super::conductors::{each, warning};
use crate::diagnostics::Findings;
use crate::section::stated::judge_mass;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    each(context, findings, |conductor, against| {
        let (stated, computed) = (conductor.stated.mass?, against.section.mass?);
        let message = format!(
            "the stated mass of {} kg/km differs by {:+.1} % from the computed one",
            stated.kg_per_km(),
            100.0 * (stated / computed - 1.0)
        );
        judge_mass(stated, computed).differs().then(|| {
            warning(conductor, "stated-mass-differs", "stated.mass_kg_per_km", message)
                .found(format!("{} kg/km", stated.kg_per_km()))
                .expected(format!("{:.0} kg/km ± 3 %", computed.kg_per_km()))
                .help("check the mass, the material and the wires against the specification")
        })
    });
}

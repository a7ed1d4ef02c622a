#![doc = include_str!("../explain/codes/stated-mass-per-hundred-metres.md")]

use super::Context;
use super::conductors::{each, error};
use crate::diagnostics::Findings;
use crate::section::stated::{MassConfusion, judge_mass};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    each(context, findings, |conductor, against| {
        let (stated, computed) = (conductor.stated.mass?, against.section.mass?);
        let confusion = judge_mass(stated, computed).confusion()?;
        let message = format!(
            "the stated mass of {} kg/km is a number of kilograms per 100 m; the conductor has {:.0} kg/km",
            stated.kg_per_km(),
            computed.kg_per_km()
        );
        (confusion == MassConfusion::KilogramsPerHundredMetres).then(|| {
            error(conductor, "stated-mass-per-hundred-metres", "stated.mass_kg_per_km", message)
                .found(format!("{} kg/km", stated.kg_per_km()))
                .expected(format!("{:.0} kg/km", computed.kg_per_km()))
                .help("multiply kilograms per 100 m by ten to get kg/km")
        })
    });
}

#![doc = include_str!("../explain/codes/tolerance-implausible.md")]

use super::Context;
use super::conductors::warning;
use crate::diagnostics::Findings;
use crate::units::Length;

/// The largest part of a size that a tolerance may be. Common practice, no source.
const LARGEST: f64 = 0.05;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for conductor in context.catalogue.conductors.values() {
        let layers = conductor.section.layers.iter().map(|layer| layer.wire_diameter);
        let thinnest = layers.reduce(Length::min);
        let across = Some(conductor.section.overall_diameter);
        let tolerances = [
            ("tolerance.overall_diameter_mm", conductor.diameter_tolerance, across),
            ("tolerance.wire_diameter_mm", conductor.wire_diameter_tolerance, thinnest),
        ];
        for (field, tolerance, size) in tolerances {
            let (Some(tolerance), Some(size)) = (tolerance, size) else { continue };
            if tolerance <= size * LARGEST {
                continue;
            }
            let message =
                format!("a tolerance of {} mm on {:.2} mm is not one of wire", tolerance.mm(), size.mm());
            let finding = warning(conductor, "tolerance-implausible", field, message)
                .found(format!("± {} mm", tolerance.mm()))
                .expected(format!("at most {:.2} mm", (size * LARGEST).mm()));
            findings.push(finding.help("compare it with the standard of the conductor"));
        }
    }
}

#![doc = include_str!("../explain/codes/contact-wire-width-differs.md")]

use super::Context;
use super::conductors::each;
use crate::diagnostics::{Finding, Findings};
use crate::section::Construction;
use crate::units::Length;

/// Profiles are printed to a hundredth of a millimetre.
const ROUNDING: Length = Length::from_mm(0.005);

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    each(context, findings, |conductor, _| {
        let Construction::Grooved(grooved) = &conductor.construction else { return None };
        let field = "construction.grooved.width_mm";
        let difference = grooved.width - grooved.height;
        (difference.abs() > ROUNDING).then(|| {
            let message = format!("the width differs from the height by {:+.2} mm", difference.mm());
            Finding::note("contact-wire-width-differs", conductor.origin.of(field), message)
                .record(&conductor.id)
                .field(field)
                .found(format!("{} mm", grooved.width.mm()))
                .expected(format!("{} mm, the height", grooved.height.mm()))
                .help("section and wear are computed for a wire as wide as it is high")
        })
    });
}

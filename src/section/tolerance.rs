//! What a tolerance on the wires makes of a section.

use super::compute::compute;
use super::{Construction, Material, Section, SectionError};
use crate::units::{Area, Length, Range};

/// Computes a conductor whose round wires have a tolerance on their diameter.
///
/// The same as [`compute`], with [`Section::band`] filled for solid, stranded and composite conductors:
/// S(1 ± 2t/d) to first order, group by group.
///
/// # Errors
/// As [`compute`]; and where the tolerance is negative, or not less than half the wire's diameter.
///
/// # Examples
/// ```
/// use fittingcards::section::{Construction, with_wire_tolerance};
/// use fittingcards::units::Length;
///
/// let wire = Construction::Solid { diameter: Length::from_mm(8.0) };
/// let band = with_wire_tolerance(&wire, None, Length::from_mm(0.04))?.band.expect("a round wire");
/// assert!((band.most().mm2() / band.least().mm2() - 1.01 / 0.99).abs() < 1e-9);
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
pub fn with_wire_tolerance(
    construction: &Construction,
    material: Option<&Material>,
    tolerance: Length,
) -> Result<Section, SectionError> {
    let mut section = compute(construction, material)?;
    let groups = groups(construction, &section);
    if groups.is_empty() {
        return Ok(section);
    }
    if groups.iter().any(|(_, wire)| !(tolerance >= Length::ZERO && tolerance < *wire / 2.0)) {
        return Err(SectionError::new(
            "tolerance.wire_diameter_mm",
            "this can't be a tolerance of these wires",
        )
        .found(format!("{} mm", tolerance.mm()))
        .expected("0 mm or more, and much less than the wire's diameter"));
    }
    let spread: Area = groups.iter().map(|(area, wire)| *area * (2.0 * (tolerance / *wire))).sum();
    section.band = Some(Range::around(section.metal, spread));
    section
        .sources
        .push(format!("tolerance band: S(1 ± 2t/d) with t = {} mm on the wire diameter", tolerance.mm()));
    Ok(section)
}

/// Metal and wire diameter of each group of round wires.
fn groups(construction: &Construction, section: &Section) -> Vec<(Area, Length)> {
    match construction {
        Construction::Solid { diameter } => vec![(section.metal, *diameter)],
        Construction::Stranded(group) => vec![(section.metal, group.wire_diameter)],
        Construction::Composite(composite) => vec![
            (section.core.unwrap_or_default(), composite.core.wire_diameter),
            (section.outer.unwrap_or_default(), composite.outer.wire_diameter),
        ],
        _ => Vec::new(),
    }
}

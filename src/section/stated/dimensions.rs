//! Stated section, diameter and nominal size.

use super::rounding::agrees;
use super::{Against, Verdict, nearest};
use crate::units::{Area, Length};

/// What a stated section really is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum SectionConfusion {
    /// The area of the circle on this overall diameter.
    CircleArea(Length),
    /// The nominal size.
    NominalSize,
    /// The section of a composite's outer group alone.
    OuterGroupOnly,
}

/// What a stated diameter really is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum DiameterConfusion {
    /// The diameter of the circle that has this area, d = √(4S/π).
    FromSection(Area),
    /// A number of inches.
    Inches,
}

/// How near a value must come to what it is confused with, for printed figures that are cut or rounded.
const NEAR: f64 = 0.005;

/// Judges a stated metal section.
///
/// ```
/// use fittingcards::section::stated::{Against, SectionConfusion, Verdict, judge_section};
/// use fittingcards::section::{Construction, Rope, RopeCore, compute};
/// use fittingcards::units::{Area, Length};
///
/// // A rope of 9.00 mm given as 63.62 mm²: the circle on its diameter.
/// let (class, core, diameter) = ("7x19".to_owned(), RopeCore::Wsc, Length::from_mm(9.0));
/// let section = compute(&Construction::Rope(Rope { class, core, diameter, grade: None }), None)?;
/// let against = Against {
///     section: &section,
///     nominal_size: None,
///     stated_section: None,
///     stated_diameter: None,
///     section_tolerance_percent: 0.5,
///     diameter_tolerance: Length::from_mm(0.1),
/// };
/// let verdict = judge_section(Area::from_mm2(63.62), against);
/// assert_eq!(verdict, Verdict::Confused(SectionConfusion::CircleArea(diameter)));
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
#[must_use]
pub fn judge_section(stated: Area, against: Against<'_>) -> Verdict<SectionConfusion> {
    let (value, computed) = (stated.mm2(), against.section.metal.mm2());
    let tolerance = computed * against.section_tolerance_percent / 100.0;
    if agrees(value, computed, tolerance, 1) {
        return Verdict::Agrees;
    }
    let diameters = [Some(against.section.overall_diameter), against.stated_diameter];
    let circles =
        diameters.into_iter().flatten().map(|d| (SectionConfusion::CircleArea(d), d.circle_area().mm2()));
    let nominal = against.nominal_size.map(|size| (SectionConfusion::NominalSize, size.mm2()));
    let outer = against.section.outer.map(|outer| (SectionConfusion::OuterGroupOnly, outer.mm2()));
    match nearest(value, circles.chain(nominal).chain(outer), NEAR, 0) {
        Some(confusion) => Verdict::Confused(confusion),
        None if agrees(value, computed, tolerance, 0) => Verdict::Agrees,
        None => Verdict::Differs,
    }
}

/// Judges a stated overall diameter.
///
/// ```
/// use fittingcards::section::stated::{Against, DiameterConfusion, judge_diameter};
/// use fittingcards::section::{Construction, Group, Strands, compute};
/// use fittingcards::units::Length;
///
/// let strand = Group {
///     strands: Strands::Wires(19),
///     wire_diameter: Length::from_mm(2.8),
///     lay_ratios: Vec::new(),
/// };
/// let section = compute(&Construction::Stranded(strand), None)?;
/// let against = Against {
///     section: &section,
///     nominal_size: None,
///     stated_section: None,
///     stated_diameter: None,
///     section_tolerance_percent: 0.5,
///     diameter_tolerance: Length::from_mm(0.1),
/// };
/// // √(4 × 116.99 / π) = 12.2
/// let verdict = judge_diameter(Length::from_mm(12.2), against);
/// assert_eq!(verdict.confusion(), Some(DiameterConfusion::FromSection(section.metal)));
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
#[must_use]
pub fn judge_diameter(stated: Length, against: Against<'_>) -> Verdict<DiameterConfusion> {
    let (value, computed) = (stated.mm(), against.section.overall_diameter.mm());
    if agrees(value, computed, against.diameter_tolerance.mm(), 1) {
        return Verdict::Agrees;
    }
    let areas = [Some(against.section.metal), against.stated_section, against.nominal_size];
    let from_areas = areas
        .into_iter()
        .flatten()
        .map(|area| (DiameterConfusion::FromSection(area), area.circle_diameter().mm()));
    let inches = (DiameterConfusion::Inches, against.section.overall_diameter.inches());
    match nearest(value, from_areas.chain([inches]), NEAR, 1) {
        Some(confusion) => Verdict::Confused(confusion),
        None => Verdict::Differs,
    }
}

/// What is to be said of a nominal size that is far from every section of its conductor.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NominalSize {
    /// The section that comes nearest to it: of all metal, or of a composite's outer group.
    pub nearest: Area,
    /// How far the nominal size departs from that, percent of it.
    pub departs_percent: f64,
    /// Whether it is the area of the circle on the overall diameter.
    pub is_circle_area: bool,
}

/// Judges a nominal size: a name, but one that comes near the section it stands for.
///
/// A composite is named by its outer group; its whole section counts too. `None` within the tolerance.
#[must_use]
pub fn judge_nominal_size(
    nominal: Area,
    section: &super::Section,
    tolerance_percent: f64,
) -> Option<NominalSize> {
    let departure = |area: Area| 100.0 * (nominal / area - 1.0);
    let areas = [Some(section.metal), section.outer].into_iter().flatten();
    let nearest = areas.min_by(|a, b| departure(*a).abs().total_cmp(&departure(*b).abs()))?;
    let departs_percent = departure(nearest);
    (departs_percent.abs() > tolerance_percent).then(|| NominalSize {
        nearest,
        departs_percent,
        is_circle_area: (nominal / section.circle - 1.0).abs() <= NEAR,
    })
}

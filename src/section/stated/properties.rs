//! Stated breaking load, mass and resistance.

use super::rounding::agrees;
use super::{Verdict, nearest};
use crate::section::{MaterialGroup, Section};
use crate::units::{Force, LinearMass, LinearResistance, Range};

/// What a stated breaking load really is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LoadConfusion {
    /// Kilograms-force typed as newtons.
    KilogramsForce,
    /// Tonnes typed as kilonewtons.
    Tonnes,
}

/// What a stated mass really is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MassConfusion {
    /// Pounds per 1000 ft.
    PoundsPerThousandFeet,
    /// Kilograms per 100 m, as tables of ropes print it.
    KilogramsPerHundredMetres,
}

/// Standards print loads within so much of section × strength: what stranding takes, and rounding.
const BELOW_COMPUTED: f64 = 0.90;
const ABOVE_COMPUTED: f64 = 1.05;
/// Masses and resistances of standards differ by their stranding increments and densities.
const MASS_TOLERANCE: f64 = 0.03;
const RESISTANCE_TOLERANCE: f64 = 0.04;
/// How near a value in another unit must come to be known as one.
const UNIT_NEAR: f64 = 0.05;

/// The window of breaking loads: round the computed load where the material's strength is known, else what metals of
/// its family hold at all (common practice, no source).
#[must_use]
pub fn load_window(section: &Section, group: MaterialGroup) -> Range<Force> {
    if let Some(load) = section.breaking_load {
        // What stranding takes off the wires is not known to the metal: allow for all of it.
        return Range::between(load * BELOW_COMPUTED, load * ABOVE_COMPUTED);
    }
    let (least, most) = stresses(group);
    let stress = |n_per_mm2| section.metal * crate::units::Stress::from_n_per_mm2(n_per_mm2);
    match section.core {
        // The core may be of another family: from soft outer wires alone to all metal as the strongest steel.
        Some(_) => Range::between(stress(least), stress(STRONGEST_STEEL)),
        None => Range::between(stress(least), stress(most)),
    }
}

/// More strength than drawn steel wire has no metal of a conductor, in N/mm².
const STRONGEST_STEEL: f64 = 2500.0;

/// The most that a section can carry by its metals, whatever is computed from strengths that a record states.
#[must_use]
pub fn most_load(section: &Section, group: MaterialGroup) -> Force {
    let (_, most) = stresses(group);
    let most = if section.core.is_some() { most.max(STRONGEST_STEEL) } else { most };
    section.metal * crate::units::Stress::from_n_per_mm2(most)
}

/// From the softest to the strongest wire of a family, in N/mm².
fn stresses(group: MaterialGroup) -> (f64, f64) {
    match group {
        MaterialGroup::Copper => (150.0, 750.0),
        MaterialGroup::Bronze => (150.0, 950.0),
        MaterialGroup::Aluminium => (50.0, 450.0),
        MaterialGroup::Steel | MaterialGroup::Stainless | MaterialGroup::Iron => (250.0, STRONGEST_STEEL),
        MaterialGroup::Zinc => (15.0, 250.0),
        MaterialGroup::Polymer => (10.0, 4000.0),
    }
}

/// Judges a stated breaking load against the window of the conductor's metal.
///
/// Kilograms-force typed as newtons and tonnes typed as kilonewtons come to the same number. A load that is stated to
/// the newton is taken for the first, any other for the second.
///
/// ```
/// use fittingcards::section::stated::{LoadConfusion, Verdict, judge_load};
/// use fittingcards::section::{Construction, MaterialGroup, compute, materials};
/// use fittingcards::units::{Force, Length};
///
/// let wire = Construction::Solid { diameter: Length::from_mm(3.0) };
/// let section = compute(&wire, materials::find("copper-hard-drawn"))?;
/// let judge = |kn| judge_load(Force::from_kn(kn), &section, MaterialGroup::Copper);
/// assert_eq!(judge(2.98), Verdict::Agrees);
/// assert_eq!(judge(0.304), Verdict::Confused(LoadConfusion::KilogramsForce));
/// assert_eq!(judge(0.30), Verdict::Confused(LoadConfusion::Tonnes));
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
#[must_use]
pub fn judge_load(stated: Force, section: &Section, group: MaterialGroup) -> Verdict<LoadConfusion> {
    let window = load_window(section, group);
    let inside = |load: Force| window.contains(load);
    if inside(stated) {
        return Verdict::Agrees;
    }
    let gravity = Force::from_kgf(1.0).newtons();
    if inside(stated * gravity) {
        return Verdict::Confused(if to_the_newton(stated) {
            LoadConfusion::KilogramsForce
        } else {
            LoadConfusion::Tonnes
        });
    }
    if inside(stated * (gravity / 1000.0)) {
        return Verdict::Confused(LoadConfusion::KilogramsForce);
    }
    Verdict::Differs
}

/// Whether a number of kilonewtons has three decimals.
fn to_the_newton(load: Force) -> bool {
    let text = load.kn().to_string();
    text.find('.').is_some_and(|point| text.len() - point > 3)
}

/// Judges a stated mass against the computed one.
///
/// ```
/// use fittingcards::section::stated::{MassConfusion, judge_mass};
/// use fittingcards::units::LinearMass;
///
/// let (stated, computed) = (LinearMass::from_kg_per_km(711.0), LinearMass::from_lb_per_1000ft(711.0));
/// assert_eq!(judge_mass(stated, computed).confusion(), Some(MassConfusion::PoundsPerThousandFeet));
/// ```
#[must_use]
pub fn judge_mass(stated: LinearMass, computed: LinearMass) -> Verdict<MassConfusion> {
    let (value, mass) = (stated.kg_per_km(), computed.kg_per_km());
    if agrees(value, mass, mass * MASS_TOLERANCE, 0) {
        return Verdict::Agrees;
    }
    let candidates = [
        (MassConfusion::PoundsPerThousandFeet, computed.lb_per_1000ft()),
        (MassConfusion::KilogramsPerHundredMetres, computed.kg_per_100m()),
    ];
    nearest(value, candidates, UNIT_NEAR, 1).map_or(Verdict::Differs, Verdict::Confused)
}

/// Whether a stated resistance at 20 °C agrees with the computed one.
///
/// Standards that print a greatest resistance add up to 3 % for the tolerance on the section.
#[must_use]
pub fn judge_resistance(stated: LinearResistance, computed: LinearResistance) -> bool {
    let (value, resistance) = (stated.ohm_per_km(), computed.ohm_per_km());
    agrees(value, resistance, resistance * RESISTANCE_TOLERANCE, 3)
}

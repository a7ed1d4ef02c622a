//! The rule that the tables of EN 50149 follow.

use crate::section::contact_wire::{LEAST_OF_NOMINAL, MOST_OF_NOMINAL};
use crate::units::{Area, Density, Force, LinearMass, LinearResistance, Resistivity, Stress};

/// What EN 50149 asks of a grooved contact wire of a nominal section.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ContactWireRule {
    /// Least section, 3 % under the nominal one.
    pub section_min: Area,
    /// Greatest section, 3 % over the nominal one.
    pub section_max: Area,
    /// Least breaking load, 0.97·S·R_m; where the strength is known.
    pub breaking_load_min: Option<Force>,
    /// Greatest resistance at 20 °C, ρ/(0.97·S); where the resistivity is known.
    pub resistance_max: Option<LinearResistance>,
    /// Least mass, 0.97·S·8.89.
    pub mass_min: LinearMass,
    /// Greatest mass, 1.03·S·8.89.
    pub mass_max: LinearMass,
}

/// Density that all masses of EN 50149 follow, in kg/m³.
const DENSITY: Density = Density::from_kg_per_m3(8890.0);

/// The rule of EN 50149:2012 for a nominal section: F = 0.97·S·R_m, R = ρ/(0.97·S), mass = S·8.89·(0.97…1.03).
/// Back-calculated from the standard's tables; it holds for copper, copper-silver and copper-magnesium.
///
/// ```
/// use fittingcards::section::stated::contact_wire_rule;
/// use fittingcards::units::{Area, Resistivity, Stress};
///
/// // EN 50149:2012, copper of normal strength, 120 mm²: 38.4 kN, 0.153 Ω/km, 1035 to 1099 kg/km.
/// let strength = Stress::from_n_per_mm2(330.0);
/// let rule = contact_wire_rule(Area::from_mm2(120.0), Some(strength), Some(Resistivity::from_nohm_m(17.77)));
/// assert_eq!(format!("{:.1}", rule.breaking_load_min.expect("strength given").kn()), "38.4");
/// assert_eq!(format!("{:.3}", rule.resistance_max.expect("resistivity given").ohm_per_km()), "0.153");
/// assert_eq!(format!("{:.0}", rule.mass_min.kg_per_km()), "1035");
/// assert_eq!(format!("{:.0}", rule.mass_max.kg_per_km()), "1099");
/// ```
#[must_use]
pub fn contact_wire_rule(
    nominal: Area,
    strength: Option<Stress>,
    resistivity: Option<Resistivity>,
) -> ContactWireRule {
    let (section_min, section_max) = (nominal * LEAST_OF_NOMINAL, nominal * MOST_OF_NOMINAL);
    ContactWireRule {
        section_min,
        section_max,
        breaking_load_min: strength.map(|strength| section_min * strength),
        resistance_max: resistivity.map(|resistivity| resistivity / section_min),
        mass_min: section_min * DENSITY,
        mass_max: section_max * DENSITY,
    }
}

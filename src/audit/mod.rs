//! What an inspector would say of a catalogue: one file a rule.

mod breaking_load_outside_material;
#[cfg(test)]
mod conductor_tests;
mod conductors;
mod contact_wire_outside_standard;
mod contact_wire_width_differs;
mod nominal_size_differs;
mod stated_diameter_differs;
mod stated_diameter_from_section;
mod stated_diameter_in_inches;
mod stated_load_in_kilograms_force;
mod stated_load_in_tonnes;
mod stated_mass_differs;
mod stated_mass_in_pounds;
mod stated_mass_per_hundred_metres;
mod stated_resistance_differs;
mod stated_section_differs;
mod stated_section_is_circle_area;
mod stated_section_is_nominal_size;
mod stated_section_is_outer_group;

use crate::catalogue::Catalogue;
use crate::diagnostics::Findings;
use crate::mixups::Mixups;

/// What rules look at.
#[derive(Debug, Clone, Copy)]
pub struct Context<'a> {
    /// The records that are sound.
    pub catalogue: &'a Catalogue,
    /// What can be confused.
    pub mixups: &'a Mixups,
}

/// A rule adds what it finds.
type Rule = fn(Context<'_>, &mut Findings);

/// Every rule, in the order of its file's name.
const RULES: &[Rule] = &[
    breaking_load_outside_material::check,
    contact_wire_outside_standard::check,
    contact_wire_width_differs::check,
    nominal_size_differs::check,
    stated_diameter_differs::check,
    stated_diameter_from_section::check,
    stated_diameter_in_inches::check,
    stated_load_in_kilograms_force::check,
    stated_load_in_tonnes::check,
    stated_mass_differs::check,
    stated_mass_in_pounds::check,
    stated_mass_per_hundred_metres::check,
    stated_resistance_differs::check,
    stated_section_differs::check,
    stated_section_is_circle_area::check,
    stated_section_is_nominal_size::check,
    stated_section_is_outer_group::check,
];

/// Everything that the rules find.
#[must_use]
pub fn check(context: Context<'_>) -> Findings {
    let mut findings = Findings::new();
    for rule in RULES {
        rule(context, &mut findings);
    }
    findings
}

#![doc = include_str!("../explain/codes/contact-wire-outside-standard.md")]

use super::Context;
use super::conductors::{each, warning};
use crate::catalogue::{Conductor, Duty};
use crate::diagnostics::{Finding, Findings};
use crate::section::stated::{ContactWireRule, contact_wire_rule};
use crate::section::{Construction, contact_wire_strength};

/// How far under or over a limit is rounding: standards print three digits.
const ROUNDING: f64 = 0.005;

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for check in [section, load, resistance, mass] {
        each(context, findings, |conductor, _| check(conductor, rule(conductor)?));
    }
}

fn rule(conductor: &Conductor) -> Option<ContactWireRule> {
    let Construction::Grooved(grooved) = &conductor.construction else { return None };
    let material = &conductor.material;
    if conductor.duty != Duty::Contact || !material.is_of_en_50149() {
        return None;
    }
    let nominal = conductor.nominal_size?;
    let strength = contact_wire_strength(material, grooved.height, nominal);
    Some(contact_wire_rule(nominal, strength, material.resistivity_20c))
}

fn section(conductor: &Conductor, rule: ContactWireRule) -> Option<Finding> {
    let metal = conductor.section.metal;
    (metal < rule.section_min * (1.0 - ROUNDING) || metal > rule.section_max * (1.0 + ROUNDING)).then(|| {
        warning(
            conductor,
            "contact-wire-outside-standard",
            "construction.grooved",
            "the profile's section is not within 3 % of the nominal size",
        )
        .found(format!("{:.2} mm²", metal.mm2()))
        .expected(format!("{:.1} to {:.1} mm² (EN 50149)", rule.section_min.mm2(), rule.section_max.mm2()))
        .help("check the profile's dimensions against the specification")
    })
}

fn load(conductor: &Conductor, rule: ContactWireRule) -> Option<Finding> {
    let (stated, least) = (conductor.stated.breaking_load?, rule.breaking_load_min?);
    (stated < least * (1.0 - ROUNDING)).then(|| {
        warning(
            conductor,
            "contact-wire-outside-standard",
            "stated.breaking_load_kN",
            "the stated breaking load is under 0.97·S·R_m",
        )
        .found(format!("{} kN", stated.kn()))
        .expected(format!("at least {:.1} kN (EN 50149)", least.kn()))
        .help("check the load and the material's strength against the specification")
    })
}

fn resistance(conductor: &Conductor, rule: ContactWireRule) -> Option<Finding> {
    let (stated, most) = (conductor.stated.resistance_20c?, rule.resistance_max?);
    (stated > most * (1.0 + ROUNDING)).then(|| {
        warning(
            conductor,
            "contact-wire-outside-standard",
            "stated.resistance_20c_ohm_per_km",
            "the stated resistance is over ρ/(0.97·S)",
        )
        .found(format!("{} Ω/km", stated.ohm_per_km()))
        .expected(format!("at most {:.4} Ω/km (EN 50149)", most.ohm_per_km()))
        .help("check the resistance and the material against the specification")
    })
}

fn mass(conductor: &Conductor, rule: ContactWireRule) -> Option<Finding> {
    let stated = conductor.stated.mass?;
    let inside = stated >= rule.mass_min * (1.0 - ROUNDING) && stated <= rule.mass_max * (1.0 + ROUNDING);
    (!inside).then(|| {
        warning(
            conductor,
            "contact-wire-outside-standard",
            "stated.mass_kg_per_km",
            "the stated mass is not within 3 % of 8.89·S",
        )
        .found(format!("{} kg/km", stated.kg_per_km()))
        .expected(format!(
            "{:.0} to {:.0} kg/km (EN 50149)",
            rule.mass_min.kg_per_km(),
            rule.mass_max.kg_per_km()
        ))
        .help("check the mass against the specification")
    })
}

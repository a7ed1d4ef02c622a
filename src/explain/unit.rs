//! The unit that a key carries in its name.

/// Endings of keys with the unit that each stands for; an ending that holds another comes before it.
const UNITS: [(&str, &str); 14] = [
    ("_N_per_mm2", "N/mm²"),
    ("_kg_per_m3", "kg/m³"),
    ("_kg_per_km", "kg/km"),
    ("_nohm_m", "nΩ·m"),
    ("_ohm_per_km", "Ω/km"),
    ("_per_k", "1/K"),
    ("_mm2", "mm²"),
    ("_mm", "mm"),
    ("_deg", "°"),
    ("_kN", "kN"),
    ("_Nm", "N·m"),
    ("_pt", "pt"),
    ("_percent", "%"),
    ("_percent_of_breaking_load", "%"),
];

/// The unit of a key, by its ending; nothing where it carries none.
pub(super) fn unit_of(key: &str) -> Option<&'static str> {
    UNITS.iter().find(|(ending, _)| key.ends_with(ending)).map(|(_, unit)| *unit)
}

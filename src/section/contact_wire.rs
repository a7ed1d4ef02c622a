//! What a contact wire holds and how it conducts: new as its standard rates it, worn by what is left of it.

use super::profile::{Profile, profile, round_profile};
use super::properties::{cite, say_load_of};
use super::result::{at_temperature, plain};
use super::worn::worn;
use super::{Construction, Grooved, Material, Section, SectionError};
use crate::units::{Area, Force, Length, LinearResistance, Stress, Temperature};

/// What the tolerance of EN 50149 on a contact wire's section leaves of the nominal one, and makes of it.
pub(super) const LEAST_OF_NOMINAL: f64 = 0.97;
pub(super) const MOST_OF_NOMINAL: f64 = 1.03;

/// Computes a grooved contact wire: geometry from its profile, load and resistance as its standard rates them.
///
/// EN 50149 rates a wire by its nominal section less the tolerance of 3 %: F = 0.97·S·R_m at least, R = ρ/(0.97·S)
/// at most. Without a nominal size the computed section takes its place.
pub(super) fn section(
    grooved: &Grooved,
    material: Option<&Material>,
    nominal: Option<Area>,
) -> Result<Section, SectionError> {
    let profile = profile(grooved)?;
    let mut section = plain(profile.area, grooved.height);
    section.neck = profile.groove.map(|groove| groove.neck);
    section.sources.push("metal section: circle on the height less two grooves, exact arcs and lines".into());
    let difference = grooved.width - grooved.height;
    if difference.abs() > Length::from_mm(0.005) {
        section.sources.push(format!(
            "the profile is the circle on the height; the stated width differs from it by {:+.2} mm",
            difference.mm()
        ));
    }
    if let Some(material) = material {
        add_properties(&mut section, material, &Rating::of(grooved.height, profile.area, material, nominal));
    }
    Ok(section)
}

/// What a contact wire is rated by.
struct Rating {
    /// The section that counts before the standard's tolerance.
    size: Area,
    /// What the standard leaves of it: 0.97 of EN 50149, else all.
    part: f64,
    /// Strength of the wire.
    strength: Option<Stress>,
    /// The section in words.
    words: String,
}

impl Rating {
    fn of(height: Length, computed: Area, material: &Material, nominal: Option<Area>) -> Self {
        let standard = material.is_of_en_50149();
        // Only a standard that rates by the nominal section lets it stand for the computed one.
        let nominal_counts = nominal.filter(|_| standard);
        let words = match nominal_counts {
            Some(size) => format!("the nominal section of {} mm²", size.mm2()),
            None => "the computed section".into(),
        };
        Self {
            size: nominal_counts.unwrap_or(computed),
            part: if standard { LEAST_OF_NOMINAL } else { 1.0 },
            // A computed section may be greater than the nominal one by the tolerance of the standard.
            strength: contact_wire_strength(material, height, nominal.unwrap_or(computed / MOST_OF_NOMINAL)),
            words,
        }
    }

    fn load(&self, of: Area) -> Option<Force> {
        Some(of * self.part * self.strength?)
    }

    fn resistance(&self, of: Area, material: &Material) -> Option<LinearResistance> {
        Some(material.resistivity_20c? / (of * self.part))
    }
}

/// Strength of a grooved contact wire: by nominal section where the material has such rows, else by its height as a
/// wire.
///
/// A size between two rows of the standard takes the thicker one's: less than it has, on the safe side.
///
/// ```
/// use fittingcards::section::{contact_wire_strength, materials};
/// use fittingcards::units::{Area, Length};
/// let copper = materials::find("copper-hard-drawn").expect("built in");
/// let strength = |size| contact_wire_strength(copper, Length::from_mm(12.3), Area::from_mm2(size));
/// assert_eq!(strength(107.0).map(|strength| strength.n_per_mm2()), Some(350.0));
/// assert_eq!(strength(110.0).map(|strength| strength.n_per_mm2()), Some(330.0));
/// assert_eq!(strength(170.0), None);
/// ```
#[must_use]
pub fn contact_wire_strength(material: &Material, height: Length, nominal: Area) -> Option<Stress> {
    if material.contact_wire_strength.is_empty() {
        return material.strength.as_ref()?.of_wire(height);
    }
    let size = nominal * (1.0 - 1e-9);
    material.contact_wire_strength.iter().find(|row| size <= row.up_to).map(|row| row.strength)
}

fn add_properties(section: &mut Section, material: &Material, rating: &Rating) {
    section.mass = material.density.map(|density| section.metal * density);
    section.breaking_load = rating.load(rating.size);
    section.resistance_20c = rating.resistance(rating.size, material);
    section.temperature_coefficient_per_k =
        section.resistance_20c.and(material.temperature_coefficient_per_k);
    let mut sources = Vec::new();
    if let Some(density) = material.density {
        sources.push(format!("mass: {} kg/m³ of {}", density.kg_per_m3(), material.name));
    }
    if let Some(resistivity) = material.resistivity_20c {
        sources.push(match rating.part {
            1.0 => format!("resistance: {} nΩ·m at 20 °C of {}", resistivity.nohm_m(), material.name),
            part => format!(
                "resistance: at most, {} nΩ·m at 20 °C of {} over {part} of {}, EN 50149",
                resistivity.nohm_m(),
                material.name,
                rating.words
            ),
        });
    }
    if let Some(strength) = rating.strength {
        sources.push(match rating.part {
            1.0 => say_load_of(strength, "of the wire", material),
            part => format!(
                "breaking load: at least, {} N/mm² of {} on {part} of {}, EN 50149",
                strength.n_per_mm2(),
                material.name,
                rating.words
            ),
        });
    }
    section.sources.extend(sources);
    section.sources.extend(cite([material]));
}

/// Load and resistance of a worn contact wire.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WornMetal {
    /// Metal that is left.
    pub section: Area,
    /// What that holds; at least, where the material is of EN 50149.
    pub breaking_load: Option<Force>,
    /// Resistance of what is left, at 20 °C; at most, where the material is of EN 50149.
    pub resistance_20c: Option<LinearResistance>,
    /// Temperature coefficient of that resistance at 20 °C, per kelvin.
    pub temperature_coefficient_per_k: Option<f64>,
}

impl WornMetal {
    /// Resistance at a temperature, as [`Section::resistance_at`].
    #[must_use]
    pub fn resistance_at(&self, temperature: Temperature) -> Option<LinearResistance> {
        at_temperature(self.resistance_20c?, self.temperature_coefficient_per_k?, temperature)
    }
}

/// What a grooved or round wire that is worn to a remaining height still holds, and its resistance.
///
/// Both go by the section that is left: F = S·R_m and R = ρ/S; of an EN 50149 material with 0.97·S in place of S,
/// since the profile may be 3 % under its drawing. `nominal` is the size of the new wire, by which the standard
/// gives its strength.
///
/// # Errors
/// Where the conductor is neither grooved nor one round wire, or the height is none of it.
///
/// # Examples
/// ```
/// use fittingcards::section::{Construction, materials, worn_metal};
/// use fittingcards::units::Length;
///
/// let wire = Construction::Solid { diameter: Length::from_mm(12.0) };
/// let copper = materials::find("copper-annealed");
/// let left = worn_metal(&wire, copper, None, Length::from_mm(6.0))?;
/// // Half of the wire: 17.241 nΩ·m / 56.549 mm².
/// assert_eq!(format!("{:.2}", left.section.mm2()), "56.55");
/// assert_eq!(format!("{:.4}", left.resistance_20c.expect("known").ohm_per_km()), "0.3049");
/// # Ok::<(), fittingcards::section::SectionError>(())
/// ```
pub fn worn_metal(
    construction: &Construction,
    material: Option<&Material>,
    nominal: Option<Area>,
    height: Length,
) -> Result<WornMetal, SectionError> {
    let (profile, grooved) = wearing(construction)?;
    let left = worn(&profile, height)?.section;
    let rating = material.map(|material| match grooved {
        true => Rating::of(profile.height, profile.area, material, nominal),
        false => Rating {
            size: profile.area,
            part: 1.0,
            strength: material.strength.as_ref().and_then(|strength| strength.of_wire(profile.height)),
            words: String::new(),
        },
    });
    let resistance = rating.as_ref().zip(material).and_then(|(rating, one)| rating.resistance(left, one));
    Ok(WornMetal {
        section: left,
        breaking_load: rating.as_ref().and_then(|rating| rating.load(left)),
        resistance_20c: resistance,
        temperature_coefficient_per_k: material.and_then(|material| material.temperature_coefficient_per_k),
    })
}

/// The profile of a wire that wears, and whether it is grooved.
fn wearing(construction: &Construction) -> Result<(Profile, bool), SectionError> {
    match construction {
        Construction::Grooved(grooved) => Ok((profile(grooved)?, true)),
        Construction::Solid { diameter } => Ok((round_profile(*diameter)?, false)),
        _ => Err(SectionError::new("construction", "wear is computed of grooved and solid wires alone")),
    }
}

//! What is computed of the conductor asked about.

use super::super::outcome::Fault;
use super::Options;
use super::question::Question;
use crate::catalogue::{Conductor, WearBasis};
use crate::section::{self, Construction, Profile, Section, SectionError, Worn};
use crate::units::{Area, Length, LinearResistance, Temperature};

/// How far a height got from the flat's width may be from the measured one before the wire is held to
/// have worn askew.
const TILT: Length = Length::from_mm(0.3);

/// Everything that the command answers.
pub(super) struct Answer {
    pub section: Section,
    pub temperature: Option<(Temperature, LinearResistance)>,
    pub worn: Option<WornAnswer>,
    pub warnings: Vec<String>,
}

/// A worn contact wire.
pub(super) struct WornAnswer {
    pub worn: Worn,
    /// Percent of the section that the record's `basis` names.
    pub percent: f64,
    pub basis: &'static str,
}

pub(super) fn answer(question: &Question, options: &Options) -> Result<Answer, Fault> {
    let section = match question {
        Question::Recorded(conductor) => conductor.section.clone(),
        Question::Built { construction, material } => {
            section::compute(construction, material.as_deref()).map_err(fault)?
        }
    };
    let mut warnings = Vec::new();
    let temperature = options.temperature.map(Temperature::from_celsius).and_then(|temperature| {
        let resistance = section.resistance_at(temperature);
        if resistance.is_none() {
            warnings.push(
                "no resistance at that temperature: the material lacks a figure that it needs".to_owned(),
            );
        }
        resistance.map(|resistance| (temperature, resistance))
    });
    let worn = match question {
        Question::Recorded(conductor) => worn(conductor, options, &mut warnings)?,
        Question::Built { .. } => None,
    };
    Ok(Answer { section, temperature, worn, warnings })
}

fn worn(
    conductor: &Conductor,
    options: &Options,
    warnings: &mut Vec<String>,
) -> Result<Option<WornAnswer>, Fault> {
    if options.worn_height.is_none() && options.flat_width.is_none() {
        return Ok(None);
    }
    let profile = profile(conductor)?;
    let by_flat = options
        .flat_width
        .map(|width| section::height_at_flat_width(&profile, width))
        .transpose()
        .map_err(fault)?;
    let Some(height) = options.worn_height.or(by_flat) else { return Ok(None) };
    if let Some(by_flat) = by_flat.filter(|by_flat| (*by_flat - height).abs() > TILT) {
        warnings.push(format!(
            "the flat is as wide as at {:.2} mm, the height measured is {:.2} mm: the wire may have worn askew; measure both sides",
            by_flat.mm(),
            height.mm()
        ));
    }
    let worn = section::worn(&profile, height).map_err(fault)?;
    let (whole, basis) = basis(conductor, &profile);
    Ok(Some(WornAnswer { percent: worn.percent_of(whole), worn, basis }))
}

fn profile(conductor: &Conductor) -> Result<Profile, Fault> {
    match &conductor.construction {
        Construction::Grooved(grooved) => section::profile(grooved).map_err(fault),
        Construction::Solid { diameter } => section::round_profile(*diameter).map_err(fault),
        _ => Err(Fault::new(format!(
            "conductor {}: wear is computed of grooved and solid wires alone",
            conductor.id
        ))),
    }
}

/// The section that percentages are of: the nominal size where the record says so and has one.
fn basis(conductor: &Conductor, profile: &Profile) -> (Area, &'static str) {
    let nominal = conductor.wear.as_ref().is_some_and(|wear| wear.basis == WearBasis::Nominal);
    match conductor.nominal_size {
        Some(size) if nominal => (size, "nominal size"),
        _ => (profile.area, "computed section"),
    }
}

fn fault(error: SectionError) -> Fault {
    let mut message = error.message;
    let details = [("found", error.found), ("expected", error.expected), ("help", error.help)];
    for (name, text) in details.iter().filter(|(_, text)| !text.is_empty()) {
        message.push_str(&format!("\n  {name}: {text}"));
    }
    Fault::new(message)
}

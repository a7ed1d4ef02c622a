//! What is computed of the conductor asked about.

use super::super::outcome::Fault;
use super::Options;
use super::question::Question;
use crate::catalogue::{Conductor, WearBasis};
use crate::section::{
    self, Construction, LooseLayer, Material, Profile, Section, SectionError, Worn, WornMetal, loose_layers,
};
use crate::units::{Area, LinearResistance, Temperature};

/// Everything that the command answers.
pub(super) struct Answer {
    pub section: Section,
    /// Whether load and resistance are limits that a standard sets, least and most.
    pub by_standard: bool,
    pub temperature: Option<(Temperature, LinearResistance)>,
    pub worn: Option<WornAnswer>,
    pub warnings: Vec<String>,
}

/// A worn contact wire.
pub(super) struct WornAnswer {
    pub worn: Worn,
    /// What is left of load and resistance.
    pub metal: WornMetal,
    /// Its resistance at the temperature asked for.
    pub at_temperature: Option<LinearResistance>,
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
    let mut warnings: Vec<String> =
        loose_layers(question.construction()).map_err(fault)?.iter().map(loose).collect();
    let temperature = options.temperature.map(Temperature::from_celsius).and_then(|temperature| {
        let resistance = section.resistance_at(temperature);
        if resistance.is_none() {
            let (coldest, hottest) = (section::STRAIGHT.start(), section::STRAIGHT.end());
            let why = match section.resistance_20c.zip(section.temperature_coefficient_per_k) {
                Some(_) => format!("it is computed from {coldest} to {hottest} °C"),
                None => "the material lacks a figure that it needs".to_owned(),
            };
            warnings.push(format!("no resistance at that temperature: {why}"));
        }
        resistance.map(|resistance| (temperature, resistance))
    });
    let worn = worn(question, options)?;
    Ok(Answer { by_standard: by_standard(question), section, temperature, worn, warnings })
}

/// EN 50149 rates grooved wires by limits.
fn by_standard(question: &Question) -> bool {
    matches!(question.construction(), Construction::Grooved(_))
        && question.material().is_some_and(Material::is_of_en_50149)
}

/// A layer that lies loose, in the words of the finding on a record.
fn loose(layer: &LooseLayer) -> String {
    format!("{}: {}; {}", layer.message(), layer.expected(), LooseLayer::HELP)
}

fn worn(question: &Question, options: &Options) -> Result<Option<WornAnswer>, Fault> {
    if options.worn_height.is_none() && options.flat_width.is_none() {
        return Ok(None);
    }
    let profile = profile(question)?;
    let by_flat = options
        .flat_width
        .map(|width| section::height_at_flat_width(&profile, width))
        .transpose()
        .map_err(fault)?;
    let Some(height) = options.worn_height.or(by_flat) else { return Ok(None) };
    let worn = section::worn(&profile, height).map_err(fault)?;
    let nominal_size = recorded(question).and_then(|conductor| conductor.nominal_size);
    let metal = section::worn_metal(question.construction(), question.material(), nominal_size, height)
        .map_err(fault)?;
    let at_temperature = options.temperature.map(Temperature::from_celsius);
    let at_temperature = at_temperature.and_then(|temperature| metal.resistance_at(temperature));
    let (whole, basis) = basis(recorded(question), &profile);
    Ok(Some(WornAnswer { percent: worn.percent_of(whole), worn, metal, at_temperature, basis }))
}

fn recorded(question: &Question) -> Option<&Conductor> {
    match question {
        Question::Recorded(conductor) => Some(conductor),
        Question::Built { .. } => None,
    }
}

fn profile(question: &Question) -> Result<Profile, Fault> {
    match question.construction() {
        Construction::Grooved(grooved) => section::profile(grooved).map_err(fault),
        Construction::Solid { diameter } => section::round_profile(*diameter).map_err(fault),
        _ => Err(Fault::new(match recorded(question) {
            Some(conductor) => {
                format!("conductor `{}` is not one solid wire, so it has no worn height", conductor.id)
            }
            None => "this conductor is not one solid wire, so it has no worn height".to_owned(),
        })
        .with("expected", "a grooved contact wire or a solid wire with --worn-height or --flat-width")
        .with("help", "leave out --worn-height and --flat-width, or name the contact wire")),
    }
}

/// The section that percentages are of: the nominal size where the record says so and has one.
fn basis(conductor: Option<&Conductor>, profile: &Profile) -> (Area, &'static str) {
    let wear = conductor.and_then(|conductor| conductor.wear.as_ref());
    let nominal = wear.is_some_and(|wear| wear.basis == WearBasis::Nominal);
    match conductor.and_then(|conductor| conductor.nominal_size) {
        Some(size) if nominal => (size, "nominal size"),
        _ => (profile.area, "computed section"),
    }
}

fn fault(error: SectionError) -> Fault {
    Fault::new(error.message)
        .with("found", error.found)
        .with("expected", error.expected)
        .with("help", error.help)
}

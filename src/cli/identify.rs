//! `fittingcards identify`: what a measured conductor can be, or what is inside a closed fitting.

use super::options::{Format, Globals};
use super::outcome::{Fault, Outcome};
use super::report;
use crate::catalogue::{self, Catalogue, Fitting};
use crate::facts::words;
use crate::mixups::{
    self, Candidate, Closed, ClosedAnswer, Identified, LineLoad, Readings, STAND_OUT_TOLERANCE, Scratch,
    Shape,
};
use crate::section::Magnetic;
use crate::units::{Length, Numerals};
use clap::ValueEnum;
use std::fmt::Write;

/// Options of `identify`: what was measured on a conductor, or on a closed fitting.
#[derive(Debug, clap::Args)]
#[command(group(clap::ArgGroup::new("measured").required(true)))]
pub(super) struct Options {
    /// Caliper reading of a conductor in mm; given twice, two readings at 90°
    #[arg(long, value_name = "MM", group = "measured", value_parser = length)]
    diameter: Vec<Length>,
    /// Number of the body of a closed fitting; with --conductor and --stand-out
    #[arg(long, value_name = "NUMBER", group = "measured", requires_all = ["conductor", "stand_out"])]
    body: Option<String>,
    /// Conductor in the closed fitting, by id
    #[arg(long, value_name = "ID", requires = "body")]
    conductor: Option<String>,
    /// Stand-out measured on the closed fitting in mm
    #[arg(long, value_name = "MM", requires = "body", value_parser = length, allow_hyphen_values = true)]
    stand_out: Option<Length>,
    /// Whether line tension has drawn the gripping part in; unknown where not given
    #[arg(long, value_enum, requires = "body")]
    state: Option<State>,
    /// How far a reading may be off in mm: 0.1 of a diameter, 0.5 of a stand-out where not given
    #[arg(long, value_name = "MM", value_parser = length)]
    tolerance: Option<Length>,
    /// Wires altogether
    #[arg(long, value_name = "N", conflicts_with = "body")]
    wires: Option<u32>,
    /// Wires seen from outside
    #[arg(long, value_name = "N", conflicts_with = "body")]
    outer_wires: Option<u32>,
    /// Diameter of an outer wire in mm
    #[arg(long, value_name = "MM", conflicts_with = "body", value_parser = length)]
    wire_diameter: Option<Length>,
    /// What it looks like
    #[arg(long, value_enum, conflicts_with = "body")]
    shape: Option<Look>,
    /// What a magnet does
    #[arg(long, value_enum, conflicts_with = "body")]
    magnetic: Option<Magnet>,
    /// Colour of the metal under a fresh scratch
    #[arg(long, value_enum, conflicts_with = "body")]
    scratch: Option<Colour>,
}

/// Whether line tension has drawn the gripping part in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum State {
    /// Tightened, and no more
    Seated,
    /// Under line tension, or after it
    Tensioned,
    /// Either
    Unknown,
}

impl From<State> for LineLoad {
    fn from(state: State) -> Self {
        match state {
            State::Seated => Self::Seated,
            State::Tensioned => Self::Tensioned,
            State::Unknown => Self::Unknown,
        }
    }
}

/// What a conductor looks like.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Look {
    /// Round: solid or wires in layers
    Round,
    /// A contact wire with grooves
    Grooved,
    /// Strands of wires
    Rope,
    /// Hollow
    Tube,
    /// Flat
    Bar,
}

/// What a magnet does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Magnet {
    /// Nothing
    No,
    /// It pulls a little
    Slight,
    /// It holds
    Yes,
}

/// The colour of the metal under a fresh scratch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
enum Colour {
    /// Reddish: copper or bronze
    Copper,
    /// Aluminium, steel, zinc
    Grey,
}

impl From<Look> for Shape {
    fn from(look: Look) -> Self {
        match look {
            Look::Round => Self::Round,
            Look::Grooved => Self::Grooved,
            Look::Rope => Self::Rope,
            Look::Tube => Self::Tube,
            Look::Bar => Self::Bar,
        }
    }
}

impl From<Magnet> for Magnetic {
    fn from(magnet: Magnet) -> Self {
        match magnet {
            Magnet::No => Self::No,
            Magnet::Slight => Self::Slight,
            Magnet::Yes => Self::Yes,
        }
    }
}

impl From<Colour> for Scratch {
    fn from(colour: Colour) -> Self {
        match colour {
            Colour::Copper => Self::Copper,
            Colour::Grey => Self::Grey,
        }
    }
}

pub(super) fn run(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    let world = globals.world();
    let loaded = catalogue::load(&world)?;
    report::findings(&loaded.findings, &world, globals);
    let answer = match (&options.body, &options.conductor, options.stand_out) {
        (Some(body), Some(conductor), Some(stand_out)) => {
            let tolerance = options.tolerance.unwrap_or(STAND_OUT_TOLERANCE);
            let state = options.state.map_or_else(LineLoad::default, Into::into);
            inside(globals, &loaded.catalogue, &Closed { body, conductor, stand_out, tolerance, state })?
        }
        _ => candidates(globals, &loaded.catalogue, &readings(options))?,
    };
    report::result(&answer, globals.format)?;
    Ok(Outcome::unless(loaded.findings.has_errors()))
}

fn readings(options: &Options) -> Readings {
    let usual = Readings::default();
    Readings {
        diameters: options.diameter.clone(),
        tolerance: options.tolerance.unwrap_or(usual.tolerance),
        wires: options.wires,
        outer_wires: options.outer_wires,
        wire_diameter: options.wire_diameter,
        shape: options.shape.map(Into::into),
        magnetic: options.magnetic.map(Into::into),
        scratch: options.scratch.map(Into::into),
    }
}

fn candidates(globals: &Globals, catalogue: &Catalogue, readings: &Readings) -> Result<String, Fault> {
    let found = mixups::identify(catalogue, readings).map_err(|error| Fault::new(error.to_string()))?;
    Ok(match globals.format {
        Format::Json => found.to_json().to_string(),
        Format::Text => candidates_text(&found, Numerals::new(catalogue.settings.decimal_mark)),
    })
}

fn candidates_text(found: &Identified, numerals: Numerals) -> String {
    let mut text = stop_line(found.incomplete.as_deref());
    let (none, no_fitting) = match found.incomplete {
        Some(_) => ("no conductor that could be read", "no fitting that could be read"),
        None => ("no conductor of the catalogue", "no fitting"),
    };
    let _ = match found.candidates.len() {
        0 => writeln!(text, "{none} fits these readings: stop and ask"),
        1 => Ok(()),
        count => writeln!(text, "{count} conductors fit these readings"),
    };
    for remark in &found.remarks {
        let _ = writeln!(text, "{remark}");
    }
    for Candidate { conductor, fittings, difference, tell_apart, remarks } in &found.candidates {
        let fittings: Vec<String> = fittings.iter().map(|fitting| numbered(fitting)).collect();
        let fittings = if fittings.is_empty() { no_fitting.to_owned() } else { fittings.join(", ") };
        let off = numerals.length(*difference, 2);
        let _ = writeln!(text, "{} ({}), {off} off; {fittings}", conductor.name, conductor.id);
        for said in remarks.iter().copied().chain(tell_apart.iter().map(String::as_str)) {
            let _ = writeln!(text, "  {said}");
        }
    }
    text
}

/// What stands before an answer that is not complete.
fn stop_line(stop: Option<&str>) -> String {
    stop.map(|stop| format!("{stop}\n")).unwrap_or_default()
}

/// The number of a fitting, with its status while it is not to be used.
fn numbered(fitting: &Fitting) -> String {
    match words::status(fitting.status, fitting.use_instead.as_deref()) {
        status if status.is_empty() => fitting.number.clone(),
        status => format!("{} ({status})", fitting.number),
    }
}

fn inside(globals: &Globals, catalogue: &Catalogue, closed: &Closed<'_>) -> Result<String, Fault> {
    let mixups = mixups::find(catalogue);
    let found = mixups::inside(&mixups, closed)
        .map_err(|error| Fault::new(error.to_string()).or_of_records(mixups.incomplete()))?;
    Ok(match globals.format {
        Format::Json => mixups::inside_to_json(&found, closed).to_string(),
        Format::Text => inside_text(&found, closed.state, Numerals::new(catalogue.settings.decimal_mark)),
    })
}

fn inside_text(found: &ClosedAnswer, state: LineLoad, numerals: Numerals) -> String {
    let mut text = stop_line(found.incomplete.as_deref());
    for remark in [found.remark()].iter().chain(&found.remarks) {
        let _ = writeln!(text, "{remark}");
    }
    for (nth, inside) in found.inside.iter().enumerate() {
        let agrees = if nth < found.agreeing { "could be inside" } else { "ruled out by the reading" };
        let name = match &inside.kit {
            Some(kit) => format!("kit of {}", kit.number),
            None => inside.part.number.clone(),
        };
        let (words, out) = (inside.summary.words(), inside.where_out(state, numerals));
        let _ = writeln!(text, "  {name:<16} {agrees:<26} {words:<32} {out}");
    }
    text
}

/// A length in millimetres: a number that is finite.
fn length(text: &str) -> Result<Length, String> {
    match text.trim().parse::<f64>() {
        Ok(value) if value.is_finite() => Ok(Length::from_mm(value)),
        _ => Err(format!("found '{text}', expected millimetres")),
    }
}

//! `fittingcards section`: one conductor, from the command line or from a record.

mod answer;
mod json;
mod options;
mod parse;
mod question;
mod sketch;
mod text;

use super::options::{Format, Globals};
use super::outcome::{Fault, Outcome};
use super::report;

pub(super) use options::Options;

pub(super) fn run(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    let (question, outcome) = question::question(globals, options)?;
    let answer = answer::answer(&question, options)?;
    if let Some(file) = &options.svg {
        sketch::write(&globals.world(), &question, &answer, file)?;
    }
    for warning in &answer.warnings {
        eprintln!("warning: {warning}");
    }
    report::result(&match globals.format {
        Format::Json => json::object(&answer).to_string(),
        Format::Text => text::lines(&question, &answer),
    })?;
    Ok(outcome)
}

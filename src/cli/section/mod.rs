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
use super::{file, report};
use crate::diagnostics::visible;
use answer::Answer;
use question::Question;

pub(super) use options::Options;

pub(super) fn run(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    if let Some(path) = &options.svg {
        file::refuse_what_is_read(globals, path)?;
    }
    let (question, outcome) = question::question(globals, options)?;
    let answer = answer::answer(&question, options)?;
    if let Some(path) = &options.svg {
        file::write(path, sketch::drawn(&globals.world(), &question, &answer).to_svg())?;
    }
    for warning in &answer.warnings {
        report::remark(&format!("warning: {}", visible(warning)));
    }
    report::result(&said(globals.format, &question, &answer), globals.format)?;
    Ok(outcome)
}

/// The answer and the sketch, neither printed nor written.
pub(super) fn answered(globals: &Globals, options: &Options) -> Result<(String, String), Fault> {
    let (question, _) = question::question(globals, options)?;
    let answer = answer::answer(&question, options)?;
    let sketch = sketch::drawn(&globals.world(), &question, &answer);
    Ok((said(globals.format, &question, &answer), sketch.to_svg()))
}

fn said(format: Format, question: &Question, answer: &Answer) -> String {
    match format {
        Format::Json => json::object(answer).to_string(),
        Format::Text => text::lines(question, answer),
    }
}

//! `fittingcards compare`: what has changed since an edition.

use super::options::{Format, Globals};
use super::outcome::{Fault, Outcome};
use super::report;
use crate::catalogue;
use crate::diagnostics::nearest;
use crate::facts;
use crate::mixups;
use crate::register::{self, Register, Reissue};

/// Options of `compare`.
#[derive(Debug, clap::Args)]
pub(super) struct Options {
    /// The edition to compare from; the newest where not given
    #[arg(long, value_name = "EDITION")]
    since: Option<String>,
    /// The edition to compare with; the present records where not given
    #[arg(long = "with", value_name = "EDITION")]
    other: Option<String>,
}

pub(super) fn run(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    let world = globals.world();
    let loaded = catalogue::load(&world)?;
    report::findings(&loaded.findings, &world, globals);
    let catalogue = &loaded.catalogue;
    let register = Register::of(catalogue);
    let between = between(options, &register)?;
    let facts = if between.1.is_none() {
        facts::of_catalogue(catalogue, &mixups::find(catalogue))
    } else {
        Vec::new()
    };
    let present = register.next(catalogue, &facts, "", Reissue::default());
    let mut comparison = register::compare(&register, catalogue, between, (&present, ""));
    if between.1.is_none() {
        comparison.leave_open(register.not_known_now(catalogue, &facts));
    }
    let answer = match globals.format {
        Format::Json => register::comparison_json(&comparison).to_string(),
        Format::Text => register::comparison_text(&comparison, catalogue),
    };
    report::result(&answer, globals.format)?;
    Ok(Outcome::unless(loaded.findings.has_errors()))
}

/// The places of the two editions; none for no edition, and for the present records.
fn between(options: &Options, register: &Register) -> Result<(Option<usize>, Option<usize>), Fault> {
    let with = options.other.as_deref().map(|name| place(name, register)).transpose()?;
    let since = match (&options.since, with) {
        (Some(name), _) => Some(place(name, register)?),
        (None, Some(with)) => with.checked_sub(1),
        (None, None) => register.editions().len().checked_sub(1),
    };
    match (since, with) {
        (Some(since), Some(with)) if since > with => {
            Err(Fault::new("--since names a later edition than --with; name the earlier one with --since"))
        }
        between => Ok(between),
    }
}

fn place(name: &str, register: &Register) -> Result<usize, Fault> {
    let names = || register.editions().iter().map(|edition| edition.name.as_str());
    register.position(name).ok_or_else(|| {
        let fault = Fault::new(format!("there is no edition {name} on the register"));
        match (nearest(name, names()), register.newest()) {
            (Some(near), _) => fault.with("help", format!("did you mean {near}?")),
            (None, Some(newest)) => fault.with("help", format!("the newest is {}", newest.name)),
            (None, None) => fault.with("help", "`fittingcards issue` puts the first one on it"),
        }
    })
}

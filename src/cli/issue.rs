//! `fittingcards issue`: put the present state on the register as an edition.

use super::options::{Format, Globals};
use super::outcome::{Fault, Outcome};
use super::progress::Bar;
use super::report;
use crate::diagnostics::visible;
use crate::publish::{self, IssueInto, IssueReport};
use crate::records;
use crate::register::{self, Asked, Refusal};
use jiff::civil::Date;
use serde_json::json;

/// Options of `issue`.
#[derive(Debug, clap::Args)]
pub(super) struct Options {
    /// Name of the edition, such as 2026-2
    #[arg(long, value_name = "EDITION")]
    edition: String,
    /// Day of the edition, as YYYY-MM-DD
    #[arg(long, value_name = "DATE", value_parser = date)]
    date: Date,
    /// Who checked it
    #[arg(long, value_name = "TEXT")]
    checked_by: String,
    /// Who approved it; not the same person
    #[arg(long, value_name = "TEXT")]
    approved_by: String,
    /// Issue these cards again though nothing that they print has changed, for a drawing that was wrong
    #[arg(long, value_name = "NUMBER", num_args = 1..)]
    reissue: Vec<String>,
    /// Why: for cards that are issued again, where it is printed, and for changes that no notice explains
    #[arg(long, value_name = "TEXT", default_value = "")]
    because: String,
    /// Say what would be done, and write nothing
    #[arg(long)]
    dry_run: bool,
}

fn date(written: &str) -> Result<Date, String> {
    records::day(written).ok_or_else(|| "expected a day of the calendar as YYYY-MM-DD".to_owned())
}

pub(super) fn run(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    let world = globals.world_with_layouts()?;
    let into = if options.dry_run { IssueInto::Nothing } else { IssueInto::Catalogue(&globals.catalogue) };
    let bar = Bar::new(globals);
    let issued = publish::issue(&world, &asked(options), into, &|progress| bar.show(progress));
    bar.clear();
    let issued = issued?;
    report::findings(&issued.findings, &world, globals);
    if issued.is_refused() {
        return refused(globals, &issued);
    }
    report::result(&answer(globals, options, &issued), globals.format)?;
    Ok(Outcome::Done)
}

fn asked(options: &Options) -> Asked {
    let plain = |text: &str| text.trim().to_owned();
    Asked {
        edition: plain(&options.edition),
        date: options.date,
        checked_by: plain(&options.checked_by),
        approved_by: plain(&options.approved_by),
        reissue: options.reissue.iter().map(|number| plain(number)).collect(),
        because: plain(&options.because),
    }
}

/// Says what is wrong with what was asked for; what is wrong with the catalogue is told of already.
fn refused(globals: &Globals, issued: &IssueReport) -> Result<Outcome, Fault> {
    report::remark("nothing was issued; the register is as it was");
    let mut faults: Vec<Fault> = issued.refusals.iter().map(fault).collect();
    // The last one ends the program, where nothing else has been found.
    let last = if issued.findings.has_errors() { None } else { faults.pop() };
    for fault in faults {
        report::fault(&fault, globals);
    }
    last.map_or(Ok(Outcome::Refused), Err)
}

fn fault(refusal: &Refusal) -> Fault {
    Fault::new(refusal.message.as_str()).with("help", refusal.help.as_str())
}

fn answer(globals: &Globals, options: &Options, issued: &IssueReport) -> String {
    let file = issued.written.as_ref().map(|file| file.display().to_string());
    if globals.format == Format::Json {
        return json!({
            "edition": options.edition.trim(), "file": file, "cards": issued.cards,
            "comparison": register::comparison_json(&issued.comparison),
        })
        .to_string();
    }
    let done = match &file {
        Some(file) => format!(
            "edition {} is on the register: {}; render, print, and call in what is listed above before the next one",
            options.edition,
            visible(file)
        ),
        None => format!("edition {} could be issued; nothing was written", options.edition),
    };
    format!("{}\n{done}", register::comparison_text(&issued.comparison, &issued.catalogue))
}

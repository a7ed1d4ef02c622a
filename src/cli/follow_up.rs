//! `fittingcards follow-up`: which fittings in the line call for something. While errors stand, it gives no list.

use super::file;
use super::options::{Format, Globals};
use super::outcome::{Fault, Outcome};
use super::report;
use crate::catalogue::{self, Catalogue};
use crate::diagnostics::nearest;
use crate::installed::{
    FOLLOW_UP_HEAD, FollowUp, follow_up, follow_up_json, follow_up_rows, follow_up_text, installed,
};
use crate::mixups;
use crate::records::written_table;
use crate::units::Numerals;
use std::path::{Path, PathBuf};

/// Options of `follow-up`.
#[derive(Debug, clap::Args)]
pub(super) struct Options {
    /// Only fittings that cite this notice, each of them
    #[arg(long, value_name = "NUMBER")]
    notice: Option<String>,
    /// Also write the list as CSV into this file
    #[arg(long, value_name = "FILE")]
    csv: Option<PathBuf>,
}

pub(super) fn run(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    if let Some(path) = &options.csv {
        file::refuse_what_is_read(globals, path)?;
    }
    let world = globals.world();
    let catalogue::Loaded { catalogue, mut findings } = catalogue::load(&world)?;
    let mixups = mixups::find(&catalogue);
    let (installed, found) = installed(&catalogue, &mixups);
    findings.extend(found);
    report::findings(&findings, &world, globals);
    // A row that can't be judged is no row that calls for nothing.
    if findings.has_errors() {
        return Ok(Outcome::Refused);
    }
    let notice = options.notice.as_deref();
    check_notice(notice, &catalogue)?;
    let found = follow_up(&catalogue, &mixups, &installed, notice);
    if let Some(path) = &options.csv {
        write(path, &found)?;
    }
    let answer = match globals.format {
        Format::Json => follow_up_json(&found).to_string(),
        Format::Text if catalogue.installed.is_empty() => NO_LIST.to_owned(),
        Format::Text => follow_up_text(&found, Numerals::new(catalogue.settings.decimal_mark)),
    };
    report::result(&answer, globals.format)?;
    Ok(Outcome::Done)
}

/// What is said where nobody has written down what is in the line.
const NO_LIST: &str = "there is no list of installed fittings: put one at installed/NAME.csv in the catalogue; \
                       `fittingcards explain installed` names its columns";

fn check_notice(notice: Option<&str>, catalogue: &Catalogue) -> Result<(), Fault> {
    let known = || catalogue.notices.keys().map(String::as_str);
    match notice.filter(|notice| !catalogue.notices.contains_key(*notice)) {
        None => Ok(()),
        Some(notice) => {
            let help = nearest(notice, known()).map(|near| format!("did you mean {near}?"));
            Err(Fault::new(format!("there is no notice {notice}")).with("help", help.unwrap_or_default()))
        }
    }
}

fn write(path: &Path, found: &FollowUp<'_>) -> Result<(), Fault> {
    let table = written_table(&FOLLOW_UP_HEAD, &follow_up_rows(found));
    file::write(path, table.map_err(|error| Fault::new(format!("{}: {error}", path.display())))?)
}

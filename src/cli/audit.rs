//! `fittingcards audit`: check only; nothing is written.

use super::options::{Format, Globals};
use super::outcome::{Fault, Outcome};
use super::report::{self, Strictness};
use crate::audit::{self, Context};
use crate::{catalogue, diagnostics, mixups};

/// Options of `audit`.
#[derive(Debug, clap::Args)]
pub(super) struct Options {
    /// Exit with 1 for warnings too
    #[arg(long)]
    deny_warnings: bool,
}

pub(super) fn run(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    let world = globals.world();
    let loaded = catalogue::load(&world)?;
    let mut findings = loaded.findings;
    let mixups = mixups::find(&loaded.catalogue);
    findings.extend(audit::check(Context { catalogue: &loaded.catalogue, mixups: &mixups }));
    match globals.format {
        Format::Json => report::result(&diagnostics::to_json(&findings).to_string())?,
        Format::Text => report::findings(&findings, &world, globals)?,
    }
    Ok(Strictness::from_flag(options.deny_warnings).outcome(&findings))
}

//! `fittingcards audit`: check only; nothing is written.

use super::options::{Format, Globals};
use super::outcome::{Fault, Outcome};
use super::progress::Bar;
use super::{render, report};
use crate::diagnostics;
use crate::publish::{self, AuditOptions, Extent};

/// Options of `audit`.
#[derive(Debug, clap::Args)]
pub(super) struct Options {
    /// Only the records: faces and pages are not made and looked over
    #[arg(long)]
    records: bool,
    /// Exit with 1 for warnings too
    #[arg(long)]
    deny_warnings: bool,
}

pub(super) fn run(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    let world = globals.world_with_layouts()?;
    let bar = Bar::new(globals);
    let findings = publish::check(&world, &asked(globals, options), &|progress| bar.show(progress));
    bar.clear();
    let findings = findings?;
    match globals.format {
        Format::Json => report::result(&diagnostics::to_json(&findings).to_string(), Format::Json)?,
        Format::Text => {
            report::said(&findings, &world, globals, render::strictness(options.deny_warnings));
            report::nothing_found(&findings, globals);
        }
    }
    Ok(Outcome::unless(render::strictness(options.deny_warnings).refuses(&findings)))
}

fn asked(globals: &Globals, options: &Options) -> AuditOptions {
    let extent = if options.records { Extent::Records } else { Extent::Faces };
    AuditOptions { extent, output: Some(globals.output_folder()), jobs: None }
}

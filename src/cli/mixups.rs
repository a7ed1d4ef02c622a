//! `fittingcards mixups`: which wrong part goes into which body, and what then happens.

use super::options::{Format, Globals};
use super::outcome::{Fault, Outcome};
use super::report::{self, Strictness};
use crate::catalogue;
use crate::mixups::{self, BodyMixups, Case, Mixups};
use crate::units::Numerals;
use std::fmt::Write;

/// Options of `mixups`.
#[derive(Debug, clap::Args)]
pub(super) struct Options {}

pub(super) fn run(globals: &Globals, _options: &Options) -> Result<Outcome, Fault> {
    let world = globals.world();
    let loaded = catalogue::load(&world)?;
    report::findings(&loaded.findings, &world, globals)?;
    let mixups = mixups::find(&loaded.catalogue);
    let numerals = Numerals::new(loaded.catalogue.settings.decimal_mark);
    report::result(&match globals.format {
        Format::Json => mixups::to_json(&mixups).to_string(),
        Format::Text => text(&mixups, numerals),
    })?;
    Ok(Strictness::Errors.outcome(&loaded.findings))
}

fn text(mixups: &Mixups, numerals: Numerals) -> String {
    if mixups.bodies.is_empty() {
        return "no body has gripping parts".to_owned();
    }
    mixups.bodies.iter().map(|body| body_text(body, numerals)).collect::<Vec<_>>().join("\n")
}

fn body_text(body: &BodyMixups, numerals: Numerals) -> String {
    let mut text = format!("{} {}\n", body.body.number, body.body.name);
    for case in &body.cases {
        let _ = writeln!(
            text,
            "  {:<12} in {:<12} on {:<20} {:<30} {}",
            case.part.number,
            case.fitting.number,
            case.conductor.id,
            mixups::words::verdict(case),
            remark(case, numerals)
        );
    }
    text
}

fn remark(case: &Case, numerals: Numerals) -> String {
    match (case.right, case.hidden) {
        (true, _) => "its own".to_owned(),
        (false, true) => format!("HIDDEN. {}", mixups::words::noticed(case, numerals)),
        (false, false) => mixups::words::noticed(case, numerals),
    }
}

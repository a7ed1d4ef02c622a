//! `fittingcards mixups`: which wrong part goes into which body, and what then happens.

use super::options::{Format, Globals};
use super::outcome::{Fault, Outcome};
use super::report;
use crate::catalogue::{self, Catalogue};
use crate::mixups::{self, BodyMixups, Case, DesignFix, Mixups};
use crate::units::Numerals;
use std::fmt::Write;

/// Options of `mixups`.
#[derive(Debug, clap::Args)]
pub(super) struct Options {
    /// What would remove each hidden danger: changes of one measurement, with their size
    #[arg(long = "ways-out")]
    design_fixes: bool,
}

pub(super) fn run(globals: &Globals, options: &Options) -> Result<Outcome, Fault> {
    let world = globals.world();
    let loaded = catalogue::load(&world)?;
    report::findings(&loaded.findings, &world, globals);
    let mixups = mixups::find(&loaded.catalogue);
    let numerals = Numerals::new(loaded.catalogue.settings.decimal_mark);
    let answer = match (options.design_fixes, globals.format) {
        (false, Format::Json) => mixups::to_json(&mixups).to_string(),
        (false, Format::Text) => text(&mixups, numerals),
        (true, format) => design_fixes(&loaded.catalogue, &mixups, format),
    };
    report::result(&answer, globals.format)?;
    Ok(Outcome::unless(loaded.findings.has_errors()))
}

fn text(mixups: &Mixups, numerals: Numerals) -> String {
    if mixups.bodies.is_empty() {
        return "no body has gripping parts".to_owned();
    }
    mixups.bodies.iter().map(|body| body_text(body, numerals)).collect::<Vec<_>>().join("\n")
}

fn design_fixes(catalogue: &Catalogue, mixups: &Mixups, format: Format) -> String {
    let fixes = mixups::design_fixes(catalogue, mixups);
    if format == Format::Json {
        return mixups::design_fixes_to_json(mixups, &fixes).to_string();
    }
    let numerals = Numerals::new(catalogue.settings.decimal_mark);
    let mut text = String::new();
    for case in fixes.chunk_by(|one, next| (&one.part, &one.fitting) == (&next.part, &next.fitting)) {
        let DesignFix { part, fitting, conductor, body, .. } = &case[0];
        let _ = writeln!(text, "{part} in {fitting} on {conductor} (body {body})");
        for fix in case {
            let _ = writeln!(text, "  {}", fix.words(numerals));
        }
    }
    for (body, case) in mixups::without_design_fix(mixups, &fixes) {
        let _ = writeln!(
            text,
            "{} in {} (body {}): no change of one measurement removes it; marks and a witness must",
            case.part.number, case.fitting.number, body.body.number
        );
    }
    if text.is_empty() { "no hidden danger\n".to_owned() } else { text }
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

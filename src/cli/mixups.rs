//! `fittingcards mixups`: which wrong part goes into which body, and what then happens.

use super::options::{Format, Globals};
use super::outcome::{Fault, Outcome};
use super::report;
use crate::catalogue::{self, Catalogue};
use crate::mixups::{self, BodyMixups, Case, Consequence, InterfaceMixups, Mixups};
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
    let bodies = mixups.bodies.iter().map(|body| body_text(body, numerals));
    let open = mixups.without_body.iter().map(|found| interface_text(found, numerals));
    let stop = mixups.incomplete().map(|stop| format!("{stop}\n"));
    let all: Vec<String> = stop.into_iter().chain(bodies).chain(open).collect();
    if all.is_empty() { "no part can be confused with another".to_owned() } else { all.join("\n") }
}

fn design_fixes(catalogue: &Catalogue, mixups: &Mixups, format: Format) -> String {
    let fixes = mixups::design_fixes(catalogue, mixups);
    if format == Format::Json {
        return mixups::design_fixes_to_json(mixups, &fixes).to_string();
    }
    let numerals = Numerals::new(catalogue.settings.decimal_mark);
    let mut text = mixups.incomplete().map(|stop| format!("{stop}\n")).unwrap_or_default();
    for fixes in fixes.chunk_by(|one, next| one.danger == next.danger) {
        let _ = writeln!(text, "{}", fixes[0].danger.words());
        for fix in fixes {
            let _ = writeln!(text, "  {}", fix.words(numerals));
        }
    }
    for danger in mixups::without_design_fix(mixups, &fixes) {
        let none = "no change of one measurement removes it: use marks and a witness";
        let _ = writeln!(text, "{}: {none}", danger.words());
    }
    if text.is_empty() { "no hidden danger\n".to_owned() } else { text }
}

fn body_text(body: &BodyMixups, numerals: Numerals) -> String {
    let mut text = format!("{} {}\n", body.body.number, body.body.name);
    for case in &body.cases {
        text.push_str(&case_text(case, numerals));
    }
    for kit in body.kits.iter().filter(|kit| kit.parts.len() > 1) {
        let gripping = kit.parts.iter().find(|part| part.role.grips());
        let stamp = gripping.map_or("", |part| part.stamp.as_str());
        let noticed = mixups::words::seen(&kit.comes, &kit.fitting, stamp, numerals);
        let name = format!("kit of {}", kit.kit.number);
        let place = [name.as_str(), &kit.fitting.number, &kit.conductor.id];
        text.push_str(&line(place, &kit.comes, noticed, numerals));
    }
    text
}

fn interface_text(found: &InterfaceMixups, numerals: Numerals) -> String {
    let mut text = format!("{}, interface {}\n", found.role.word(), found.interface);
    for case in &found.cases {
        text.push_str(&case_text(case, numerals));
    }
    text
}

fn case_text(case: &Case, numerals: Numerals) -> String {
    let place = [case.part.number.as_str(), &case.fitting.number, &case.conductor.id];
    line(place, &case.comes, mixups::words::noticed(case, numerals), numerals)
}

fn line(
    [what, fitting, conductor]: [&str; 3],
    comes: &Consequence,
    noticed: String,
    numerals: Numerals,
) -> String {
    let remark = match (comes.right, comes.hidden) {
        (true, _) => "its own".to_owned(),
        (false, true) => format!("HIDDEN. {noticed}"),
        (false, false) => noticed,
    };
    let remark = mixups::words::joined([remark, mixups::words::worn(comes, numerals)]);
    let line =
        format!("  {what:<16} in {fitting:<12} on {conductor:<20} {:<30} {remark}", comes.summary.words());
    format!("{}\n", line.trim_end())
}

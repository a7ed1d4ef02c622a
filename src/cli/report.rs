//! Findings and faults, on standard error.

use super::options::{Format, Globals};
use super::outcome::Fault;
use crate::diagnostics::{self, Colour, Findings, Severity};
use crate::source::World;
use std::io::Write;
use std::process::ExitCode;

/// Prints findings to standard error: all, or only the errors of a quiet run.
pub(super) fn findings(findings: &Findings, world: &dyn World, globals: &Globals) -> Result<(), Fault> {
    let shown = shown(findings, globals);
    let mut out = std::io::stderr().lock();
    match globals.format {
        Format::Text => diagnostics::print(&shown, world, globals.colour(), &mut out)?,
        Format::Json => writeln!(out, "{}", diagnostics::to_json(&shown))?,
    }
    Ok(())
}

fn shown(findings: &Findings, globals: &Globals) -> Findings {
    let mut shown = Findings::new();
    shown.extend(
        findings
            .sorted()
            .into_iter()
            .filter(|finding| !globals.quiet || finding.severity == Severity::Error)
            .cloned(),
    );
    shown
}

/// Prints a fault to standard error and gives its exit code.
pub(super) fn fault(fault: &Fault, globals: &Globals) -> ExitCode {
    let (start, end) = match globals.colour() {
        Colour::With => ("\u{1b}[1;31m", "\u{1b}[0m"),
        Colour::Without => ("", ""),
    };
    eprintln!("{start}fault{end}: {}", fault.message);
    ExitCode::from(2)
}

/// Prints a result to standard output. A reader that has closed its end has what it wanted.
pub(super) fn result(text: &str) -> Result<(), Fault> {
    match writeln!(std::io::stdout().lock(), "{}", text.trim_end_matches('\n')) {
        Err(error) if error.kind() != std::io::ErrorKind::BrokenPipe => Err(error.into()),
        _ => Ok(()),
    }
}

//! What is said: results on standard output, findings and faults on standard error.
//!
//! What was said to nobody, because a pipe is closed or a disk is full, changes nothing of what was done. Where
//! a result could not be given, the exit code says so; where a finding could not, there is nobody to tell.

use super::options::{Format, Globals};
use super::outcome::Fault;
use crate::diagnostics::{self, Colour, Findings, Severity, visible, visible_json, visible_lines};
use crate::publish::Strictness;
use crate::source::World;
use std::io::Write;
use std::process::ExitCode;

/// Prints findings to standard error: all, or only the errors of a quiet run.
pub(super) fn findings(findings: &Findings, world: &dyn World, globals: &Globals) {
    said(findings, world, globals, Strictness::Errors);
}

/// Prints findings to standard error: all, or only those that stop a quiet run.
pub(super) fn said(findings: &Findings, world: &dyn World, globals: &Globals, strictness: Strictness) {
    let shown = shown(findings, globals, strictness);
    let mut out = std::io::stderr().lock();
    let _ = match globals.format {
        Format::Text => diagnostics::print(&shown, world, globals.colour(), &mut out),
        Format::Json => writeln!(out, "{}", visible_json(&diagnostics::to_json(&shown).to_string())),
    };
}

/// Says so where nothing was found, lest silence be taken for a check that was not made.
pub(super) fn nothing_found(findings: &Findings, globals: &Globals) {
    if findings.sorted().is_empty() && !globals.quiet {
        remark("no errors, warnings or notes");
    }
}

/// Prints a line to standard error.
pub(super) fn remark(text: &str) {
    let _ = writeln!(std::io::stderr().lock(), "{text}");
}

fn shown(findings: &Findings, globals: &Globals, strictness: Strictness) -> Findings {
    let stops = |severity| match strictness {
        Strictness::Errors => severity == Severity::Error,
        Strictness::Warnings => severity != Severity::Note,
    };
    let mut shown = Findings::new();
    shown.extend(
        findings.sorted().into_iter().filter(|finding| !globals.quiet || stops(finding.severity)).cloned(),
    );
    shown
}

/// Prints a fault to standard error and gives its exit code.
pub(super) fn fault(fault: &Fault, globals: &Globals) -> ExitCode {
    let (start, end) = match globals.colour() {
        Colour::With => ("\u{1b}[1;31m", "\u{1b}[0m"),
        Colour::Without => ("", ""),
    };
    remark(&format!("{start}error{end}: {}", visible(&fault.message)));
    for (name, text) in &fault.details {
        remark(&format!("    {name:<9} {}", visible(text)));
    }
    fault.code()
}

/// Prints a result to standard output. A reader that has closed its end has what it wanted.
pub(super) fn result(text: &str, format: Format) -> Result<(), Fault> {
    let text = text.trim_end_matches('\n');
    let shown = match format {
        Format::Text => visible_lines(text),
        Format::Json => visible_json(text),
    };
    match writeln!(std::io::stdout().lock(), "{shown}") {
        Err(error) if error.kind() != std::io::ErrorKind::BrokenPipe => {
            Err(Fault::new(format!("the result can't be given on standard output: {error}")))
        }
        _ => Ok(()),
    }
}

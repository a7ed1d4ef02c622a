//! Findings for people.

use super::{Finding, Findings, Severity, visible};
use crate::source::{Place, World};
use std::io::{Result, Write};

/// Whether findings are coloured.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Colour {
    /// With terminal colours.
    With,
    /// Plain.
    Without,
}

/// Prints all findings in order, and a closing line that counts them. Texts that come from outside are shown
/// by [`visible`], so that each finding takes the lines that it says and nothing moves on a terminal.
///
/// # Errors
/// Where `out` can't be written to.
pub fn print(findings: &Findings, world: &dyn World, colour: Colour, out: &mut dyn Write) -> Result<()> {
    let sorted = findings.sorted();
    for finding in &sorted {
        print_one(finding, world, colour, out)?;
    }
    let count = |severity| sorted.iter().filter(|finding| finding.severity == severity).count();
    let counts = [Severity::Error, Severity::Warning, Severity::Note]
        .map(|severity| (count(severity), severity.word()))
        .into_iter()
        .filter(|(count, _)| *count > 0)
        .map(|(count, word)| format!("{count} {word}{}", if count == 1 { "" } else { "s" }))
        .collect::<Vec<_>>();
    if !counts.is_empty() {
        writeln!(out, "{}", counts.join(", "))?;
    }
    Ok(())
}

fn print_one(finding: &Finding, world: &dyn World, colour: Colour, out: &mut dyn Write) -> Result<()> {
    let (start, end) = paint(finding.severity, colour);
    let place = shown(&finding.place, world);
    writeln!(
        out,
        "{place}: {start}{}{end}[{}]: {}",
        finding.severity.word(),
        finding.code,
        visible(&about(finding))
    )?;
    let lines = [("found", finding.found.as_deref()), ("expected", finding.expected.as_deref())];
    for (name, text) in lines {
        if let Some(text) = text {
            writeln!(out, "    {name:<9} {}", visible(text))?;
        }
    }
    if !finding.help.is_empty() {
        writeln!(out, "    {:<9} {}", "help", visible(&finding.help))?;
    }
    for related in &finding.related {
        writeln!(out, "    {:<9} {}: {}", "see", shown(&related.place, world), visible(&related.message))?;
    }
    Ok(())
}

fn about(finding: &Finding) -> String {
    let names: Vec<&str> =
        [finding.record.as_deref(), finding.field.as_deref()].into_iter().flatten().collect();
    if names.is_empty() {
        finding.message.clone()
    } else {
        format!("{}: {}", names.join(" "), finding.message)
    }
}

fn shown(place: &Place, world: &dyn World) -> String {
    let file = world.display(&place.file);
    let file = visible(&file);
    match (place.line, place.column) {
        (0, _) => file.into_owned(),
        (line, 0) => format!("{file}:{line}"),
        (line, column) => format!("{file}:{line}:{column}"),
    }
}

fn paint(severity: Severity, colour: Colour) -> (&'static str, &'static str) {
    match (colour, severity) {
        (Colour::Without, _) => ("", ""),
        (Colour::With, Severity::Error) => ("\u{1b}[1;31m", "\u{1b}[0m"),
        (Colour::With, Severity::Warning) => ("\u{1b}[1;33m", "\u{1b}[0m"),
        (Colour::With, Severity::Note) => ("\u{1b}[1;36m", "\u{1b}[0m"),
    }
}

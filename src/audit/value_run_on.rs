#![doc = include_str!("../explain/codes/value-run-on.md")]

use super::Context;
use super::fitting_texts::{Text, notes_of_records, texts};
use crate::catalogue::{PieceKind, pieces};
use crate::diagnostics::{Findings, Severity};

const CODE: &str = "value-run-on";
/// Signs that join a figure to the value behind it or before it.
const JOINING: [char; 12] = ['–', '-', '—', '‑', '−', '/', '.', ',', '~', '×', '±', '+'];
/// Values that come with a unit.
const WITH_UNIT: [&str; 12] = [
    "torque",
    "spanner",
    "diameter",
    "insertion",
    "tail",
    "seated",
    "tensioned",
    "draw_in",
    "tension_max",
    "plan_height",
    "replace_height",
    "stop_height",
];
const UNITS: [&str; 9] = ["mm", "cm", "m", "N·m", "Nm", "N", "kN", "kNm", "°"];

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    let notes = notes_of_records(context.catalogue);
    for fitting in context.catalogue.fittings.values() {
        for text in texts(fitting, &notes) {
            for found in run_on(&text) {
                let finding = text.finding(found.severity, CODE, found.at, &found.message);
                findings.push(
                    finding.help("take out what does not belong to the value: it comes whole, with its unit"),
                );
            }
        }
    }
}

struct RunOn {
    severity: Severity,
    at: usize,
    message: String,
}

fn run_on(text: &Text<'_>) -> Vec<RunOn> {
    let pieces = pieces(text.whole());
    let mut found = Vec::new();
    for (nth, piece) in pieces.iter().enumerate() {
        let PieceKind::Value(value) = piece.kind else { continue };
        let beside =
            |index: Option<usize>| match index.and_then(|index| pieces.get(index)).map(|piece| piece.kind) {
                Some(PieceKind::Words(words)) => words,
                _ => "",
            };
        let before = against(beside(nth.checked_sub(1)).chars().rev());
        let behind = beside(Some(nth + 1));
        for (severity, what) in
            [before, against(behind.chars()), unit(value, behind), times(value, behind)].into_iter().flatten()
        {
            let message = format!("{what} stands against the value `{value}`");
            found.push(RunOn { severity, at: piece.at, message });
        }
    }
    found
}

/// A figure, with a sign that joins it or none, is another value than the record's; a letter is only another word.
fn against(mut letters: impl Iterator<Item = char>) -> Option<(Severity, &'static str)> {
    let first = letters.next()?;
    let joined = if JOINING.contains(&first) { letters.next() } else { Some(first) };
    match joined {
        Some(letter) if letter.is_numeric() => Some((Severity::Error, "a figure")),
        _ if first.is_ascii_alphabetic() => Some((Severity::Warning, "a letter")),
        _ => None,
    }
}

/// How often a torque or load is taken, which makes another of it.
fn times(value: &str, behind: &str) -> Option<(Severity, &'static str)> {
    let named = value.split('.').next().unwrap_or(value);
    let factor = behind.trim_start().strip_prefix(['×', 'x', '*'])?.trim_start();
    let is_factor = factor.starts_with(char::is_numeric);
    (matches!(named, "torque" | "tension_max") && is_factor).then_some((Severity::Error, "a factor"))
}

fn unit(value: &str, behind: &str) -> Option<(Severity, &'static str)> {
    let named = value.split('.').next().unwrap_or(value);
    let word = behind.strip_prefix([' ', '\u{a0}', '\u{202f}'])?;
    let word = word.split(|letter: char| !letter.is_alphabetic() && !matches!(letter, '·' | '°')).next()?;
    (WITH_UNIT.contains(&named) && UNITS.contains(&word)).then_some((Severity::Error, "a unit"))
}

#![doc = include_str!("../explain/codes/figure-not-in-record.md")]

use super::Context;
use super::figures_of_text::figures;
use super::inspected::{list, on_wording};
use super::known_figures::{KnownFigures, known_figures};
use super::tools_of_text::{Tool, tools};
use super::words_of_text::words;
use crate::catalogue::{Fitting, PieceKind, Wording};
use crate::diagnostics::{Finding, Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    for fitting in context.catalogue.fittings.values() {
        let known = known_figures(fitting);
        findings.extend(fitting.wordings().filter_map(|wording| finding(fitting, wording, &known)));
    }
}

/// One finding a text, at the first of the figures.
fn finding(fitting: &Fitting, wording: &Wording, known: &KnownFigures) -> Option<Finding> {
    let mut unknown: Vec<(usize, String)> = Vec::new();
    for piece in wording.pieces() {
        let PieceKind::Words(text) = piece.kind else { continue };
        unknown.extend(unknown_in(text, known).into_iter().map(|(at, written)| (piece.at + at, written)));
    }
    let (first, _) = unknown.first()?;
    let written: Vec<&str> = unknown.iter().map(|(_, written)| written.as_str()).collect();
    let message = format!("no record of the fitting has {}", list(&written));
    let finding = on_wording(Severity::Note, "figure-not-in-record", fitting, wording, *first, message);
    Some(finding.help("compare it with the record, or name the value in braces where there is one"))
}

/// What no record has: where it stands, and as written.
fn unknown_in(text: &str, known: &KnownFigures) -> Vec<(usize, String)> {
    let words = words(text);
    let is_unknown = |what: Tool, size: &str| match what {
        Tool::Spanner => !known.have_spanner(size),
        Tool::Thread => !known.have_thread(size),
        // A die has a rule of its own.
        Tool::Die => false,
    };
    let figures = figures(text).into_iter().filter(|stated| !known.have(stated));
    let tools = tools(&words).into_iter().map(|tool| (words[tool.index], tool));
    let tools = tools.filter(|(size, tool)| is_unknown(tool.what, size.text));
    let tools = tools.map(|(size, tool)| (size.at, tool.written));
    let mut unknown: Vec<(usize, String)> =
        figures.map(|stated| (stated.at, stated.written)).chain(tools).collect();
    unknown.sort();
    // "spanner 55 mm" is both.
    unknown.dedup_by_key(|(at, _)| *at);
    unknown
}

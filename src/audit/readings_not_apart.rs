#![doc = include_str!("../explain/codes/readings-not-apart.md")]

use super::Context;
use super::inspected::{built, on_fitting, on_wording};
use crate::catalogue::{Fitting, PieceKind, Wording};
use crate::diagnostics::{Finding, Findings, Severity};

const CODE: &str = "readings-not-apart";

/// How words begin by which a step loads the wire, or lets time go by. Common practice, no source.
const APART: [&str; 3] = ["tension", "load", "wait"];

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    // The words are English.
    if !context.catalogue.settings.language.to_lowercase().starts_with("en") {
        return;
    }
    for fitting in built(context).filter(|fitting| is_read_twice(fitting)) {
        let finding = match Readings::of(fitting) {
            Readings { tensioned: Some((step, letter)), apart: false } => {
                let message =
                    "nothing between the seated and the tensioned reading tensions the wire or waits";
                on_wording(Severity::Warning, CODE, fitting, step, letter, message.to_owned())
            }
            Readings { tensioned: None, apart: false } => no_step(fitting),
            Readings { apart: true, .. } => continue,
        };
        findings.push(finding.help("add a step such as `Tension, wait 10 min: {tensioned}.`"));
    }
}

/// Without any steps the record is incomplete, which is told elsewhere.
fn is_read_twice(fitting: &Fitting) -> bool {
    let windows = fitting.stand_out.as_ref().map(|stated| (stated.seated, stated.tensioned));
    matches!(windows, Some((Some(_), Some(_)))) && !fitting.steps.is_empty()
}

fn no_step(fitting: &Fitting) -> Finding {
    let message = "no step tensions the wire or waits before stand-out is read under tension".to_owned();
    on_fitting(Severity::Warning, CODE, fitting, "steps", message)
        .related(fitting.origin.of("stand_out.tensioned_mm"), "the window under tension")
}

/// Where the steps take the reading under tension, and whether anything sets it apart from the one before.
struct Readings<'a> {
    tensioned: Option<(&'a Wording, usize)>,
    apart: bool,
}

impl<'a> Readings<'a> {
    fn of(fitting: &'a Fitting) -> Self {
        let mut apart = false;
        for step in fitting.steps.iter().map(|step| &step.wording) {
            for piece in step.pieces() {
                match piece.kind {
                    PieceKind::Words(words) => apart |= sets_apart(words),
                    PieceKind::Value("seated") => apart = false,
                    PieceKind::Value("tensioned") => {
                        return Self { tensioned: Some((step, piece.at)), apart };
                    }
                    PieceKind::Value(_) | PieceKind::Unclosed(_) => {}
                }
            }
        }
        Self { tensioned: None, apart }
    }
}

/// Whether a word begins like one that sets apart; "download" does not.
fn sets_apart(words: &str) -> bool {
    let words = words.to_lowercase();
    let mut words = words.split(|letter: char| !letter.is_alphanumeric());
    words.any(|word| APART.iter().any(|start| word.starts_with(start)))
}

#![doc = include_str!("../explain/codes/opened-under-load.md")]

use super::Context;
use super::fitting_texts::in_note;
use super::inspected::on_wording;
use super::opening_words::{Load, Opening, Telling, openings_under_load, openings_with};
use super::plain_texts::plain_texts;
use crate::catalogue::{Fitting, PieceKind, Wording, pieces};
use crate::diagnostics::{Finding, Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    findings.extend(wordings(context).filter_map(|(record, wording)| finding(record, wording)));
    context.catalogue.fittings.values().for_each(|fitting| findings.extend(on_card(fitting)));
    findings.extend(on_every_card(context));
    findings.extend(in_notes(context));
}

const CODE: &str = "opened-under-load";
const SAID_UNDER_LOAD: &str = "this says to open something under tension";

/// What the texts of a fitting's card say to open under tension, or in a step after the line was tensioned.
fn on_card(fitting: &Fitting) -> Vec<Finding> {
    let mut load = Load::default();
    let mut found = Vec::new();
    for step in &fitting.steps {
        found.extend(told(fitting, &step.wording, &mut load, Telling::All));
    }
    for wording in fitting.witness.iter().chain(&fitting.if_wrong.before_load) {
        found.extend(told(fitting, wording, &mut Load::default(), Telling::All));
    }
    // What makes a fitting unfit tells what was done to it too: "cut under tension".
    for wording in &fitting.reject_if {
        found.extend(told(fitting, wording, &mut Load::default(), Telling::Orders));
    }
    found
}

fn told(fitting: &Fitting, wording: &Wording, load: &mut Load, telling: Telling) -> Vec<Finding> {
    let finding = |opening: Opening| {
        let message = SAID_UNDER_LOAD.to_owned();
        said(on_wording(Severity::Error, CODE, fitting, wording, opening.at, message), opening.words)
    };
    openings_of(&wording.text, load, telling).into_iter().map(finding).collect()
}

/// What a text says to open while the load is on. Where it names what is measured under tension, the line is tensioned.
fn openings_of(text: &str, load: &mut Load, telling: Telling) -> Vec<Opening> {
    let mut found = Vec::new();
    let (mut from, mut words) = (0, String::new());
    let mut read = |from: usize, words: &str, load: &mut Load| {
        let openings = openings_with(words, load, telling);
        found.extend(openings.into_iter().map(|opening| Opening { at: from + opening.at, ..opening }));
    };
    for piece in pieces(text) {
        let (length, at) = (words.chars().count(), piece.at);
        // A brace of its own is written twice.
        words.extend(std::iter::repeat_n(' ', (at - from).saturating_sub(length)));
        match piece.kind {
            PieceKind::Value("tensioned") => {
                read(from, &words, load);
                *load = Load::ON;
                (from, words) = (at, String::new());
            }
            PieceKind::Value(name) if name.starts_with("tension_max") => words.push_str(" tension"),
            // A figure by its looks: "slacken to {…}" leaves as much.
            PieceKind::Value(_) => words.push_str(" 9"),
            PieceKind::Words(piece) | PieceKind::Unclosed(piece) => words.push_str(piece),
        }
    }
    read(from, &words, load);
    found
}

/// What lines before work, cautions and items say to open under tension.
fn on_every_card(context: Context<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for plain in plain_texts(context.catalogue) {
        for opening in openings_under_load(plain.text, Telling::All) {
            found.push(said(plain.finding(Severity::Error, CODE, SAID_UNDER_LOAD), opening.words));
        }
    }
    found
}

/// What notes and chapters order to open under tension.
fn in_notes(context: Context<'_>) -> Vec<Finding> {
    let mut found = Vec::new();
    for note in &context.catalogue.notes {
        let told = openings_under_load(&note.markdown, Telling::Orders).into_iter();
        found.extend(told.map(|opening| {
            said(Finding::error(CODE, in_note(note, opening.at), SAID_UNDER_LOAD), opening.words)
        }));
    }
    found
}

fn said(finding: Finding, words: String) -> Finding {
    finding.found(words).expected("nothing is opened under tension").help(
        "leave it out, or say before it, in the same sentence: `take the load on a puller first, then …`",
    )
}

/// Texts for what is done under tension where they are stated, with the record that states them.
pub(super) fn wordings<'a>(context: Context<'a>) -> impl Iterator<Item = (&'a str, &'a Wording)> {
    let fittings = context.catalogue.fittings.values().filter_map(|fitting| {
        let stated = fitting.if_wrong.under_load.as_ref()?;
        fitting.procedure_of(stated).is_none().then_some((fitting.number.as_str(), stated))
    });
    let procedures = context.catalogue.procedures.values();
    fittings.chain(
        procedures
            .filter_map(|procedure| Some((procedure.id.as_str(), procedure.if_wrong.under_load.as_ref()?))),
    )
}

fn finding(record: &str, wording: &Wording) -> Option<Finding> {
    let mut load = Load::ON;
    let opening = openings_of(&wording.text, &mut load, Telling::All).into_iter().next()?;
    let message = "this is done under tension, and says to open something";
    let finding = Finding::error(CODE, wording.place(opening.at), message);
    Some(
        finding
            .record(record)
            .field(&wording.field)
            .found(opening.words)
            .expected("nothing is opened, or only once the load is taken away")
            .help(
                "leave the text out: the card then says to keep clear; or write `do not` straight before the word, or before it \
                 `take the load on a puller first, then …`",
            ),
    )
}

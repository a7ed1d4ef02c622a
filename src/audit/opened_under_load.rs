#![doc = include_str!("../explain/codes/opened-under-load.md")]

use super::Context;
use super::fitting_texts::{Text, in_note, notes_of_records, texts};
use super::opening_words::{Opening, Telling, opening, openings_under_load};
use crate::catalogue::Wording;
use crate::diagnostics::{Finding, Findings, Severity};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    findings.extend(wordings(context).filter_map(|(record, wording)| finding(record, wording)));
    findings.extend(elsewhere(context));
}

/// What other texts say to open under tension: those of cards, notes and chapters.
fn elsewhere(context: Context<'_>) -> Vec<Finding> {
    let notes = notes_of_records(context.catalogue);
    let mut found = Vec::new();
    for fitting in context.catalogue.fittings.values() {
        for text in texts(fitting, &notes).iter().filter(|text| is_told_at_any_time(text)) {
            let told = text.stretches().flat_map(|(from, words)| {
                let all = openings_under_load(words, Telling::All).into_iter();
                all.map(move |opening| Opening { at: from + opening.at, ..opening })
            });
            found.extend(told.map(|opening| {
                said(text.finding(Severity::Error, CODE, opening.at, SAID_UNDER_LOAD), opening.words)
            }));
        }
    }
    for note in &context.catalogue.notes {
        let told = openings_under_load(&note.markdown, Telling::Orders).into_iter();
        found.extend(told.map(|opening| {
            said(Finding::error(CODE, in_note(note, opening.at), SAID_UNDER_LOAD), opening.words)
        }));
    }
    found
}

/// Whether it says what to do, and not what to do under tension alone, which is judged more strictly.
fn is_told_at_any_time(text: &Text<'_>) -> bool {
    text.is_instruction() && !text.is_field("if_wrong.under_load")
}

const CODE: &str = "opened-under-load";
const SAID_UNDER_LOAD: &str = "this says to open something under tension";

fn said(finding: Finding, words: String) -> Finding {
    finding.found(words).expected("nothing is opened under tension").help(
        "leave it out, or say before it, in the same sentence: `take the load on a puller first, then …`",
    )
}

/// Texts for what is done under tension where they are stated, with the record that states them.
fn wordings<'a>(context: Context<'a>) -> impl Iterator<Item = (&'a str, &'a Wording)> {
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
    let opening = opening(&wording.text)?;
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

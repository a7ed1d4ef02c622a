#![doc = include_str!("../explain/codes/opened-under-load.md")]

use super::Context;
use super::opening_words::opening;
use crate::catalogue::Wording;
use crate::diagnostics::{Finding, Findings};

pub(super) fn check(context: Context<'_>, findings: &mut Findings) {
    findings.extend(wordings(context).filter_map(|(record, wording)| finding(record, wording)));
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
    let finding = Finding::error("opened-under-load", wording.place(opening.at), message);
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

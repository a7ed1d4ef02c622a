//! What a combination does and how one would notice, in the words of pages, lists and findings.
//!
//! What it comes to stands in its summary; these sentences say why.

use super::{Case, Consequence, Interval, SeenBy, Summary, Worn};
use crate::catalogue::{Conductor, Fitting};
use crate::grip::{Measurement, Outcome, Verdict, measurement};
use crate::units::{Length, Numerals};

/// What happens, in one or two short sentences that begin with the summary.
#[must_use]
pub fn happens(comes: &Consequence, numerals: Numerals) -> String {
    joined([format!("{}.", comes.summary.heading()), why(comes, numerals)])
}

/// On which wire it comes to that, in a sentence; empty where that is new wire or wire that does not wear.
#[must_use]
pub fn worn(comes: &Consequence, numerals: Numerals) -> String {
    let told = |worn: Worn| {
        format!(
            "This is so on wire worn to {}; on new wire: {}.",
            numerals.length(worn.height, 1),
            worn.when_new.words()
        )
    };
    comes.worn.map_or_else(String::new, told)
}

/// What it comes to in a fitting, for a list: with the conductor where the fitting holds several, and the height that is
/// left of a wire where it is so only on worn wire.
#[must_use]
pub fn summary(comes: &Consequence, fitting: &Fitting, conductor: &Conductor, numerals: Numerals) -> String {
    let words = comes.summary.words();
    let of = (fitting.conductors.len() > 1).then_some(conductor.name.as_str());
    match comes.worn {
        Some(worn) => {
            let height = numerals.length(worn.height, 1);
            format!("on {} worn to {height}: {words}", of.unwrap_or("wire"))
        }
        None => of.map_or_else(|| words.to_owned(), |of| format!("{words} on {of}")),
    }
}

/// Why it comes to its summary, in a sentence; empty where the summary says it all.
#[must_use]
pub fn why(comes: &Consequence, numerals: Numerals) -> String {
    joined([why_at_its_worst(comes, numerals), worn(comes, numerals)])
}

fn why_at_its_worst(comes: &Consequence, numerals: Numerals) -> String {
    let outcome = &comes.outcome;
    match comes.summary {
        Summary::Right if outcome.verdict == Verdict::Grips => own_collet(outcome, numerals),
        Summary::NotProven => "May let go under load.".into(),
        Summary::MayHold => "May close on the conductor, may shut before.".into(),
        Summary::Withdrawn => "Do not build it in.".into(),
        Summary::ForcedProud => proud("Its slits are prised open", outcome, numerals),
        Summary::StandsProud => proud("Does not go in all the way", outcome, numerals),
        Summary::HoldsNothing => closes(outcome, numerals),
        Summary::CoreNotHeld => "The inner wires pull through.".into(),
        Summary::OneEnd => "Tapers differ: it gives way.".into(),
        Summary::NotKnown => unknown(outcome),
        Summary::Right | Summary::ProvenHereToo | Summary::WillNotGoIn => String::new(),
    }
}

/// Sentences one after the other, but for those that say nothing.
#[must_use]
pub fn joined<const N: usize>(sentences: [String; N]) -> String {
    sentences.into_iter().filter(|sentence| !sentence.is_empty()).collect::<Vec<_>>().join(" ")
}

/// How somebody would notice a wrong part, in one short sentence; empty where it won't go in.
#[must_use]
pub fn noticed(case: &Case, numerals: Numerals) -> String {
    seen(&case.comes, &case.fitting, &case.part.stamp, numerals)
}

/// How somebody would notice a combination in a fitting, by the stamp that is to be read.
#[must_use]
pub fn seen(comes: &Consequence, fitting: &Fitting, stamp: &str, numerals: Numerals) -> String {
    if !comes.outcome.goes_together() {
        return String::new();
    }
    match (comes.seen_by, &comes.mark) {
        (SeenBy::Measurement, _) => shows(comes, fitting, numerals),
        (SeenBy::Mark, Some(mark)) => format!("Only its mark shows: {}.", mark.words()),
        _ if stamp.is_empty() => "Nothing shows from outside.".into(),
        _ => format!("Nothing shows from outside. Before closing: stamp {stamp} is wrong."),
    }
}

/// The measurements that would settle an unknown, in words; empty where no measurement would.
#[must_use]
pub fn missing(outcome: &Outcome) -> String {
    let words: Vec<&str> = outcome.missing.iter().map(|path| wanted(path)).collect();
    match words.split_last() {
        None => String::new(),
        Some((only, [])) => (*only).to_owned(),
        Some((last, others)) => format!("{} and {last}", others.join(", ")),
    }
}

/// A right collet: how much of its closure is left once it has closed on the conductor.
fn own_collet(outcome: &Outcome, numerals: Numerals) -> String {
    match (outcome.clearance, outcome.closure) {
        (Some(clearance), Some(closure)) if clearance.mm() >= 0.0 && closure > clearance => {
            format!(
                "Closes on the conductor, with {} in hand by its nominal sizes.",
                numerals.length(closure - clearance, 2)
            )
        }
        _ => String::new(),
    }
}

fn closes(outcome: &Outcome, numerals: Numerals) -> String {
    // What a wedge or spreading cone leaves open is seen by its stand-out, which is told.
    match outcome.gap.filter(|gap| outcome.closure.is_some() && gap.mm() >= 0.05) {
        Some(gap) => {
            let gap = numerals.length(gap, 1);
            format!("Takes its full torque: closed, it still leaves a gap of {gap}.")
        }
        None => "Takes its full torque.".into(),
    }
}

fn proud(what: &str, outcome: &Outcome, numerals: Numerals) -> String {
    match outcome.stand_out.filter(|length| length.mm() >= 0.05) {
        Some(length) => format!("{what}: stands out {}.", numerals.length(length, 1)),
        None => format!("{what}."),
    }
}

fn unknown(outcome: &Outcome) -> String {
    let missing = missing(outcome);
    if missing.is_empty() { String::new() } else { format!("Known only with {missing}.") }
}

fn shows(comes: &Consequence, fitting: &Fitting, numerals: Numerals) -> String {
    let window = fitting.stand_out.as_ref().and_then(|stated| stated.seated);
    match (comes.outcome.stand_out, window) {
        (Some(found), Some(window)) => {
            let window = Interval { least: Some(window.least()), most: window.most() };
            format!("{}, not {}.", stands(found, numerals), window.words(numerals))
        }
        _ => "Its stand-out is wrong.".into(),
    }
}

/// A computed stand-out as a sentence begins: what lies below the face is sunk, since a minus is overlooked.
#[must_use]
pub fn stands(out: Length, numerals: Numerals) -> String {
    let words = Interval { least: Some(out), most: out }.words(numerals);
    if words.starts_with("sunk") { words.replacen('s', "S", 1) } else { format!("Stand-out {words}") }
}

/// A measurement in words, by its path in the record.
fn wanted(path: &str) -> &'static str {
    match measurement(path) {
        _ if path == "geometry" => "the part's measurements",
        Some(Measurement { wanted: Some(words), .. }) => words,
        _ => "a measurement",
    }
}

//! What a case comes to, in the words of cards, pages and findings.
//!
//! A wrong part is never said to grip: where it would close on the conductor it *fits, looks right,
//! is not proven*.

use super::Case;
use crate::catalogue::Status;
use crate::grip::{Measurement, Outcome, Verdict, measurement};
use crate::units::{Length, Numerals};

/// A case in a few words, for a cell of a table.
#[must_use]
pub fn verdict(case: &Case) -> &'static str {
    match case.outcome.verdict {
        Verdict::Grips if case.right => "grips",
        Verdict::Grips | Verdict::Marginal if case.proven => match case.part.status {
            Status::Current => "proven here too",
            Status::OnHold => "on hold: do not use",
            Status::Withdrawn | Status::Superseded => "withdrawn: do not use",
        },
        Verdict::Grips => "fits, looks right, not proven",
        Verdict::Marginal if case.right => "marginal",
        Verdict::Marginal => "may close on it, not proven",
        Verdict::StandsProud => "stands proud",
        Verdict::WillNotEnter => "will not go together",
        Verdict::ClosesWithoutGripping => "closes, holds nothing",
        Verdict::CoreNotHeld => "inner wires not held",
        Verdict::TipContact => "touches at one end only",
        Verdict::Unknown => "not known",
    }
}

/// What happens, in one or two short sentences.
#[must_use]
pub fn happens(case: &Case, numerals: Numerals) -> String {
    match case.outcome.verdict {
        Verdict::Grips if case.right && case.outcome.closure.is_some() => {
            "Closes on the conductor, and can close further.".into()
        }
        Verdict::Grips if case.right => "Seats on its conductor as it should.".into(),
        Verdict::Marginal if case.right => "Grips or not, within the tolerances.".into(),
        Verdict::Grips | Verdict::Marginal if case.proven => proven(case.part.status).into(),
        Verdict::Grips => "Fits, looks right, not proven: may let go under load.".into(),
        Verdict::Marginal => "May hold the conductor, or be closed before it does: not proven.".into(),
        Verdict::StandsProud => stands_proud(&case.outcome, numerals),
        Verdict::WillNotEnter => "Will not go together.".into(),
        Verdict::ClosesWithoutGripping => closes(&case.outcome, numerals),
        Verdict::CoreNotHeld => "Holds the outer wires only: the inner wires pull through.".into(),
        Verdict::TipContact => "Tapers differ: it bears at one end only and gives way.".into(),
        Verdict::Unknown => unknown(&case.outcome),
    }
}

/// How somebody would notice, in one short sentence.
#[must_use]
pub fn noticed(case: &Case, numerals: Numerals) -> String {
    if case.outcome.verdict == Verdict::WillNotEnter {
        return "It can't be put together.".into();
    }
    if case.visible {
        return shows(case, numerals);
    }
    match &case.mark {
        Some(mark) if case.mark_seen => format!("Only its mark shows: {}.", mark.words()),
        _ if case.part.stamp.is_empty() => "Nothing shows from outside.".into(),
        _ => format!("Nothing shows from outside: read the stamp ({}) before closing.", case.part.stamp),
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

/// What a part that is proven on the conductor comes to: what is proven may still be withdrawn.
fn proven(status: Status) -> &'static str {
    match status {
        Status::Current => "Proven on this conductor too.",
        Status::OnHold => "Proven, but on hold: do not build it in until told.",
        Status::Withdrawn | Status::Superseded => "Proven, but withdrawn: do not build it in.",
    }
}

fn closes(outcome: &Outcome, numerals: Numerals) -> String {
    match (outcome.clearance, outcome.closure) {
        (Some(clearance), Some(closure)) if clearance > closure => format!(
            "Takes its full torque and holds nothing: closed, it still leaves a gap of {}.",
            numerals.length(clearance - closure, 1)
        ),
        _ => "Takes its full torque and holds nothing.".into(),
    }
}

fn stands_proud(outcome: &Outcome, numerals: Numerals) -> String {
    match outcome.stand_out.filter(|length| length.mm() >= 0.05) {
        Some(length) => format!("Does not seat: stands out {} too far.", numerals.length(length, 1)),
        None => "Does not seat fully.".into(),
    }
}

fn unknown(outcome: &Outcome) -> String {
    let missing = missing(outcome);
    if missing.is_empty() {
        "Not known: take it as holding nothing.".into()
    } else {
        format!("Not known without {missing}: take it as holding nothing.")
    }
}

fn shows(case: &Case, numerals: Numerals) -> String {
    let window = case.fitting.stand_out.as_ref().and_then(|stated| stated.seated);
    match (case.outcome.stand_out, window, case.stand_out_shift) {
        (Some(found), Some(window), _) => format!(
            "Stand-out {}, not {}.",
            numerals.length(found, 1),
            numerals.range(window.map(Length::mm), 1, "mm")
        ),
        (_, None, Some(shift)) if shift.mm() < 0.0 => {
            format!("Sits {} deeper than the right part.", numerals.length(shift.abs(), 1))
        }
        (_, None, Some(shift)) => {
            format!("Stands {} further out than the right part.", numerals.length(shift, 1))
        }
        _ => "Its stand-out is wrong.".into(),
    }
}

/// A measurement in words, by its path in the record.
fn wanted(path: &str) -> &'static str {
    match measurement(path) {
        _ if path == "geometry" => "the part's measurements",
        Some(Measurement { wanted: Some(words), .. }) => words,
        _ => "a measurement",
    }
}

//! What readings say against the part that was written down, by the same computation as `identify`.

use super::known::Known;
use super::{Installed, Reason, ReasonKind};
use crate::catalogue::{Fitting, StandOutFrom};
use crate::mixups::{Interval, LineLoad, NONE_FITS, PossibleInside, STAND_OUT_TOLERANCE, Summary};
use crate::units::{Length, Numerals, Range};

/// A nanometre: a reading at the limit counts, whatever the last binary digit.
const EQUAL: Length = Length::from_mm(1e-9);

/// A part that was written down, is not the fitting's own and is not proven there too.
pub(super) fn wrong_part(installed: &Installed, known: &Known<'_>) -> Option<Reason> {
    let part = installed.gripping_part.as_ref()?;
    if installed.fitting.gripping().any(|item| item.part.number == part.number) {
        return None;
    }
    let (_, summary) = known.part(&installed.fitting, &part.number)?;
    if matches!(summary, Summary::Right | Summary::ProvenHereToo) {
        return None;
    }
    let words = format!("{} was written down: {}", part.number, summary.words());
    Some(Reason::new(ReasonKind::WrongPart, words))
}

/// Readings that the part which was written down, or else the fitting's own, can't have.
pub(super) fn contradiction(
    installed: &Installed,
    known: &mut Known<'_>,
    numerals: Numerals,
) -> Option<Reason> {
    let fitting = &installed.fitting;
    if installed.seated.is_none() && installed.tensioned.is_none() || is_gap(fitting) {
        return None;
    }
    let closed = known.closed(fitting);
    let is_written =
        |inside: &&PossibleInside| inside.kit.is_none() && is_written(installed, &inside.part.number);
    let written: Vec<&PossibleInside> = closed.iter().filter(is_written).collect();
    let first = *written.first()?;
    if written.iter().any(|inside| fits(inside, installed)) {
        return None;
    }
    let mut inside: Vec<String> = closed.iter().filter(|inside| fits(inside, installed)).map(named).collect();
    inside.sort();
    inside.dedup();
    let could = match inside.as_slice() {
        [] => NONE_FITS.to_owned(),
        names => format!("inside could be {}", names.join(", ")),
    };
    let words = format!("{}; {could}", said(first, installed, numerals));
    Some(Reason { inside, ..Reason::new(ReasonKind::Reading, words) })
}

/// Readings outside the windows of the fitting, or that can't both be right.
pub(super) fn no_go(installed: &Installed, numerals: Numerals) -> Vec<Reason> {
    let Some(stated) = &installed.fitting.stand_out else { return Vec::new() };
    let outside = |what: &str, reading: Option<Length>, window: Option<Range<Length>>| {
        let (reading, window) = (reading?, window?);
        let is_within = reading >= window.least() - EQUAL && reading <= window.most() + EQUAL;
        let stated = Interval { least: Some(window.least()), most: window.most() }.words(numerals);
        (!is_within).then(|| format!("{what} {}, must be {stated}", shown(reading, numerals)))
    };
    let drawn = installed.seated.zip(installed.tensioned).map(|(seated, tensioned)| seated - tensioned);
    let too_far = drawn.zip(stated.draw_in_max).filter(|(drawn, most)| *drawn > *most + EQUAL);
    let too_far = too_far.map(|(drawn, most)| {
        format!("drawn in {}, at most {}", numerals.length(drawn, 1), numerals.length(most, 1))
    });
    let outward = drawn.filter(|drawn| *drawn < -(STAND_OUT_TOLERANCE * 2.0) - EQUAL);
    let outward =
        outward.map(|_| "stands out further under tension than after tightening: measure again".to_owned());
    let words = outside("seated", installed.seated, stated.seated)
        .into_iter()
        .chain(outside("tensioned", installed.tensioned, stated.tensioned))
        .chain(too_far)
        .chain(outward);
    words.map(|words| Reason::new(ReasonKind::Check, words)).collect()
}

/// Whether the gap under a screw is measured, which is not the stand-out that is computed.
fn is_gap(fitting: &Fitting) -> bool {
    fitting.stand_out.as_ref().is_some_and(|stated| stated.from == StandOutFrom::ScrewGap)
}

fn is_written(installed: &Installed, number: &str) -> bool {
    match &installed.gripping_part {
        Some(part) => part.number == number,
        None => installed.fitting.gripping().any(|item| item.part.number == number),
    }
}

/// Whether every reading agrees with something inside.
fn fits(inside: &PossibleInside, installed: &Installed) -> bool {
    let agrees = |reading: Option<Length>, state| {
        reading.is_none_or(|reading| inside.fits(reading, STAND_OUT_TOLERANCE, state))
    };
    agrees(installed.seated, LineLoad::Seated) && agrees(installed.tensioned, LineLoad::Tensioned)
}

fn named(inside: &PossibleInside) -> String {
    match &inside.kit {
        Some(kit) => format!("kit of {}", kit.number),
        None => inside.part.number.clone(),
    }
}

/// The readings that disagree, each with what the part would have.
fn said(written: &PossibleInside, installed: &Installed, numerals: Numerals) -> String {
    let one = |what: &str, reading: Option<Length>, state, interval: Option<Interval>| {
        let reading = reading.filter(|reading| !written.fits(*reading, STAND_OUT_TOLERANCE, state))?;
        let would = interval.map(|interval| interval.words(numerals)).unwrap_or_default();
        Some(format!(
            "{what} {} was read, {} would have {would}",
            shown(reading, numerals),
            written.part.number
        ))
    };
    let seated = one("seated", installed.seated, LineLoad::Seated, written.seated);
    let tensioned = one("tensioned", installed.tensioned, LineLoad::Tensioned, written.tensioned);
    let words: Vec<String> = seated.into_iter().chain(tensioned).collect();
    match words.is_empty() {
        true => format!("the readings together can't be those of {}", written.part.number),
        false => words.join("; "),
    }
}

/// A reading as cards say it: what lies below the face is sunk, since a minus is overlooked.
fn shown(reading: Length, numerals: Numerals) -> String {
    Interval { least: Some(reading), most: reading }.words(numerals)
}

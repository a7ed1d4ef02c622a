//! Why an answer about a wrong part is not so, an answer a reason.

use crate::mixups::{BodyMixups, Case, Interval, SeenBy, Summary};
use crate::units::Numerals;

/// Why a wrong part does not come to this summary: what it does instead.
pub(super) fn does_not_come_to(body: &BodyMixups, case: &Case, said: Summary) -> String {
    let goes_in = case.summary != Summary::WillNotGoIn;
    match said {
        Summary::Right => own(body, case),
        _ if !goes_in => "It does not go in, so it comes to nothing else.".to_owned(),
        Summary::WillNotGoIn => "It does go in: that is the danger of it.".to_owned(),
        Summary::StandsProud | Summary::ForcedProud => {
            "It goes in all the way: nothing stops it before.".to_owned()
        }
        _ => "It does not go in all the way: it is stopped before it closes.".to_owned(),
    }
}

/// Which part is right instead.
fn own(body: &BodyMixups, case: &Case) -> String {
    let same = |other: &&Case| {
        other.right
            && other.fitting.number == case.fitting.number
            && other.conductor.id == case.conductor.id
            && other.part.role == case.part.role
    };
    match body.cases.iter().find(same).map(|right| &right.part) {
        Some(part) if !part.stamp.is_empty() => format!("Right there is {}: {}.", part.number, part.stamp),
        Some(part) => format!("Right there is {}.", part.number),
        None => "It is none of the fitting's own parts.".to_owned(),
    }
}

/// Why a wrong part is not found by this once the body is closed.
pub(super) fn is_not_found_by(case: &Case, said: SeenBy, is_measured: bool, numerals: Numerals) -> String {
    match (said, case.seen_by) {
        (SeenBy::Measurement, _) => unmeasured(case, is_measured, numerals),
        (SeenBy::Mark, SeenBy::Measurement) => "Its stand-out tells it too, whatever its mark.".to_owned(),
        (SeenBy::Mark, _) if case.mark.is_some() => "Its mark is out of sight in the closed body.".to_owned(),
        (SeenBy::Mark, _) => "It has no mark.".to_owned(),
        (SeenBy::Nothing, SeenBy::Measurement) => "Its stand-out is measured from outside.".to_owned(),
        (SeenBy::Nothing, _) => "Its mark still shows from outside.".to_owned(),
    }
}

fn unmeasured(case: &Case, is_measured: bool, numerals: Numerals) -> String {
    let window = case.fitting.stand_out.as_ref().and_then(|stated| stated.seated);
    match (case.outcome.stand_out, window) {
        _ if !is_measured => "The stand-out of this fitting is not measured.".to_owned(),
        (Some(_), None) | (None, _) => "No window is stated that its stand-out could lie outside.".to_owned(),
        (Some(level), Some(_)) => {
            let size = Interval { least: Some(level), most: level }.words(numerals);
            format!("It would read about {size}: inside its window, as the right part does.")
        }
    }
}
